package passage

import "math"

// Peak is the greatest height of a box of length l and depth w while it is tipped
// up from lying to standing: √(l² + w²), at tan = l/w. Derived.
func Peak(l, w float64) float64 { return math.Hypot(l, w) }

// TippedPlan is the length in plan of a box of length l and height v that is
// tipped, one end up, as far as it goes under a header: l·sin α + v·cos α = h,
// and l·cos α + v·sin α in plan. A box that goes under at any angle has the plan
// of standing, v; one that does not go under at all has none, 0. Derived.
func TippedPlan(l, v, header float64) float64 {
	switch {
	case v > header:
		return 0
	case math.Hypot(l, v) <= header:
		return v
	}
	a := math.Asin(header/math.Hypot(l, v)) - math.Atan2(v, l)
	return l*math.Cos(a) + v*math.Sin(a)
}

// AcrossSlope is the headroom of a stair, square to its slope, from that measured
// upright: what a piece carried parallel to the flight sees. Derived.
func AcrossSlope(headroom, rise, going float64) float64 {
	return headroom * math.Cos(math.Atan2(rise, going))
}

// Tilt is a piece with upright ends between two walls while it is not level.
type Tilt struct {
	Peak  float64 // greatest width while tilted
	Level float64 // how far one end may be over the other, +Inf if it never binds
}

// Between is a piece c wide over its ends, whose end faces are e high, between
// walls that are apart: tilted by α it is c·cos α + e·sin α wide, at most
// √(c² + e²). From where that is more than the walls are apart it binds:
// α1 = atan(e/c) − acos(apart/peak), and one end may be c·tan α1 over the other.
// Derived.
func Between(c, e, apart float64) Tilt {
	peak := math.Hypot(c, e)
	t := Tilt{Peak: peak, Level: math.Inf(1)}
	if apart < peak {
		t.Level = max(0, c*math.Tan(math.Atan2(e, c)-math.Acos(min(1, apart/peak))))
	}
	return t
}

// OnDiagonal is the longest piece of thickness q that stands on edge on the
// diagonal of a floor of a by b.
func OnDiagonal(q, a, b float64) float64 {
	lo, hi := 0.0, math.Hypot(a, b)
	for range marginSteps {
		if mid := (lo + hi) / 2; fits(max(mid, q), min(mid, q), max(a, b), min(a, b)) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
