package drawing

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/result/carrying"
)

// sight is a leg seen from above or from a side: what is around the panel, the
// panel, and the least gap between its wrap and a wall. Lengths are in m.
type sight struct {
	title     string
	panel     []passage.Point
	load      [][]passage.Point // the rest of a vehicle's load
	wrap      float64
	solid     [][4]float64      // walls, each from a corner to the opposite one
	lines     [][]passage.Point // faces of walls
	low, high passage.Point     // what is shown
	gap       gap
}

// gap is between a point of the wrap and the wall that it is nearest to; less
// than nothing where the wrap is in the wall.
type gap struct {
	from, to passage.Point
	size     float64
}

// within is a size, or how much is shown of one without an end.
func within(size, otherwise float64) float64 {
	if math.IsInf(size, 1) {
		return otherwise
	}
	return size
}

// newSight shows a panel and nothing yet around it.
func newSight(title string, panel []passage.Point, wrap float64, load ...[]passage.Point) *sight {
	s := &sight{title: title, panel: panel, wrap: wrap, load: load, gap: gap{size: math.Inf(1)}}
	s.low, s.high = passage.Point{X: math.Inf(1), Y: math.Inf(1)}, passage.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range panel {
		s.show(q)
	}
	s.low = passage.Point{X: s.low.X - wrap, Y: s.low.Y - wrap}
	s.high = passage.Point{X: s.high.X + wrap, Y: s.high.Y + wrap}
	return s
}

// show makes the sight reach a point.
func (s *sight) show(q passage.Point) {
	s.low.X, s.low.Y, s.high.X, s.high.Y = min(s.low.X, q.X), min(s.low.Y, q.Y), max(s.high.X, q.X), max(s.high.Y, q.Y)
}

// grow makes the sight reach on past all that is there.
func (s *sight) grow(by float64) {
	s.low, s.high = passage.Point{X: s.low.X - by, Y: s.low.Y - by}, passage.Point{X: s.high.X + by, Y: s.high.Y + by}
}

// nearer keeps the less of two gaps.
func (s *sight) nearer(g gap) {
	if g.size < s.gap.size {
		s.gap = g
	}
}

// side measures to a straight wall across an axis (0 is x) at a place, the free
// side of which is up or down the axis; of the panel's points only those that
// count.
func (s *sight) side(axis int, place float64, up bool, counts func(passage.Point) bool) {
	if math.IsInf(place, 0) {
		return
	}
	for _, q := range s.panel {
		at := [2]float64{q.X, q.Y}
		away := at[axis] - place
		sign := 1.0
		if !up {
			away, sign = -away, -1
		}
		if counts != nil && !counts(q) {
			continue
		}
		from, to := at, at
		from[axis], to[axis] = at[axis]-sign*s.wrap, place
		s.nearer(gap{passage.Point{X: from[0], Y: from[1]}, passage.Point{X: to[0], Y: to[1]}, away - s.wrap})
	}
}

// around measures to all four sides of a box.
func (s *sight) around(wide, high float64) {
	s.side(0, 0, true, nil)
	s.side(0, wide, false, nil)
	s.side(1, 0, true, nil)
	s.side(1, high, false, nil)
}

// corner measures to a corner that stands in from above and from the right; less
// than nothing where the panel lies over it.
func (s *sight) corner(c passage.Point) {
	over := contains(s.panel, c)
	nearest, least := passage.Point{}, math.Inf(1)
	for i, a := range s.panel {
		b := s.panel[(i+1)%len(s.panel)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			t = min(1, max(0, ((c.X-a.X)*dx+(c.Y-a.Y)*dy)/l))
		}
		q := passage.Point{X: a.X + t*dx, Y: a.Y + t*dy}
		free := over || c.X > q.X && c.Y > q.Y
		if d := math.Hypot(c.X-q.X, c.Y-q.Y); free && d < least {
			nearest, least = q, d
		}
	}
	if math.IsInf(least, 1) || least == 0 {
		return
	}
	off := s.wrap / least
	if over {
		least, off = -least, -off
	}
	s.nearer(gap{passage.Point{X: nearest.X + off*(c.X-nearest.X), Y: nearest.Y + off*(c.Y-nearest.Y)}, c, least - s.wrap})
}

// contains reports whether a point lies in an outline: a ray from it crosses that
// an odd number of times.
func contains(outline []passage.Point, p passage.Point) (inside bool) {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			inside = !inside
		}
	}
	return inside
}

