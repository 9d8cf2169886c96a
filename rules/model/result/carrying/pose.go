package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// Plane is what a pose is seen in.
type Plane uint8

// The planes.
const (
	Opening Plane = iota + 1 // an opening seen square on: A wide, B high
	Corner                   // a plan: coming in from the top in 0 ≤ x ≤ A, going on to the right in 0 ≤ y ≤ B
	Wall                     // across a wall B thick, 0 ≤ x ≤ B, with an opening 0 ≤ y ≤ A in it
	Floor                    // of a car: A long, B wide
	Ascent                   // of a straight stair: along x up to the landing's edge at 0, its flight in 0 ≤ y ≤ A
)

// Pose is the panel as the best motion has it where it is tightest: in the way,
// if it does not pass. Lengths are in m.
type Pose struct {
	Plane  Plane
	A, B   float64
	Panel  []space.Point // its outline, without the wrap
	Inside float64       // what the wrap takes on every side of it

	// The same pose from above, from the side and square on: a door's wall is
	// 0 ≤ x ≤ its thickness, z is up.
	Plan, Side, Square []space.Point
}

// Pose is that of the leg's motion; there is none of a leg without one, and none
// of a brief search.
func (w Way) Pose() (Pose, bool) {
	if w.pose == nil {
		return Pose{}, false
	}
	pose := w.pose()
	return pose, pose.Plane != 0
}

// view is how a leg is seen: the plane, by the motion, and how tight a pose is
// in it, the least the tightest.
type view func(passage.Motion) (Pose, [2]int, func(space.Pose, []space.Point) float64)

// tightest is the tightest station of a motion.
func (p *panel) tightest(w walls, m passage.Motion) Pose {
	pose, axes, room := w.view(m)
	least := math.Inf(1)
	found := false
	var at space.Pose
	for _, q := range m.Poses() {
		outline := p.outline(q, axes)
		if r := room(q, outline); !found || r < least {
			pose.Panel, at, least, found = outline, q, r, true
		}
	}
	if !found {
		return Pose{}
	}
	if pose.Plane == Opening && len(m.Poses()) == 2 { // pushed straight: shown half way
		at.At.X += toMiddle(p.outline(at, side))
	}
	out := p.seen(pose, at)
	if m.Climbs && out.Plane == Corner {
		out.upright(w.sizes()[stairHeadroom])
	}
	return out
}

// upright turns the sides of a pose on a stair the right way up, since a motion up it is
// seen in a corner from below: a stair that turns to the other side, with the panel's
// mirror image, is then drawn.
func (p *Pose) upright(high float64) {
	for _, outline := range [2][]space.Point{p.Side, p.Square} {
		for i := range outline {
			outline[i].Y = high - outline[i].Y
		}
	}
}

// The pairs of axes that a pose is seen in.
var (
	plan   = [2]int{0, 1}
	side   = [2]int{0, 2}
	square = [2]int{1, 2}
)

// seen adds what a pose looks like from all three sides.
func (p *panel) seen(pose Pose, at space.Pose) Pose {
	pose.Inside = p.wrap
	pose.Plan, pose.Side, pose.Square = p.outline(at, plan), p.outline(at, side), p.outline(at, square)
	return pose
}

// toMiddle is how far the middle of an outline lies before x = 0.
func toMiddle(outline []space.Point) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range outline {
		low, high = min(low, q.X), max(high, q.X)
	}
	return -(low + high) / 2
}

// Stowed is a vehicle's load, each panel in its place on the floor.
func (w Way) Stowed() []Pose {
	if w.stowed == nil {
		return nil
	}
	return w.stowed()
}

// outline is the panel's in a plane of two of the world's axes: its section, if
// it is seen along its length, or else all that it covers, without what is
// hollow.
func (p *panel) outline(q space.Pose, axes [2]int) []space.Point {
	at := [3]float64{q.At.X, q.At.Y, q.At.Z}
	see := func(x float64, s space.Point) space.Point {
		along := func(i int) float64 {
			e := q.Turn[i]
			return at[i] + x*e.X + s.X*e.Y + s.Y*e.Z
		}
		return space.Point{X: along(axes[0]), Y: along(axes[1])}
	}
	half := p.body.Length() / 2
	var ends []space.Point
	for _, x := range []float64{-half, half} {
		for _, s := range p.body.Section() {
			ends = append(ends, see(x, s))
		}
	}
	if seen := 3 - axes[0] - axes[1]; math.Abs(q.Turn[seen].X) > 1-1e-9 {
		return ends[:len(ends)/2]
	}
	return corners(space.Hull(ends))
}

