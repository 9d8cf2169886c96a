package passage

import "math"

// goldenSteps shrink an interval of a right angle to 1e-12 of it.
const goldenSteps = 58

// least is the least value of a function with one minimum between a and b, by
// golden section.
func least(f func(float64) float64, a, b float64) float64 {
	const g = 0.6180339887498949
	x, y := b-g*(b-a), a+g*(b-a)
	fx, fy := f(x), f(y)
	for range goldenSteps {
		if fx < fy {
			b, y, fy = y, x, fx
			x = b - g*(b-a)
			fx = f(x)
		} else {
			a, x, fx = x, y, fy
			y = a + g*(b-a)
			fy = f(y)
		}
	}
	return min(fx, fy)
}

// LongestAround is the greatest length of a rectangle of a width that turns from
// a corridor of width a into one of width b at a right angle:
//
//	min over θ of (a·cos θ + b·sin θ − w)/(sin θ·cos θ)
//
// The outer long side keeps its ends on the two outer walls; the inner corner is
// a·cos + b·sin − L·sin·cos from it. A rectangle wider than either corridor does
// not turn: 0. For w = 0 it is the ladder, (a^⅔ + b^⅔)^(3/2). The minimum is
// single. Sources: the ladder in any calculus text; C. Moretti, Moving a Couch
// Around a Corner, College Mathematics Journal 33(3), 2002.
func LongestAround(w, a, b float64) float64 {
	if !(w <= min(a, b)) {
		return 0
	}
	return least(func(t float64) float64 {
		s, c := math.Sincos(t)
		return (a*c + b*s - w) / (s * c)
	}, 0, math.Pi/2)
}

// around reports whether a rectangle gets around the corner: turning, or sliding
// round without turning, in lengthwise and out sideways.
func around(l, w, a, b float64) bool {
	if l < w {
		l, w = w, l
	}
	return l <= LongestAround(w, a, b) || w <= a && l <= b || w <= b && l <= a
}

// RectangleAround is the greatest clearance on every side with which a rectangle
// of l by w gets around the corner; below nothing, by how much it is too large on
// every side.
func RectangleAround(l, w, a, b float64) float64 {
	hi := (min(a, b) - min(l, w)) / 2
	lo := hi - max(l, w, a, b)
	for range 40 { // to a millionth of a millimetre
		if mid := (lo + hi) / 2; around(l+2*mid, w+2*mid, a, b) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