// sights are a leg's plan and section, in its pose.
func sights(l carrying.Leg, p carrying.Pose) []*sight {
	high := math.Inf(1)
	for _, n := range []interface {
		Given() bool
		Get() float64
	}{l.Height, l.Headroom} {
		if n.Given() {
			high = n.Get()
		}
	}
	switch p.Plane {
	case carrying.Corner:
		return []*sight{cornerPlan(p), cornerSection(p, high)}
	case carrying.Floor:
		return carSights(l, p)
	case carrying.Wall:
		return []*sight{wallPlan(p, l.Width.Get(), p.B), wallSection(p, high, p.B)}
	default:
		thick := 0.0
		if l.Wall.Given() {
			thick = l.Wall.Get()
		}
		if l.Kind.Get() != "door" {
			return []*sight{tubePlan(p), openingSection(p)}
		}
		return []*sight{wallPlan(p, p.A, thick), openingSection(p)}
	}
}

// leastWall is how thick a wall is drawn that has no thickness.
const leastWall = 0.02

// wallPlan is an opening in a wall from above.
func wallPlan(p carrying.Pose, wide, thick float64) *sight {
	s := newSight("plan", p.Plan, p.Inside)
	s.between(wide, thick)
	s.solid = append(s.solid, [4]float64{0, s.low.Y, max(thick, leastWall), 0}, [4]float64{0, wide, max(thick, leastWall), s.high.Y})
	return s
}

// wallSection is an opening in a wall from the side: over the floor, under the
// lintel.
func wallSection(p carrying.Pose, high, thick float64) *sight {
	s := newSight("section", p.Side, p.Inside)
	s.between(within(high, s.high.Y), thick)
	s.floor()
	if !math.IsInf(high, 1) {
		s.solid = append(s.solid, [4]float64{0, high, max(thick, leastWall), s.high.Y})
	}
	return s
}

// between measures to both sides of an opening in a wall, where the panel is in
// it, and shows what stands beside.
func (s *sight) between(wide, thick float64) {
	inside := func(q passage.Point) bool { return q.X >= -onEdge && q.X <= thick+onEdge }
	whole := s.panel
	s.panel = cutAt(cutAt(whole, 0), thick)
	s.side(1, 0, true, inside)
	s.side(1, wide, false, inside)
	s.panel = whole
	s.show(passage.Point{X: 0, Y: 0})
	s.show(passage.Point{X: thick, Y: wide})
	s.grow(wallShown)
}

// cutAt adds the points in which an outline crosses a line across x.
func cutAt(outline []passage.Point, x float64) (out []passage.Point) {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		out = append(out, a)
		if (a.X < x) != (b.X < x) {
			out = append(out, passage.Point{X: x, Y: a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)})
		}
	}
	return out
}

// floor draws a line under the sight.
func (s *sight) floor() {
	s.lines = append(s.lines, []passage.Point{{X: s.low.X, Y: 0}, {X: s.high.X, Y: 0}})
}

// openingSection is an opening, a corridor or a flight seen square on.
func openingSection(p carrying.Pose) *sight {
	s := newSight("section", p.Square, p.Inside)
	s.around(p.A, p.B)
	s.show(passage.Point{})
	s.show(passage.Point{X: p.A, Y: within(p.B, s.high.Y)})
	s.grow(wallShown)
	b := within(p.B, s.high.Y)
	s.solid = [][4]float64{{s.low.X, s.low.Y, s.high.X, 0}, {s.low.X, 0, 0, s.high.Y}, {p.A, 0, s.high.X, s.high.Y}}
	if b < s.high.Y {
		s.solid = append(s.solid, [4]float64{0, b, p.A, s.high.Y})
	}
	return s
}

// tubePlan is a corridor or a flight from above.
func tubePlan(p carrying.Pose) *sight {
	s := newSight("plan", p.Plan, p.Inside)
	s.side(1, 0, true, nil)
	s.side(1, p.A, false, nil)
	s.show(passage.Point{X: s.low.X - reachShown, Y: 0})
	s.show(passage.Point{X: s.high.X + reachShown, Y: p.A})
	s.lines = [][]passage.Point{{{X: s.low.X, Y: 0}, {X: s.high.X, Y: 0}}, {{X: s.low.X, Y: p.A}, {X: s.high.X, Y: p.A}}}
	return s
}

// cornerPlan comes in from the top and goes on to the right.
func cornerPlan(p carrying.Pose) *sight {
	s := newSight("plan", p.Plan, p.Inside)
	s.side(0, 0, true, nil)
	s.side(1, 0, true, nil)
	s.corner(passage.Point{X: p.A, Y: p.B})
	s.show(passage.Point{})
	s.show(passage.Point{X: p.A + reachShown, Y: p.B + reachShown})
	s.lines = [][]passage.Point{
		{{X: 0, Y: s.high.Y}, {}, {X: s.high.X, Y: 0}},
		{{X: p.A, Y: s.high.Y}, {X: p.A, Y: p.B}, {X: s.high.X, Y: p.B}},
	}
	return s
}