// straight is how far a point may lie off the line of its neighbours, in m, and be
// no corner: over round-off, which differs between processors, and under what any
// arc of an outline rises.
const straight = 1e-7

// corners are a hull without the points in its straight sides.
func corners(hull []space.Point) (out []space.Point) {
	n := len(hull)
	for i, q := range hull {
		before, after := hull[(i+n-1)%n], hull[(i+1)%n]
		if len(out) > 0 {
			before = out[len(out)-1]
		}
		x, y := after.X-before.X, after.Y-before.Y
		if off := x*(q.Y-before.Y) - y*(q.X-before.X); math.Abs(off) > straight*math.Hypot(x, y) {
			out = append(out, q)
		}
	}
	return out
}

// throughWall sees what is threaded across the wall, and all else square on.
func throughWall(width, high, thick float64) view {
	return func(m passage.Motion) (Pose, [2]int, func(space.Pose, []space.Point) float64) {
		middle := func(q space.Pose, _ []space.Point) float64 { return math.Abs(q.At.X - thick/2) }
		if poses := m.Poses(); m.Way == passage.Threaded3 && len(poses) > 0 {
			if math.Abs(poses[0].Turn[2].X) > math.Sqrt2/2 {
				return Pose{Plane: Wall, A: width, B: thick}, plan, middle
			}
			return Pose{Plane: Wall, A: high, B: thick}, side, middle
		}
		return Pose{Plane: Opening, A: width, B: high}, [2]int{1, 2}, middle
	}
}

// aroundCorner is a plan; a pose is as tight as it is near to the inner corner.
func aroundCorner(width, onward float64) view {
	return func(passage.Motion) (Pose, [2]int, func(space.Pose, []space.Point) float64) {
		return Pose{Plane: Corner, A: width, B: onward}, [2]int{0, 1}, func(_ space.Pose, outline []space.Point) float64 {
			least, left, low := fromOutline(space.Point{X: width, Y: onward}, outline), math.Inf(1), math.Inf(1)
			for _, q := range outline {
				left, low = min(left, q.X), min(low, q.Y)
			}
			if left >= width || low >= onward {
				return math.Inf(1) // not yet in the corner, or past it
			}
			return least
		}
	}
}

// alongFlight sees a straight stair from above; a pose is as tight as the panel's middle is
// near to the landing's edge.
func alongFlight(width float64) view {
	return func(passage.Motion) (Pose, [2]int, func(space.Pose, []space.Point) float64) {
		return Pose{Plane: Ascent, A: width}, plan, func(q space.Pose, _ []space.Point) float64 { return math.Abs(q.At.X) }
	}
}

// fromOutline is how far a place is from an outline, below nothing within it.
func fromOutline(at space.Point, outline []space.Point) float64 {
	least, inside := math.Inf(1), false
	last := outline[len(outline)-1]
	for _, q := range outline {
		dx, dy := q.X-last.X, q.Y-last.Y
		f := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			f = min(1, max(0, ((at.X-last.X)*dx+(at.Y-last.Y)*dy)/l))
		}
		least = min(least, math.Hypot(last.X+f*dx-at.X, last.Y+f*dy-at.Y))
		if (q.Y > at.Y) != (last.Y > at.Y) && at.X < last.X+dx*(at.Y-last.Y)/dy {
			inside = !inside
		}
		last = q
	}
	if inside {
		return -least
	}
	return least
}

// onFloor is the floor of a car with the panel at rest.
func onFloor(length, width float64) view {
	return func(passage.Motion) (Pose, [2]int, func(space.Pose, []space.Point) float64) {
		return Pose{Plane: Floor, A: length, B: width}, [2]int{0, 1}, func(q space.Pose, _ []space.Point) float64 { return -q.At.X }
	}
}
