package passage

import (
	"math"
	"math/rand/v2"
	"slices"

	"dryfit/rules/kernel/passage/space"
)

// Car is a space with a door in its end wall: a vehicle, or an elevator. The
// world's axes: X goes in, the inside is 0 ≤ X ≤ Length, 0 ≤ Y ≤ Width and
// 0 ≤ Z ≤ Height; before X = 0 there is nothing but the wall with the door,
// which begins at Left and Sill. Lengths in m.
type Car struct {
	Length, Width, Height float64
	DoorWidth, DoorHeight float64
	Left, Sill            float64
}

// opening is the part of the door that is beside no wall of the inside.
func (c Car) opening() (y, z, w, h float64) {
	y, z = max(0, c.Left), max(0, c.Sill)
	return y, z, min(c.Width, c.Left+c.DoorWidth) - y, min(c.Height, c.Sill+c.DoorHeight) - z
}

// mirror is the car with left and right exchanged.
func (c Car) mirror() Car {
	c.Left = c.Width - c.Left - c.DoorWidth
	return c
}

// Into decides whether the body goes into a car by one motion from outside to rest.
// The margin of a motion is in m. A door that is nearer to the right is looked at
// in the mirror, so that the answer is the same on both sides.
//
// Bars and covers prove that nothing passes; searches find ways in, and what
// neither decides is Undecided. Derived.
func (b *Body) Into(c Car, budget *Budget) Decision {
	other := c.mirror()
	if c.Left-other.Left <= Settled {
		return b.into(c, budget)
	}
	d := b.into(other, budget)
	d.Motion = d.Motion.mirrored(c.Width)
	for i := range d.Others {
		d.Others[i] = d.Others[i].mirrored(c.Width)
	}
	return d
}

// mirrored is a motion in a space of a width with left and right exchanged, and
// the two ends of the body, which are alike.
func (m Motion) mirrored(width float64) Motion {
	m.Angle = -m.Angle
	if first := m.Start; first != nil {
		m.Start = func() space.Turn { return first().Mirrored() }
	}
	if poses := m.Follow; poses != nil {
		m.Follow = func() []space.Pose {
			given := poses()
			out := make([]space.Pose, len(given))
			for i, q := range given {
				out[i] = space.Pose{Turn: q.Turn.Mirrored(), At: space.Vec{X: q.At.X, Y: width - q.At.Y, Z: q.At.Z}}
			}
			return out
		}
	}
	return m
}

func (b *Body) into(c Car, budget *Budget) Decision {
	y, z, w, h := c.opening()
	ways := b.straight(w, h)
	for i := range ways {
		m := &ways[i]
		m.Margin = min(m.Margin, (c.Length-m.Depth)/2)
		poses := m.Follow
		m.Follow = func() []space.Pose { return b.parked(poses(), y, z, c.Length) }
	}
	plain := best(ways)
	if plain.Margin >= facing {
		return passing(ways)
	}
	if plain.Margin >= 0 {
		if budget.Spent() {
			return passing(ways)
		}
		if m, ok := b.Coarse(entryCoarse).turnLevel(c.hole(), new([]*entry), budget); ok && m.Margin > plain.Margin && !m.Tilted {
			ways = append(ways, m)
		}
		return passing(ways)
	}
	if b.Barred(c.DoorWidth, c.DoorHeight) {
		return Decision{Outcome: Cannot, Motion: plain, Bound: BarInside}
	}
	inside := b.atRest(c, budget)
	if inside.margin < 0 && !inside.ranOut {
		return Decision{Outcome: Cannot, Motion: plain, Bound: WholeBody}
	}
	in := b.within([3]float64{c.Length, w, h}, budget)
	if in.margin >= 0 {
		m := Motion{Way: Free, Margin: in.margin, Tilted: true}
		m.Follow = func() []space.Pose { return b.parked(b.push(in.turn, w, h, 0, 0), y, z, c.Length) }
		return Decision{Outcome: Passes, Motion: m}
	}
	if budget.Spent() {
		return Decision{Outcome: Undecided, Motion: plain, RanOut: true}
	}
	m, between, ok := b.Coarse(entryCoarse).turnIn(c, inside.turn, budget)
	if ok {
		return Decision{Outcome: Passes, Motion: m}
	}
	if proven, ranOut := b.shutOut(c, between, budget); proven {
		return Decision{Outcome: Cannot, Motion: plain, Bound: BeyondCover}
	} else {
		return Decision{Outcome: Undecided, Motion: plain, RanOut: ranOut || inside.ranOut || in.ranOut}
	}
}