// cornerSection looks along the way in.
func cornerSection(p carrying.Pose, high float64) *sight {
	s := newSight("section", p.Side, p.Inside)
	s.side(0, 0, true, nil)
	s.side(1, 0, true, nil)
	s.side(1, high, false, nil)
	s.show(passage.Point{})
	s.show(passage.Point{X: s.high.X + reachShown, Y: within(high, s.high.Y)})
	s.lines = [][]passage.Point{{{X: s.high.X, Y: 0}, {}, {X: 0, Y: within(high, s.high.Y)}}}
	if !math.IsInf(high, 1) {
		s.lines = append(s.lines, []passage.Point{{X: 0, Y: high}, {X: s.high.X, Y: high}})
	}
	return s
}

// carSights are the inside of a vehicle or an elevator with the panel at rest and
// the rest of the load.
func carSights(l carrying.Leg, p carrying.Pose) []*sight {
	in := l.Inside
	high := math.Inf(1)
	if in.Height.Given() {
		high = in.Height.Get()
	}
	left := (in.Width.Get() - l.Door.Width.Get()) / 2
	if l.DoorLeft.Given() {
		left = l.DoorLeft.Get()
	}
	sill := 0.0
	if l.DoorSill.Given() {
		sill = l.DoorSill.Get()
	}
	top := math.Inf(1)
	if l.Door.Height.Given() {
		top = sill + l.Door.Height.Get()
	}
	plan, section := newSight("plan", p.Plan, p.Inside), newSight("section", p.Side, p.Inside)
	plan.door(left, left+l.Door.Width.Get())
	section.door(sill, top)
	if load := l.Way.Get().Stowed(); len(load) > 1 {
		gaps := [2]gap{plan.gap, section.gap}
		plan, section = newSight("plan", load[0].Plan, p.Inside), newSight("section", load[0].Side, p.Inside)
		plan.gap, section.gap = gaps[0], gaps[1]
		for _, q := range load[1:] {
			plan.load, section.load = append(plan.load, q.Plan), append(section.load, q.Side)
		}
	} else {
		plan.around(in.Length.Get(), in.Width.Get())
		section.around(in.Length.Get(), high)
	}
	plan.car(in.Length.Get(), in.Width.Get(), left, left+l.Door.Width.Get())
	section.car(in.Length.Get(), high, sill, top)
	return []*sight{plan, section}
}

// door measures to the sides of a door in the left end, as the panel is pushed in
// square to it.
func (s *sight) door(from, to float64) {
	for _, q := range s.panel {
		s.nearer(gap{passage.Point{Y: q.Y - s.wrap}, passage.Point{Y: from}, q.Y - from - s.wrap})
		if !math.IsInf(to, 1) {
			s.nearer(gap{passage.Point{Y: q.Y + s.wrap}, passage.Point{Y: to}, to - q.Y - s.wrap})
		}
	}
}

// car is the inside, with the door in its left end.
func (s *sight) car(long, high, door, top float64) {
	s.show(passage.Point{})
	end := within(high, s.high.Y)
	s.show(passage.Point{X: long, Y: end})
	s.lines = [][]passage.Point{{{X: 0, Y: max(0, door)}, {}, {X: long, Y: 0}, {X: long, Y: end}}}
	if !math.IsInf(high, 1) {
		s.lines[0] = append(s.lines[0], passage.Point{X: 0, Y: end}, passage.Point{X: 0, Y: min(end, top)})
	}
}

// roomShown is how much of a long room is shown past the panel, in m.
const roomShown = 1.5

// grown is an outline with a wrap around it, mitred at its corners.
func grown(outline []passage.Point, by float64) (out []passage.Point) {
	var kept []passage.Point
	area := 0.0
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if math.Hypot(b.X-a.X, b.Y-a.Y) > 1e-6 {
			kept = append(kept, a)
		}
		area += a.X*b.Y - b.X*a.Y
	}
	if area < 0 {
		by = -by
	}
	normal := func(a, b passage.Point) (x, y float64) {
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		return (b.Y - a.Y) / l, (a.X - b.X) / l
	}
	for i, q := range kept {
		ax, ay := normal(kept[(i+len(kept)-1)%len(kept)], q)
		bx, by2 := normal(q, kept[(i+1)%len(kept)])
		k := by / max(0.3, 1+ax*bx+ay*by2)
		out = append(out, passage.Point{X: q.X + k*(ax+bx), Y: q.Y + k*(ay+by2)})
	}
	return out
}
