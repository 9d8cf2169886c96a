package passage

import "math"

// Tilt is a piece with upright ends between two walls while it is not level.
type Tilt struct {
	Peak  float64 // greatest width while tilted
	Level float64 // how far one end may be over the other, +Inf if it never binds
}

// Between is a piece c wide over its ends, whose end faces are e high, between
// walls that are apart, all positive and in m: tilted by α it is c·cos α + e·sin α
// wide, at most √(c² + e²). From where that is more than the walls are apart it
// binds: α1 = atan(e/c) − acos(apart/peak), and one end may be c·tan α1 over the
// other: 0 where the piece is too wide even if it is level. Derived.
func Between(c, e, apart float64) Tilt {
	peak := math.Hypot(c, e)
	t := Tilt{Peak: peak, Level: math.Inf(1)}
	if apart < peak {
		t.Level = max(0, c*math.Tan(math.Atan2(e, c)-math.Acos(min(1, apart/peak))))
	}
	return t
}
