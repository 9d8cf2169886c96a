package curve

import (
	"math"
)

// ThreeCentredByHaunch is three arcs that are tangent to each other and upright at
// the springing: two of the haunch radius r and one between them of the crown
// radius
//
//	R = (a² + h² − 2ar)/(2(h − r)),  a = s/2,  0 < r < h < a
//
// with s the span and h the rise, all in one unit. Outside these bounds, and for
// NaN, it is an *ImpossibleError.
//
// Derived from the tangency of the arcs, (R − r)² = (a − r)² + (R − h)².
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

// ThreeCentredByCrown is the arch of [ThreeCentredByHaunch] by its crown radius R:
// r = (2Rh − a² − h²)/(2(R − a)). R must be greater than (a² + h²)/(2h), where the
// haunches vanish and one arc is left; otherwise it is an *ImpossibleError. Derived
// from the same equation.
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
