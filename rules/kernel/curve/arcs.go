package curve

import "math"

// Stretch is a part of a curve that is a straight line, an arc of one circle, or
// within a given distance of one.
type Stretch struct {
	From, To Point
	Turn     float64 // by which it turns to the right, rad; nothing of a line
}

// Arcs is the curve as lines and arcs of circles from end to end, for machines that
// follow no other. Lines and arcs are what they are; of an ellipse and its
// parallels the arcs go through points of the curve and leave it by no more than
// within, in the unit of the points, at seven places of each. Where within is 0 or
// less the division ends at 1e-4 rad of the parameter. Derived here.
func (c Curve) Arcs(within float64) []Stretch {
	var out []Stretch
	for _, s := range c.segments {
		switch s := s.(type) {
		case line:
			out = append(out, Stretch{From: s.from, To: s.to})
		case arc:
			out = append(out, Stretch{s.at(0), s.at(s.length()), s.sweep})
		case ellipse:
			out = s.arcs(out, s.t0, s.t1, within)
		}
	}
	return out
}

// leastStep ends the division of an ellipse, in rad of its parameter.
const leastStep = 1e-4

// arcs divides an ellipse between two parameters until the arc through the ends
// and the middle of each part lies on it.
func (e ellipse) arcs(out []Stretch, t0, t1, within float64) []Stretch {
	from, middle, to := e.point(t0), e.point((t0+t1)/2), e.point(t1)
	centre, radius := circle(from, middle, to)
	off := 0.0
	const checks = 8
	for i := 1; i < checks; i++ {
		p := e.point(t0 + (t1-t0)*float64(i)/checks)
		off = max(off, math.Abs(p.distance(centre)-radius))
	}
	turned := from.sub(centre).cross(to.sub(centre))
	if off <= within && turned < 0 || math.Abs(t1-t0) < leastStep {
		return append(out, Stretch{from, to, 2 * math.Asin(min(1, from.distance(to)/2/radius))})
	}
	out = e.arcs(out, t0, (t0+t1)/2, within)
	return e.arcs(out, (t0+t1)/2, t1, within)
}

// circle goes through three points that are on no line.
func circle(a, b, c Point) (centre Point, radius float64) {
	u, v := b.sub(a), c.sub(a)
	d := 2 * u.cross(v)
	uu, vv := u.Y*u.Y+u.Z*u.Z, v.Y*v.Y+v.Z*v.Z
	o := Point{(v.Z*uu - u.Z*vv) / d, (u.Y*vv - v.Y*uu) / d}
	return a.add(o), math.Hypot(o.Y, o.Z)
}