// restCells are the cells that it may take to find out whether the body can rest in a
// car: where they do not tell, the cover of the ways in often does.
const restCells = 4000

// atRest looks for a turn at which the body is in a car.
func (b *Body) atRest(c Car, budget *Budget) covered {
	var part *Budget
	if budget != nil {
		part = &Budget{Cells: min(restCells, budget.Cells)}
		budget.Cells -= part.Cells
		defer func() { budget.Cells += part.Cells }()
	}
	return b.within([3]float64{c.Length, c.Width, c.Height}, part)
}

// entryCoarse is how far, in m, a body that is looked for a way in for may be from
// the true one.
const entryCoarse = 0.001

// hole is the door with the inside behind it.
func (c Car) hole() hole {
	y, z, w, h := c.opening()
	return hole{
		y: [2]float64{y, y + w}, z: [2]float64{z, z + h}, inY: [2]float64{0, c.Width}, inZ: [2]float64{0, c.Height}, length: c.Length,
	}
}

// The states that the ways in may spend: level or tipping on each side, leaning,
// and the trees.
const (
	levelStates = 4000
	leanStates  = 8000
	roamStates  = 4000
	waysOut     = 4 // trees that grow outward, each in other random directions
	goOn        = 2 // searches that are gone on from
)

// turnIn looks for a way in on which the body turns: level on each of its sides,
// tipping about each of its level directions, out from where it can rest along the
// roomiest turns, along its curve with its length leaning in the door, from there on
// in any way, and any way out.
func (b *Body) turnIn(c Car, rest space.Turn, budget *Budget) (m Motion, between depths, found bool) {
	in := c.hole()
	var tried []*entry
	if m, ok := b.turnLevel(in, &tried, budget); ok {
		return m, between, true
	}
	way, least := b.ridges(in, rest, budget)
	for _, lean := range b.leans(c) {
		if way != nil {
			break
		}
		if way, margin := b.lean(in, lean, space.Vec{X: 1}, leanStates, &tried, budget); way != nil {
			return freely(way, margin, true), between, true
		}
	}
	between = gate(least, furthest(tried))
	for seed := uint64(0); seed < waysOut && way == nil; seed++ {
		way = b.wayOut(in, rest, seed, budget)
	}
	for i := 0; i < goOn && way == nil; i++ {
		way = b.onward(in, tried, budget)
	}
	if way == nil {
		return Motion{}, between, false
	}
	way, margin := tried[0].followed(way)
	return freely(way, margin, true), between, way != nil
}

// turnLevel looks for a way in on which the body stays level on one of its sides,
// then for one on which it tips about a level direction. What was tried is added to
// a list.
func (b *Body) turnLevel(in hole, tried *[]*entry, budget *Budget) (Motion, bool) {
	ups := []space.Vec{{X: 1}, {Z: 1}, {Y: 1}, {X: -1}}
	if b.own.Angle != 0 {
		s, k := math.Sincos(b.own.Angle)
		ups = append(ups, space.Vec{Y: s, Z: k}, space.Vec{Y: k, Z: -s})
	}
	for _, lean := range [2]float64{math.Pi / 2, 0} {
		for _, v := range ups {
			if way, margin := b.lean(in, lean, v, levelStates, tried, budget); way != nil {
				return freely(way, margin, lean == 0), true
			}
		}
	}
	return Motion{}, false
}

// lean looks for a way in at one lean, with so many states.
func (b *Body) lean(in hole, lean float64, v space.Vec, most int, tried *[]*entry, budget *Budget) (way []state, margin float64) {
	budget.States(most, func(left *Budget) {
		e := b.leaning(in, lean, v, left)
		*tried = append(*tried, e)
		way, margin = e.way()
	})
	return way, margin
}

