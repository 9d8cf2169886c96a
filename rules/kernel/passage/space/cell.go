package space

import (
	"math"
)

// Cell is a box of turns: quaternions (1, v) made unit length, v within half of
// at on each axis. The cube |v| ≤ 1 holds those whose real part is the greatest
// of the four.
type Cell struct{ At, Half [3]float64 }

// Quaternion is that of the turn in the middle.
func (c Cell) Quaternion() Quaternion {
	return Quaternion{1, c.At[0], c.At[1], c.At[2]}.Unit()
}

// Angle is a bound of rotation, as its sine and cosine.
type Angle struct{ Sin, Cos float64 }

// Radius is an angle within which every turn of the cell is from its middle
// one. For v and v + d the quaternions are apart by the angle whose sine is
// |(1, v) ∧ (1, v + d)| by both lengths, and the wedge's square is
// |d|² + |v × d|², at most |d|²·(1 + |v|²): so sine ≤ |d|/√(1 + |v + d|²). A
// rotation is twice that angle. Derived.
func (c Cell) Radius() Angle {
	d, far := 0.0, 1.0
	for i, h := range c.Half {
		d += h * h
		near := max(0, math.Abs(c.At[i])-h)
		far += near * near
	}
	s := min(1, d/far) // the sine's square
	return Angle{Sin: 2 * math.Sqrt(s*(1-s)), Cos: 1 - 2*s}
}

// LeastHalf is the least half of a cell's side that a cover cuts, or of a range of angles in
// rad, or of lengths in m. The middle of a cell may be ruled out by round-off alone although
// no cell around it is: a cover that went on there would spend all on it.
const LeastHalf = 0x1p-20

// Tiny reports whether each side of the cell is too short to be cut.
func (c Cell) Tiny() bool { return max(c.Half[0], c.Half[1], c.Half[2]) < LeastHalf }

// Halves cuts the cell across its longest side.
func (c Cell) Halves() [2]Cell {
	k := 0
	for i, h := range c.Half {
		if h > c.Half[k] {
			k = i
		}
	}
	c.Half[k] /= 2
	a, b := c, c
	a.At[k] -= c.Half[k]
	b.At[k] += c.Half[k]
	return [2]Cell{a, b}
}

// Least is a lower bound of d·e over every unit vector e within an angle a of
// one for which the product is w, l2 being the square of d's length:
// l·cos(acos(w/l) + a), and −l once that is past the opposite direction. Derived.
func (a Angle) Least(w, l2 float64) float64 {
	c := a.Cos * math.Abs(a.Cos) * l2
	if w*math.Abs(w)+c < 0 {
		return -math.Sqrt(l2)
	}
	return w*a.Cos - math.Sqrt(max(0, l2-w*w))*a.Sin
}
