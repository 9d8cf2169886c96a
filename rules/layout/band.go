package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
)

// BandSteps is how many straight steps a parallel is drawn in: the area of the
// chords differs from that of the arcs by less than 1e-5. It is even, so that
// the crown is a point.
const BandSteps = 192

// Band is the figure between two parallels of the intrados, from one arc
// length to another. Where it reaches a springing its foot is cut as the spec
// says; past the springing a member that is cut level runs on straight.
func (v Vault) Band(s0, s1, from, to float64) Region {
	inner, outer := v.side(s0, s1, from), v.side(s0, s1, to)
	r := make(Region, 0, len(inner)+len(outer))
	r = append(r, inner...)
	for i := range outer {
		r = append(r, outer[len(outer)-1-i])
	}
	return v.cutFeet(r, s0 <= 0, s1 >= v.Arc)
}

// side is one parallel, with its ends run on for a level cut.
func (v Vault) side(s0, s1, d float64) []curve.Point {
	var points []curve.Point
	part := v.Intrados.Between(s0, s1)
	if d != 0 {
		p, err := part.Offset(d)
		if err != nil {
			panic(err) // outward never folds
		}
		part = p
	}
	points = part.Polyline(BandSteps)
	if v.Cut != "level" || d == 0 {
		return points
	}
	// The end of the parallel stands d·cos above the springing; along the
	// tangent it comes down over d·cot.
	sin, cos := math.Sincos(v.HalfAngle)
	run := d * cos / sin
	if s0 <= 0 {
		p := points[0]
		points = append([]curve.Point{{Y: p.Y - run*cos, Z: p.Z - run*sin}}, points...)
	}
	if s1 >= v.Arc {
		p := points[len(points)-1]
		points = append(points, curve.Point{Y: p.Y + run*cos, Z: p.Z - run*sin})
	}
	return points
}

// cutFeet takes off what a plumb or a level cut leaves outside.
func (v Vault) cutFeet(r Region, left, right bool) Region {
	switch {
	case v.Cut == "plumb" && left && right:
		return r.clip(halfPlane{curve.Point{}, curve.Point{Y: 1}}).
			clip(halfPlane{curve.Point{Y: v.Span}, curve.Point{Y: -1}})
	case v.Cut == "plumb" && left:
		return r.clip(halfPlane{curve.Point{}, curve.Point{Y: 1}})
	case v.Cut == "plumb" && right:
		return r.clip(halfPlane{curve.Point{Y: v.Span}, curve.Point{Y: -1}})
	case v.Cut == "level" && (left || right):
		return r.clip(halfPlane{curve.Point{}, curve.Point{Z: 1}})
	default:
		return r
	}
}

// block is the rectangle of a rail's section that stands on the intrados at an
// arc length, from a to b along the tangent there and up to a depth.
func (v Vault) block(s, a, b, depth float64) Region {
	at, t := v.Intrados.At(s), v.Intrados.Tangent(s)
	if s >= v.Arc { // at the right end the last piece's own tangent
		t = v.Intrados.Tangent(math.Nextafter(v.Arc, 0))
	}
	n := curve.Normal(t)
	corner := func(x, d float64) curve.Point {
		return curve.Point{Y: at.Y + x*t.Y + d*n.Y, Z: at.Z + x*t.Z + d*n.Z}
	}
	return Region{corner(a, 0), corner(b, 0), corner(b, depth), corner(a, depth)}
}

// RailSection is the section of the rail at an arc length: whole inside a
// panel, half beside a seam, and half and cut with the foot at a springing.
// Left and right say which halves are there.
func (v Vault) RailSection(s float64, rail Member, left, right bool) Region {
	a, b := 0.0, 0.0
	if left {
		a = -rail.Width / 2
	}
	if right {
		b = rail.Width / 2
	}
	atLeft, atRight := s <= 0, s >= v.Arc
	if v.Cut == "level" && v.HalfAngle > 0 {
		run := rail.Depth / math.Tan(v.HalfAngle)
		if atLeft {
			a = -run
		}
		if atRight {
			b = run
		}
	}
	return v.cutFeet(v.block(s, a, b, rail.Depth), atLeft, atRight)
}