// wayOut is a way in that was found as one out from where the body can rest.
func (b *Body) wayOut(in hole, rest space.Turn, seed uint64, budget *Budget) (way []state) {
	budget.States(roamStates, func(left *Budget) {
		x := b.roam(in, left, false)
		x.r = rand.New(rand.NewPCG(roamSeed, seed))
		x.rest(rest)
		way = x.find()
		slices.Reverse(way)
	})
	return way
}

// onward goes on from the deepest place that a search came to, and from no other
// of that search again.
func (b *Body) onward(in hole, tried []*entry, budget *Budget) (way []state) {
	best := deepestOf(tried)
	if best == nil {
		return nil
	}
	begin := best.path(best.deepest())
	best.rows = nil
	budget.States(roamStates, func(left *Budget) {
		x := b.roam(in, left, true)
		last := begin[len(begin)-1]
		x.root(last, last.x+b.Reach(last.turn[0]).Dot(last.turn[0]))
		if more := x.find(); more != nil {
			way = append(begin, more[1:]...)
		}
	})
	return way
}

// deepestOf is the search that came furthest in, or nil.
func deepestOf(tried []*entry) (best *entry) {
	for _, e := range tried {
		if at := e.deepest(); at >= 0 && (best == nil || e.node(at).x > best.node(best.deepest()).x) {
			best = e
		}
	}
	return best
}

// furthest is the depth of the origin to which the searches came, or -Inf.
func furthest(tried []*entry) float64 {
	if best := deepestOf(tried); best != nil {
		return best.node(best.deepest()).x
	}
	return none
}

func freely(states []state, margin float64, tilted bool) Motion {
	return Motion{Way: Free, Margin: margin, Tilted: tilted, Follow: func() []space.Pose { return placed(states) }}
}

// leans are the angles at which the body's length leans in a door if it goes
// through along its curve.
func (b *Body) leans(c Car) []float64 {
	_, _, w, h := c.opening()
	m := b.middle()
	if len(m) == 0 {
		return nil
	}
	thick := b.clearHeight(m[len(m)/2], 1e-9) + 2*b.wrap
	f := RectangleInRectangle(2*(b.half+b.wrap), thick, w, h)
	if f.Angle == 0 || f.Margin < 0 {
		return nil
	}
	a := f.Angle
	if h > w {
		a = math.Pi/2 - a
	}
	return []float64{a, -a, math.Pi + a, math.Pi - a}
}

// parked moves a push through an opening to a place in a car, and ends it in the
// middle of its length.
func (b *Body) parked(poses []space.Pose, y, z, length float64) []space.Pose {
	last := &poses[len(poses)-1]
	last.At.X = length/2 - b.middleAlong(last.Turn[0])
	for i := range poses {
		poses[i].At.Y += y
		poses[i].At.Z += z
	}
	return poses
}

// Along decides a corridor, the margin of a motion in m: exactly, but for the
// budget, if it is endless or twice as long as the body's diameter, since all of
// the body is then in it at some instant. A shorter one is an opening in a wall as
// thick as it is long. Derived.
func (b *Body) Along(c Corridor, budget *Budget) Decision {
	ways := b.straight(c.Width, c.Height)
	plain := best(ways)
	if plain.Margin >= 0 {
		return passing(ways)
	}
	w := b.within([3]float64{math.Inf(1), c.Width, c.Height}, budget)
	switch {
	case w.margin >= 0:
		m := Motion{Way: Free, Margin: w.margin, Tilted: true}
		m.Follow = func() []space.Pose { return b.push(w.turn, c.Width, c.Height, 0, 0) }
		return Decision{Outcome: Passes, Motion: m}
	case w.ranOut:
		return Decision{Outcome: Undecided, Motion: plain, RanOut: true}
	case c.Length == 0 || c.Length >= 2*b.diameter:
		return Decision{Outcome: Cannot, Motion: plain, Bound: WholeBody}
	default:
		return b.Through(Door{Width: c.Width, Height: c.Height, Wall: c.Length, Floor: true}, budget)
	}
}
