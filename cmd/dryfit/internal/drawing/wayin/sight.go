// Package wayin lays out each leg of the way in: the panel in its pose, the walls around
// it and the least gap between them, in m. How that lies on paper is its caller's.
package wayin

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/result/carrying"
)

// What is shown of the walls, in m.
const (
	wallShown  = 0.15 // around an opening
	reachShown = 0.3  // of a corridor past the panel
	onWall     = 1e-9 // of a point that is on a wall but for round-off
)

// Sight is a leg seen from above or from a side: what is around the panel, the
// panel, and the least gap between its wrap and a wall. Lengths are in m.
type Sight struct {
	Title     string
	Panel     []space.Point
	Load      [][]space.Point // the rest of a vehicle's load
	Wrap      float64
	Solid     [][4]float64    // walls, each from a corner to the opposite one
	Lines     [][]space.Point // faces of walls
	Low, High space.Point     // what is shown
	Gap       Gap
}

// Gap is between a point of the wrap and the wall that it is nearest to; less
// than nothing where the wrap is in the wall.
type Gap struct {
	From, To space.Point
	Size     float64
}

// within is a size, or how much is shown of one without an end.
func within(size, otherwise float64) float64 {
	if math.IsInf(size, 1) {
		return otherwise
	}
	return size
}

// newSight shows a panel and nothing yet around it.
func newSight(title string, panel []space.Point, wrap float64, load ...[]space.Point) *Sight {
	s := &Sight{Title: title, Panel: panel, Wrap: wrap, Load: load, Gap: Gap{Size: math.Inf(1)}}
	s.Low, s.High = space.Point{X: math.Inf(1), Y: math.Inf(1)}, space.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range panel {
		s.show(q)
	}
	s.Low = space.Point{X: s.Low.X - wrap, Y: s.Low.Y - wrap}
	s.High = space.Point{X: s.High.X + wrap, Y: s.High.Y + wrap}
	return s
}

// show makes the sight reach a point.
func (s *Sight) show(q space.Point) {
	s.Low.X, s.Low.Y, s.High.X, s.High.Y = min(s.Low.X, q.X), min(s.Low.Y, q.Y), max(s.High.X, q.X), max(s.High.Y, q.Y)
}

// grow makes the sight reach on past all that is there.
func (s *Sight) grow(by float64) {
	s.Low, s.High = space.Point{X: s.Low.X - by, Y: s.Low.Y - by}, space.Point{X: s.High.X + by, Y: s.High.Y + by}
}

// nearer keeps the less of two gaps.
func (s *Sight) nearer(g Gap) {
	if g.Size < s.Gap.Size {
		s.Gap = g
	}
}

// side measures to a straight wall across an axis (0 is x) at a place, the free
// side of which is up or down the axis; of the panel's points only those that
// count.
func (s *Sight) side(axis int, place float64, up bool, counts func(space.Point) bool) {
	if math.IsInf(place, 0) {
		return
	}
	for _, q := range s.Panel {
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
		from[axis], to[axis] = at[axis]-sign*s.Wrap, place
		s.nearer(Gap{space.Point{X: from[0], Y: from[1]}, space.Point{X: to[0], Y: to[1]}, away - s.Wrap})
	}
}

// around measures to all four sides of a box.
func (s *Sight) around(wide, high float64) {
	s.side(0, 0, true, nil)
	s.side(0, wide, false, nil)
	s.side(1, 0, true, nil)
	s.side(1, high, false, nil)
}

// corner measures to a corner that stands in from above and from the right; less
// than nothing where the panel lies over it.
func (s *Sight) corner(c space.Point) {
	over := contains(s.Panel, c)
	nearest, least := space.Point{}, math.Inf(1)
	for i, a := range s.Panel {
		b := s.Panel[(i+1)%len(s.Panel)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			t = min(1, max(0, ((c.X-a.X)*dx+(c.Y-a.Y)*dy)/l))
		}
		q := space.Point{X: a.X + t*dx, Y: a.Y + t*dy}
		free := over || c.X > q.X && c.Y > q.Y
		if d := math.Hypot(c.X-q.X, c.Y-q.Y); free && d < least {
			nearest, least = q, d
		}
	}
	if math.IsInf(least, 1) || least == 0 {
		return
	}
	off := s.Wrap / least
	if over {
		least, off = -least, -off
	}
	s.nearer(Gap{space.Point{X: nearest.X + off*(c.X-nearest.X), Y: nearest.Y + off*(c.Y-nearest.Y)}, c, least - s.Wrap})
}

