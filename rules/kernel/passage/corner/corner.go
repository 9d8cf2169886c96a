// Package corner decides whether a body goes around the corner of two corridors, and how.
// Lengths are in m and angles in rad.
package corner

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// Corner is a right-angled turn between two endless corridors. The world's axes:
// one comes in along Y in 0 ≤ X ≤ Width, and goes on along X in 0 ≤ Y ≤ Onward;
// the floor is Z = 0. Lengths in m.
type Corner struct{ Width, Onward, Height float64 }

// Held is the body at a turn, hard against both outer walls, where it is freest:
// any other place is nearer to the inner corner.
type Held struct {
	Free   float64   // margin from all walls in the corner, and under the ceiling, in m
	in, on float64   // margin across the corridor coming in, and going on
	at     space.Vec // the body's point at the inner corner
	d1, d2 space.Vec // from the points at the outer walls to it
	up     space.Vec // the two points that make the height
	w1, w2 space.Vec // those that make the widths
}

// Hold measures the body in a corner at a turn, hard against the outer walls.
func Hold(b *passage.Body, c Corner, t space.Turn) Held { return holdFrom(b, c, t, nil) }

// holdFrom is Hold, where a point of the body is known that is about as near to
// the inner corner as any: the search for the nearest one then leaves more out.
func holdFrom(b *passage.Body, c Corner, t space.Turn, near *space.Vec) Held {
	q1, q2 := b.Reach(t[0].Times(-1)), b.Reach(t[1].Times(-1))
	s := search{
		b: b, e1: t[0], e2: t[1], a: c.Width + q1.Dot(t[0]), h: c.Onward + q2.Dot(t[1]),
		least: math.Inf(1), section: b.Section(), boundary: b.Edges(),
	}
	if near != nil {
		s.at, s.least = *near, roomAt(s.place(*near))
	}
	s.node(0)
	h := Held{at: s.at, up: b.Span(t[2]), w1: b.Reach(t[0]).Minus(q1), w2: b.Reach(t[1]).Minus(q2), d1: s.at.Minus(q1), d2: s.at.Minus(q2)}
	h.Free = min(s.least, (c.Height-h.up.Dot(t[2]))/2) - b.Wrap()
	h.in = (c.Width-h.w1.Dot(t[0]))/2 - b.Wrap()
	h.on = (c.Onward-h.w2.Dot(t[1]))/2 - b.Wrap()
	return h
}

// mostWithin is what no turn within an angle exceeds, the axes moving by a and the
// upright by up, as long as the body is clear of the inner corner; past it the
// clearance is an estimate.
func mostWithin(b *passage.Body, c Corner, t space.Turn, h Held, a, up space.Angle) (free, in, on float64) {
	d1, d2 := h.d1.Dot(t[0]), h.d2.Dot(t[1])
	free = min(
		roomAt(c.Width-a.Least(d1, h.d1.Dot(h.d1)), c.Onward-a.Least(d2, h.d2.Dot(h.d2))),
		(c.Height-up.Least(h.up.Dot(t[2]), h.up.Dot(h.up)))/2,
	) - b.Wrap()
	in = (c.Width-a.Least(h.w1.Dot(t[0]), h.w1.Dot(h.w1)))/2 - b.Wrap()
	on = (c.Onward-a.Least(h.w2.Dot(t[1]), h.w2.Dot(h.w2)))/2 - b.Wrap()
	return free, in, on
}

// settle is the place of the body at a turn, its wrap and a margin off both
// outer walls and half way between floor and ceiling.
func settle(b *passage.Body, c Corner, t space.Turn, margin float64) space.Pose {
	q1, q2 := b.Reach(t[0].Times(-1)), b.Reach(t[1].Times(-1))
	off := b.Wrap() + margin
	return space.Pose{Turn: t, At: space.Vec{X: off - q1.Dot(t[0]), Y: off - q2.Dot(t[1]), Z: c.Height/2 - b.MiddleAlong(t[2])}}
}

// stretch is the turns about an upright within half of an angle.
type stretch struct {
	at, half float64
	Held
	freeMost, inMost, onMost float64
	freeLeast                float64
}

// sweep is how finely turns about an upright are cut at first, and how many
// stretches there may be in all.
const (
	sweepCells = 48
	sweepMost  = 2000
)

