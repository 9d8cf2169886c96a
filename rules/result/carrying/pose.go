package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
)

// Plane is what a pose is seen in.
type Plane uint8

// The planes.
const (
	Opening Plane = iota + 1 // an opening seen square on: A wide, B high
	Corner                   // a plan: coming in from the top in 0 ≤ x ≤ A, going on to the right in 0 ≤ y ≤ B
	Wall                     // across a wall B thick, 0 ≤ x ≤ B, with an opening 0 ≤ y ≤ A in it
	Floor                    // of a car: A long, B wide
)

// Pose is the panel as the best motion has it where it is tightest: in the way,
// if it does not pass. Lengths are in m.
type Pose struct {
	Plane  Plane
	A, B   float64
	Panel  []passage.Point // its outline, without the wrap
	Inside float64         // what the wrap takes on every side of it
}

// Pose is that of the leg's motion; there is none of a leg without one.
func (w Way) Pose() (Pose, bool) {
	if w.pose == nil {
		return Pose{}, false
	}
	return w.pose(), true
}

// turnedBy turns points, and moves their box's lower left corner to the origin.
func turnedBy(points []passage.Point, angle float64) (out []passage.Point, width, height float64) {
	s, c := math.Sincos(angle)
	low := passage.Point{X: math.Inf(1), Y: math.Inf(1)}
	high := passage.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range points {
		q := passage.Point{X: p.X*c - p.Y*s, Y: p.X*s + p.Y*c}
		low.X, low.Y, high.X, high.Y = min(low.X, q.X), min(low.Y, q.Y), max(high.X, q.X), max(high.Y, q.Y)
		out = append(out, q)
	}
	return moved(out, -low.X, -low.Y), high.X - low.X, high.Y - low.Y
}

func moved(points []passage.Point, x, y float64) []passage.Point {
	for i := range points {
		points[i].X += x
		points[i].Y += y
	}
	return points
}

// inOpening is a section in the middle of an opening.
func (p *panel) inOpening(section []passage.Point, angle, w, h float64) Pose {
	out, wide, high := turnedBy(section, angle)
	return Pose{Opening, w, h, moved(out, (w-wide)/2, (h-high)/2), p.wrap}
}

func rectangle(w, h float64) []passage.Point {
	return []passage.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}}
}

// boxIn is a rectangle in an opening, its longer side turned from the opening's
// longer one.
func (p *panel) boxIn(a, b, angle, w, h float64) Pose {
	long, short := max(a, b), min(a, b)
	if h > w {
		angle += math.Pi / 2
	}
	return p.inOpening(rectangle(long, short), angle, w, h)
}

// inWall is the strip half way along its own circle, the room that is left
// shared between both jambs.
func (p *panel) inWall(width, thick, margin float64) Pose {
	outer := p.radius + p.thickness
	x, y := thick/2, width-margin-p.wrap-outer
	const steps = 48
	var out []passage.Point
	arc := func(r float64, from, to float64) {
		for i := range steps + 1 {
			s, c := math.Sincos(from + (to-from)*float64(i)/steps)
			out = append(out, passage.Point{X: x + r*s, Y: y + r*c})
		}
	}
	arc(p.radius, -p.half, p.half)
	arc(outer, p.half, -p.half)
	return Pose{Wall, width, thick, out, p.wrap}
}

// tightSteps are the angles that are looked at for the tightest one, which only
// the picture hangs on.
const tightSteps = 180

// around is a plan shape in the corner at the angle where the inner corner is
// nearest, away from the outer walls by the margin that is left.
func (p *panel) around(shape []passage.Point, from, to, a, b, margin float64) Pose {
	best, least := from, math.Inf(1)
	for i := range tightSteps + 1 {
		angle := from + (to-from)*float64(i)/tightSteps
		if c := passage.CornerClearance(shape, angle, a, b); c < least {
			best, least = angle, c
		}
	}
	out, _, _ := turnedBy(shape, best)
	off := p.wrap + max(0, margin)
	return Pose{Corner, a, b, moved(out, off, off), p.wrap}
}

// boxAround is a rectangle in the corner: not turned, if it can slide round.
func (p *panel) boxAround(l, w, a, b, margin float64) Pose {
	g := 2 * (p.wrap + max(0, margin))
	switch {
	case w+g <= a+1e-6 && l+g <= b+1e-6:
		return p.around(rectangle(w, l), 0, 0, a, b, margin)
	case l+g <= a+1e-6 && w+g <= b+1e-6:
		return p.around(rectangle(l, w), 0, 0, a, b, margin)
	}
	return p.around(rectangle(min(l, w), max(l, w)), 0, math.Pi/2, a, b, margin)
}