// contains reports whether a point lies in an outline: a ray from it crosses that
// an odd number of times.
func contains(outline []space.Point, p space.Point) (inside bool) {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			inside = !inside
		}
	}
	return inside
}

// Sights are a leg's plan and section, in its pose.
func Sights(l carrying.Leg, p carrying.Pose) []*Sight {
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
		way := l.Way.Get()
		above := cornerPlan(p, way.Outcome == passage.Passes)
		if way.Climbs {
			return []*Sight{above, stairSection(l, p)}
		}
		return []*Sight{above, cornerSection(p, high)}
	case carrying.Floor:
		return carSights(l, p)
	case carrying.Ascent:
		return []*Sight{ascentPlan(l, p), ascentSection(l, p)}
	case carrying.Wall:
		return []*Sight{wallPlan(p, l.Width.Get(), p.B), wallSection(p, high, p.B)}
	default:
		thick := 0.0
		if l.Wall.Given() {
			thick = l.Wall.Get()
		}
		if l.Kind.Get() != "door" {
			return []*Sight{tubePlan(p), openingSection(p)}
		}
		return []*Sight{wallPlan(p, p.A, thick), openingSection(p)}
	}
}

// leastWall is how thick a wall is drawn that has no thickness.
const leastWall = 0.02

// wallPlan is an opening in a wall from above.
func wallPlan(p carrying.Pose, wide, thick float64) *Sight {
	s := newSight("plan", p.Plan, p.Inside)
	s.between(wide, thick)
	s.Solid = append(s.Solid, [4]float64{0, s.Low.Y, max(thick, leastWall), 0}, [4]float64{0, wide, max(thick, leastWall), s.High.Y})
	return s
}

// wallSection is an opening in a wall from the side: over the floor, under the
// lintel.
func wallSection(p carrying.Pose, high, thick float64) *Sight {
	s := newSight("section", p.Side, p.Inside)
	s.between(within(high, s.High.Y), thick)
	s.floor()
	if !math.IsInf(high, 1) {
		s.Solid = append(s.Solid, [4]float64{0, high, max(thick, leastWall), s.High.Y})
	}
	return s
}

// between measures to both sides of an opening in a wall, where the panel is in
// it, and shows what stands beside.
func (s *Sight) between(wide, thick float64) {
	inside := func(q space.Point) bool { return q.X >= -onWall && q.X <= thick+onWall }
	whole := s.Panel
	s.Panel = cutAt(cutAt(whole, 0), thick)
	s.side(1, 0, true, inside)
	s.side(1, wide, false, inside)
	s.Panel = whole
	s.show(space.Point{X: 0, Y: 0})
	s.show(space.Point{X: thick, Y: wide})
	s.grow(wallShown)
}

// cutAt adds the points in which an outline crosses a line across x.
func cutAt(outline []space.Point, x float64) (out []space.Point) {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		out = append(out, a)
		if (a.X < x) != (b.X < x) {
			out = append(out, space.Point{X: x, Y: a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)})
		}
	}
	return out
}

// floor draws a line under the sight.
func (s *Sight) floor() {
	s.Lines = append(s.Lines, []space.Point{{X: s.Low.X, Y: 0}, {X: s.High.X, Y: 0}})
}

// openingSection is an opening, a corridor or a flight seen square on.
func openingSection(p carrying.Pose) *Sight {
	s := newSight("section", p.Square, p.Inside)
	s.around(p.A, p.B)
	s.show(space.Point{})
	s.show(space.Point{X: p.A, Y: within(p.B, s.High.Y)})
	s.grow(wallShown)
	b := within(p.B, s.High.Y)
	s.Solid = [][4]float64{{s.Low.X, s.Low.Y, s.High.X, 0}, {s.Low.X, 0, 0, s.High.Y}, {p.A, 0, s.High.X, s.High.Y}}
	if b < s.High.Y {
		s.Solid = append(s.Solid, [4]float64{0, b, p.A, s.High.Y})
	}
	return s
}

// tubePlan is a corridor or a flight from above.
func tubePlan(p carrying.Pose) *Sight {
	s := newSight("plan", p.Plan, p.Inside)
	s.side(1, 0, true, nil)
	s.side(1, p.A, false, nil)
	s.show(space.Point{X: s.Low.X - reachShown, Y: 0})
	s.show(space.Point{X: s.High.X + reachShown, Y: p.A})
	s.Lines = [][]space.Point{{{X: s.Low.X, Y: 0}, {X: s.High.X, Y: 0}}, {{X: s.Low.X, Y: p.A}, {X: s.High.X, Y: p.A}}}
	return s
}