// around takes the body around a corner with one of its directions upright all
// the time. The search is over the one angle that is left: stretches of it have
// a least and a most; of the widest way by the most, those stretches are cut
// that may be narrower by the least, until the two agree, the margin is enough, or it
// is no greater than another motion's.
func around(b *passage.Body, c Corner, way passage.Way, u space.Vec, to exactness, other float64) passage.Motion {
	m := passage.Motion{Way: way, Margin: none}
	height := (c.Height-b.Width(u))/2 - b.Wrap()
	if height < 0 {
		m.Margin = height
		return m
	}
	plan := planDiameter(b, u)
	look := func(at, half float64, near *space.Vec) stretch {
		t := space.About(u, at)
		s := stretch{at: at, half: half, Held: holdFrom(b, c, t, near)}
		sin, cos := math.Sincos(half)
		s.freeMost, s.inMost, s.onMost = mostWithin(b, c, t, s.Held, space.Angle{Sin: sin, Cos: cos}, space.Angle{Sin: 0, Cos: 1})
		s.freeMost = min(s.freeMost, tangentMost(b, c, t, s.Held, plan, half))
		return s
	}
	all := make([]stretch, 0, 2*sweepCells)
	var next []stretch
	var near *space.Vec
	for i := range sweepCells {
		half := math.Pi / sweepCells
		all = append(all, look(half*float64(2*i+1), half, near))
		near = &all[i].Held.at
	}
	for {
		leastBetween(b, all, plan)
		most := widest(all, func(s *stretch) (float64, float64, float64) { return s.freeMost, s.inMost, s.onMost })
		least := widest(all, func(s *stretch) (float64, float64, float64) { return s.freeLeast, s.in, s.on })
		if least.margin > m.Margin {
			m.Margin = least.margin
			from, to := all[least.in].at, all[least.on].at
			step, margin := least.step, m.Margin
			m.Follow = func() []space.Pose { return posesOf(b, c, sweepTurns(u, from, to, step), margin) }
		}
		if m.Margin >= to.enough || most.margin <= other || most.margin <= max(m.Margin, 0)+to.within || most.margin < 0 || len(all) > sweepMost {
			if most.margin < 0 {
				m.Margin = max(m.Margin, most.margin)
			}
			return m
		}
		next = slices.Grow(next[:0], len(all)+len(all)/2)
		for i := range all {
			s := &all[i]
			doubt := s.freeLeast < most.margin-to.within ||
				i == most.in && s.in < most.margin-to.within || i == most.on && s.on < most.margin-to.within
			if !doubt || !most.has(i, len(all)) {
				next = append(next, *s)
				continue
			}
			next = append(next, look(s.at-s.half/2, s.half/2, &s.Held.at), look(s.at+s.half/2, s.half/2, &s.Held.at))
		}
		if len(next) == len(all) {
			return m
		}
		all, next = next, all
	}
}

// tangentMost is what the point nearest to the inner corner makes of the
// clearance at most, turned by no more than half about the upright: its value,
// its slope and the second derivative M of leastBetween. It is near where the
// clearance is level.
func tangentMost(b *passage.Body, c Corner, t space.Turn, h Held, plan, half float64) float64 {
	x, y := c.Width-h.d1.Dot(t[0]), c.Onward-h.d2.Dot(t[1])
	room := roomAt(x, y)
	k := Rate * plan
	g := room - k*half
	if g <= 0 {
		return math.Inf(1)
	}
	var slope float64
	dx, dy := -h.d1.Dot(t[1]), h.d2.Dot(t[0])
	switch {
	case x >= 2*y:
		slope = dx / 2
	case y >= 2*x:
		slope = dy / 2
	default:
		slope = dx*(1-math.Sqrt(y/(2*x))) + dy*(1-math.Sqrt(x/(2*y)))
	}
	return room - b.Wrap() + math.Abs(slope)*half + (k+0.625*plan*plan/g)*half*half/2
}

// leastBetween works out the least clearance between each stretch's middle and those
// of its neighbours. Over an angle δ it is at least (f + g − K·δ)/2, f and g the
// clearances at its ends and K = (2 − √2)·D, since no place moves faster about
// another than D, the plan's diameter. It is also the least of many clearances,
// one for each point and pair of points at the walls, of which each has a second
// derivative of at most M = K + ⅝·D²/G, G the least of wrap and clearance: the
// Hessian of roomAt is at most ⅝ by its value. The least of such functions
// lies no lower than M·δ²/8 under the chord. Derived.
func leastBetween(b *passage.Body, all []stretch, plan float64) {
	n := len(all)
	for i := range all {
		all[i].freeLeast = math.Inf(1)
	}
	for i := range all {
		s, next := &all[i], &all[(i+1)%n]
		d := s.half + next.half
		k := Rate * plan
		least := (s.Free + next.Free - k*d) / 2
		if g := least + b.Wrap(); g > 0 {
			least = max(least, min(s.Free, next.Free)-(k+0.625*plan*plan/g)*d*d/8)
		}
		s.freeLeast, next.freeLeast = min(s.freeLeast, least), min(next.freeLeast, least)
	}
}

// planDiameter is no less than the distance of any two points in plan, u up.
func planDiameter(b *passage.Body, u space.Vec) float64 {
	if u.X*u.X == 1 {
		return math.Hypot(b.Wide(), b.High())
	}
	return b.Diameter()
}

