package opening

import "math"

// Fit is how a rectangle lies in another.
type Fit struct {
	// Margin is the greatest clearance that can be had on all four sides at
	// once; below nothing, by how much the opening would have to grow on every
	// side, in m.
	Margin float64
	// Angle turns the longer side of the piece from the longer side of the
	// opening, in rad.
	Angle float64
}

// fits reports whether a rectangle of p by q goes into one of a by b, p ≥ q and
// a ≥ b, turned as need be. Source: the theorem of W. Carver (1957), in J. E.
// Wetzel, Rectangles in Rectangles, Mathematics Magazine 73(3), 2000.
func fits(p, q, a, b float64) bool {
	if p <= a {
		return q <= b
	}
	d := p*p + q*q
	return q <= b && b*d >= 2*p*q*a+(p*p-q*q)*math.Sqrt(d-a*a)
}

// marginSteps halve the range of the margin: to its last bit.
const marginSteps = 60

// RectangleInRectangle is the best way of passing a rectangle of p by q through one
// of a by b, all positive and in m, turned in its own plane: its margin, in m,
// below 0 where it does not pass, and its angle. A side of the opening may be +Inf.
//
// It is exact, to round-off: opening and clearance enter the theorem as an opening
// smaller by the clearance on each side. Source: the theorem of W. Carver (1957),
// in J. E. Wetzel, Rectangles in Rectangles, Mathematics Magazine 73(3), 2000.
func RectangleInRectangle(p, q, a, b float64) Fit {
	p, q = max(p, q), min(p, q)
	a, b = max(a, b), min(a, b)
	// Straight, the margin is half of what is left; turned, it may be more.
	straight := min(a-p, b-q) / 2
	lo, hi := straight, (b-q)/2
	for range marginSteps {
		if mid := (lo + hi) / 2; fits(p, q, a-2*mid, b-2*mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	if !(lo > straight+1e-12*a) { // less is round-off, and there is no such turned place
		return Fit{Margin: straight}
	}
	return Fit{Margin: lo, Angle: turned(p, q, a-2*lo)}
}

// turned is the angle at which p by q touches the short sides of an opening a
// long: where its extent along it, p·cos + q·sin, is a.
func turned(p, q, a float64) float64 {
	return math.Acos(min(1, a/math.Hypot(p, q))) + math.Atan2(q, p)
}