// cornerPlan comes in from the top and goes on to the right. What passes and covers the
// corner from above has a hollow there, to which nothing is measured.
func cornerPlan(p carrying.Pose, passes bool) *Sight {
	s := newSight("plan", p.Plan, p.Inside)
	s.side(0, 0, true, nil)
	s.side(1, 0, true, nil)
	if inner := (space.Point{X: p.A, Y: p.B}); !passes || !contains(p.Plan, inner) {
		s.corner(inner)
	}
	s.show(space.Point{})
	s.show(space.Point{X: p.A + reachShown, Y: p.B + reachShown})
	s.Lines = [][]space.Point{
		{{X: 0, Y: s.High.Y}, {}, {X: s.High.X, Y: 0}},
		{{X: p.A, Y: s.High.Y}, {X: p.A, Y: p.B}, {X: s.High.X, Y: p.B}},
	}
	return s
}

// cornerSection looks along the way in.
func cornerSection(p carrying.Pose, high float64) *Sight {
	s := newSight("section", p.Side, p.Inside)
	s.side(0, 0, true, nil)
	s.side(1, 0, true, nil)
	s.side(1, high, false, nil)
	s.show(space.Point{})
	s.show(space.Point{X: s.High.X + reachShown, Y: within(high, s.High.Y)})
	s.Lines = [][]space.Point{{{X: s.High.X, Y: 0}, {}, {X: 0, Y: within(high, s.High.Y)}}}
	if !math.IsInf(high, 1) {
		s.Lines = append(s.Lines, []space.Point{{X: 0, Y: high}, {X: s.High.X, Y: high}})
	}
	return s
}

// carSights are the inside of a vehicle or an elevator with the panel at rest and
// the rest of the load.
func carSights(l carrying.Leg, p carrying.Pose) []*Sight {
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
		gaps := [2]Gap{plan.Gap, section.Gap}
		plan, section = newSight("plan", load[0].Plan, p.Inside), newSight("section", load[0].Side, p.Inside)
		plan.Gap, section.Gap = gaps[0], gaps[1]
		for _, q := range load[1:] {
			plan.Load, section.Load = append(plan.Load, q.Plan), append(section.Load, q.Side)
		}
	} else {
		plan.around(in.Length.Get(), in.Width.Get())
		section.around(in.Length.Get(), high)
	}
	plan.car(in.Length.Get(), in.Width.Get(), left, left+l.Door.Width.Get())
	section.car(in.Length.Get(), high, sill, top)
	return []*Sight{plan, section}
}

// door measures to the sides of a door in the left end, as the panel is pushed in
// square to it.
func (s *Sight) door(from, to float64) {
	for _, q := range s.Panel {
		s.nearer(Gap{space.Point{Y: q.Y - s.Wrap}, space.Point{Y: from}, q.Y - from - s.Wrap})
		if !math.IsInf(to, 1) {
			s.nearer(Gap{space.Point{Y: q.Y + s.Wrap}, space.Point{Y: to}, to - q.Y - s.Wrap})
		}
	}
}

// car is the inside, with the door in its left end.
func (s *Sight) car(long, high, door, top float64) {
	s.show(space.Point{})
	end := within(high, s.High.Y)
	s.show(space.Point{X: long, Y: end})
	s.Lines = [][]space.Point{{{X: 0, Y: max(0, door)}, {}, {X: long, Y: 0}, {X: long, Y: end}}}
	if !math.IsInf(high, 1) {
		s.Lines[0] = append(s.Lines[0], space.Point{X: 0, Y: end}, space.Point{X: 0, Y: min(end, top)})
	}
}

// roomShown is how much of a long room is shown past the panel, in m.
const roomShown = 1.5

// Grown is an outline with a wrap around it, mitred at its corners.
func Grown(outline []space.Point, by float64) (out []space.Point) {
	var kept []space.Point
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
	normal := func(a, b space.Point) (x, y float64) {
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		return (b.Y - a.Y) / l, (a.X - b.X) / l
	}
	for i, q := range kept {
		ax, ay := normal(kept[(i+len(kept)-1)%len(kept)], q)
		bx, by2 := normal(q, kept[(i+1)%len(kept)])
		k := by / max(0.3, 1+ax*bx+ay*by2)
		out = append(out, space.Point{X: q.X + k*(ax+bx), Y: q.Y + k*(ay+by2)})
	}
	return out
}