// route is a run of stretches from one in which the body comes in to one in
// which it goes on, either way round.
type route struct {
	in, on int // indices
	step   int // 1 or −1
	margin float64
}

func (r route) has(i, n int) bool {
	if r.step > 0 {
		return (i-r.in+n)%n <= (r.on-r.in+n)%n
	}
	return (r.in-i+n)%n <= (r.in-r.on+n)%n
}

// widest is the route of greatest margin.
func widest(all []stretch, of func(*stretch) (free, in, on float64)) route {
	best := route{margin: none}
	n := len(all)
	for _, step := range [2]int{1, -1} {
		// The widest way so far from somewhere to come in; twice round.
		from, margin := -1, none
		for k := range 2 * n {
			i := k % n
			if step < 0 {
				i = n - 1 - i
			}
			free, in, on := of(&all[i])
			margin = min(margin, free)
			if here := min(free, in); here > margin {
				from, margin = i, here
			}
			if m := min(margin, on); m > best.margin {
				best = route{from, i, step, m}
			}
		}
	}
	return best
}

// sweepTurns are the turns about an upright from one angle to another, in steps
// small enough for a straight move between two.
func sweepTurns(u space.Vec, from, to float64, step int) []space.Turn {
	d := math.Mod(float64(step)*(to-from)+2*math.Pi, 2*math.Pi)
	n := int(math.Ceil(d/passage.TurnStep)) + 1
	var out []space.Turn
	for i := range n + 1 {
		out = append(out, space.About(u, from+float64(step)*d*float64(i)/float64(n)))
	}
	return out
}

// posesOf takes the body in at the first turn, through the others in the
// corner, and on at the last.
func posesOf(b *passage.Body, c Corner, turns []space.Turn, margin float64) []space.Pose {
	margin = max(0, margin)
	var out []space.Pose
	far := 2 * (b.Diameter() + b.Wrap() + c.Width + c.Onward)
	first := settle(b, c, turns[0], margin)
	first.At.Y += far
	out = append(out, first)
	for _, t := range turns {
		out = append(out, settle(b, c, t, margin))
	}
	last := settle(b, c, turns[len(turns)-1], margin)
	last.At.X += far
	return append(out, last)
}

// boxAround takes the body around a corner as the rectangle of l by w that it is
// in plan, up high:
//
//	G ≤ (a·cos θ + b·sin θ − l·sin θ·cos θ − w)/(1 + cos θ + sin θ)
//
// for every angle, G the wrap with the margin: the outer long side has its ends
// G from the outer walls and the inner corner is G from the inner one. Or it
// slides round without turning. Derived.
func boxAround(b *passage.Body, c Corner, way passage.Way, u, long space.Vec, l, w, high float64) passage.Motion {
	if l < w {
		l, w, long = w, l, u.Cross(long)
	}
	room := func(t float64) float64 {
		s, k := math.Sincos(t)
		return (c.Width*k + c.Onward*s - l*s*k - w) / (1 + s + k)
	}
	const first = 24
	slid := max(min(c.Width-w, c.Onward-l), min(c.Width-l, c.Onward-w)) / 2
	turned := (min(c.Width, c.Onward) - w) / 2
	for i := range first {
		turned = min(turned, room(math.Pi/2*(float64(i)+0.5)/first))
	}
	for i := 0; i < first && turned > slid; i++ {
		if at := math.Pi / 2 * (float64(i) + 0.5) / first; room(at) < turned+0.05 {
			step := math.Pi / 2 / first
			turned = min(turned, least(room, at-step/2, at+step/2))
		}
	}
	m := passage.Motion{Way: way, Margin: min(max(turned, slid), (c.Height-high)/2) - b.Wrap()}
	m.Follow = func() []space.Pose {
		if slid >= turned {
			// Long side along X if it goes in across, else along Y.
			t := space.Turn{long, u.Cross(long), u}
			if min(c.Width-w, c.Onward-l) > min(c.Width-l, c.Onward-w) {
				t = space.Turn{long.Cross(u), long, u}
			}
			return posesOf(b, c, []space.Turn{t}, m.Margin)
		}
		return posesOf(b, c, boxTurns(u, long), m.Margin)
	}
	return m
}

// boxTurns turn a long side from along the corridor coming in to along the one
// going on.
func boxTurns(u, long space.Vec) []space.Turn {
	n := int(math.Ceil(math.Pi / 2 / passage.TurnStep))
	var out []space.Turn
	other := u.Cross(long)
	for i := range n + 1 {
		s, c := math.Sincos(math.Pi / 2 * float64(i) / float64(n))
		// The long side points to (sin, −cos): from against Y to along X.
		e1 := long.Times(s).Add(other.Times(c))
		out = append(out, space.Turn{e1, u.Cross(e1), u})
	}
	return out
}

// none is less than any margin.
var none = math.Inf(-1)
