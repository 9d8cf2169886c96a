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

// Error is in the unit of the dimension as it was given, which a curve does not
// know.
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

// Flat is a level line. A span that is not positive and finite is an
// *ImpossibleError.
func Flat(span float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	return chain(line{Point{}, Point{Y: span}}), nil
}

// Segmental is an arc of one circle of radius R = (s²/4 + h²)/(2h), with span s and
// rise h in one unit. A span that is not positive, or a rise that is not above 0
// and up to half the span, is an *ImpossibleError. Source: Machinery's Handbook,
// 31st edition, p. 79.
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

// Semicircular is half a circle, its radius half the span. A span that is not
// positive and finite is an *ImpossibleError.
func Semicircular(span float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	return chain(crownArc(Point{Y: span / 2}, span/2, math.Pi/2)), nil
}

// Elliptical is the upper half of an ellipse, of any rise, in the unit of the span.
// A span or a rise that is not positive and finite is an *ImpossibleError.
//
// Its length is integrated by five-point Gauss-Legendre quadrature over 128 even
// steps of the parameter, since no closed form exists: to 1e-12 of itself for a
// rise from a twentieth of the span to ten times it.
func Elliptical(span, rise float64) (Curve, error) {
	if err := positive("span", span); err != nil {
		return Curve{}, err
	}
	if err := positive("rise", rise); err != nil {
		return Curve{}, err
	}
	return chain(newEllipse(ellipse{centre: Point{Y: span / 2}, a: span / 2, b: rise, t0: math.Pi})), nil
}
