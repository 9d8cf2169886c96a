package corner

import "math"

// roomAt is the greatest distance G that a point can keep from all walls of
// a corner if the body is that far from both outer walls: A and B are how far
// the inner corner's two faces are beyond the point, were the body hard against
// the outer walls. The faces are then A − G and B − G beyond it, so that G is
//
//	A/2 for A ≥ 2B,  B/2 for B ≥ 2A,  A + B − √(2AB) between.
//
// Below nothing the point is in the wall. G grows with A and with B, together at
// a rate of no more than 2 − √2 and each alone of no more than a half. Derived.
func roomAt(a, b float64) float64 {
	switch {
	case a >= 2*b:
		return a / 2
	case b >= 2*a:
		return b / 2
	default:
		return a + b - math.Sqrt(2*a*b)
	}
}

// Rate is how fast the margin in a corner grows at most, as roomAt, if A and B grow together
// at a rate of 1.
const Rate = 2 - math.Sqrt2

// edgeRoom is the least roomAt on the way from one point to another, and
// where on it. It falls and rises once. On a line whose normal (n1, n2), both
// positive, is d from the origin the least is d/(1 + n1 + n2), at the place that
// is nearest to the corner of the faces; derived.
func edgeRoom(a0, b0, a1, b1 float64) (room, at float64) {
	room = roomAt(a0, b0)
	if r := roomAt(a1, b1); r < room {
		room, at = r, 1
	}
	da, db := a1-a0, b1-b0
	if da*db >= 0 {
		return room, at
	}
	l := math.Sqrt(da*da + db*db)
	n1, n2 := math.Abs(db)/l, math.Abs(da)/l
	d := n1*a0 + n2*b0
	g := d / (1 + n1 + n2)
	x, y := g*(1+n1), g*(1+n2)
	if d < 0 { // in the wall: where both faces are as far
		x = d / (n1 + n2)
		g, y = x/2, x
	}
	if t := ((x-a0)*da + (y-b0)*db) / (l * l); t > 0 && t < 1 && g < room {
		return g, t
	}
	return room, at
}
