package curve

import (
	"fmt"
	"math"
)

// ImpossibleError says that a profile can't have a dimension, and which it can
// have.
type ImpossibleError struct {
	Dimension string  // "span", "rise", "radius", "crown radius", "haunch radius"
	Value     float64 // as given
	Over      float64 // possible above this
	To        float64 // and up to this, or below it where Below is set; may be +Inf
	From      bool    // Over itself is possible
	Below     bool    // To itself is not possible
}

func (e *ImpossibleError) Error() string {
	return fmt.Sprintf("%s %g is not between %g and %g", e.Dimension, e.Value, e.Over, e.To)
}

// within checks a dimension; NaN is never within.
func (e ImpossibleError) within(v float64) error {
	low := v > e.Over || e.From && v == e.Over
	high := v < e.To || !e.Below && v == e.To
	if low && high && !math.IsInf(v, 0) {
		return nil
	}
	e.Value = v
	return &e
}

func positive(dimension string, v float64) error {
	return ImpossibleError{Dimension: dimension, To: math.Inf(1)}.within(v)
}

// Flat is a level line.
func Flat(span float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	return chain(line{Point{}, Point{Y: span}}), nil
}

// Segmental is an arc of one circle, its rise at most half the span:
// R = (s²/4 + h²)/(2h). Source: Machinery's Handbook, 31st edition, p. 79.
func Segmental(span, rise float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	if err := (ImpossibleError{Dimension: "rise", To: span / 2}).within(rise); err != nil {
		return Curve{}, err
	}
	r := (span*span/4 + rise*rise) / (2 * rise)
	half := 2 * math.Atan2(rise, span/2) // tan(half/2) = h/(s/2)
	return chain(crownArc(Point{span / 2, rise - r}, r, half)), nil
}

// crownArc spans half to each side of the upright through its centre.
func crownArc(centre Point, r, half float64) arc {
	return arc{centre: centre, radius: r, start: math.Pi/2 + half, sweep: 2 * half}
}

// Semicircular is half a circle.
func Semicircular(span float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	return chain(crownArc(Point{Y: span / 2}, span/2, math.Pi/2)), nil
}

// ThreeCentredByHaunch is three arcs that are tangent to each other and upright
// at the springing: two of the haunch radius r and one between them of the
// crown radius
//
//	R = (a² + h² − 2ar)/(2(h − r)),  a = s/2,  0 < r < h < a
//
// derived from (R − r)² = (a − r)² + (R − h)².
func ThreeCentredByHaunch(span, rise, haunch float64) (Curve, error) {
	if err := threeCentredRise(span, rise); err != nil {
		return Curve{}, err
	}
	if err := (ImpossibleError{Dimension: "haunch radius", To: rise, Below: true}).within(haunch); err != nil {
		return Curve{}, err
	}
	a := span / 2
	return threeCentred(a, rise, haunch, (a*a+rise*rise-2*a*haunch)/(2*(rise-haunch))), nil
}

// ThreeCentredByCrown is the same by its crown radius, which must be greater
// than (a² + h²)/(2h): there the haunches vanish and one arc is left.
func ThreeCentredByCrown(span, rise, crown float64) (Curve, error) {
	if err := threeCentredRise(span, rise); err != nil {
		return Curve{}, err
	}
	a := span / 2
	least := (a*a + rise*rise) / (2 * rise)
	if err := (ImpossibleError{Dimension: "crown radius", Over: least, To: math.Inf(1)}).within(crown); err != nil {
		return Curve{}, err
	}
	return threeCentred(a, rise, (2*crown*rise-a*a-rise*rise)/(2*(crown-a)), crown), nil
}

func threeCentredRise(span, rise float64) error {
	if err := positive("span", span); err != nil {
		return err
	}
	return ImpossibleError{Dimension: "rise", To: span / 2, Below: true}.within(rise)
}

func threeCentred(a, h, r, crown float64) Curve {
	half := math.Atan2(a-r, crown-h)
	side := math.Pi/2 - half
	return chain(
		arc{centre: Point{Y: r}, radius: r, start: math.Pi, sweep: side},
		crownArc(Point{a, h - crown}, crown, half),
		arc{centre: Point{Y: 2*a - r}, radius: r, start: math.Pi/2 - half, sweep: side},
	)
}

// PointedByRadius is two arcs that meet at the crown, their centres on the
// springing line: lancet where R > s, equilateral where R = s, drop where
// s/2 < R < s, and at R = s/2 the semicircle. Source: Brick Development
// Association, note on arches.
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

// PointedByRise is the same by its rise, at least half the span:
// R = (h² + s²/4)/s.
func PointedByRise(span, rise float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	if err := (ImpossibleError{Dimension: "rise", Over: span / 2, From: true, To: math.Inf(1)}).within(rise); err != nil {
		return Curve{}, err
	}
	return PointedByRadius(span, max(span/2, (rise*rise+span*span/4)/span))
}

// Elliptical is the upper half of an ellipse, of any rise. Its length is
// integrated, since no closed form exists: to 1e-12 of itself for a rise from
// a twentieth of the span to ten times it.
func Elliptical(span, rise float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	if err := positive("rise", rise); err != nil {
		return Curve{}, err
	}
	return chain(newEllipse(ellipse{centre: Point{Y: span / 2}, a: span / 2, b: rise, t0: math.Pi})), nil
}
