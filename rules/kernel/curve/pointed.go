package curve

import (
	"math"
)

// PointedByRadius is two arcs of radius R that meet at the crown, their centres on
// the springing line: lancet where R > s, equilateral where R = s, drop where s/2 <
// R < s, and at R = s/2 the semicircle; s is the span, in the unit of R. A span
// that is not positive or a radius below s/2 is an *ImpossibleError. Source: Brick
// Development Association, note on arches; the sweep of each arc, acos(1 − s/2R),
// is derived.
func PointedByRadius(span, radius float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	if err := (ImpossibleError{Dimension: "radius", Over: span / 2, From: true, To: math.Inf(1)}).within(radius); err != nil {
		return Curve{}, err
	}
	sweep := math.Acos(1 - span/(2*radius))
	return chain(
		arc{centre: Point{Y: radius}, radius: radius, start: math.Pi, sweep: sweep},
		arc{centre: Point{Y: span - radius}, radius: radius, start: sweep, sweep: sweep},
	), nil
}

// PointedByRise is the arch of [PointedByRadius] by its rise h: R = (h² + s²/4)/s,
// derived by Pythagoras. A rise below half the span is an *ImpossibleError.
func PointedByRise(span, rise float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	if err := (ImpossibleError{Dimension: "rise", Over: span / 2, From: true, To: math.Inf(1)}).within(rise); err != nil {
		return Curve{}, err
	}
	return PointedByRadius(span, max(span/2, (rise*rise+span*span/4)/span))
}
