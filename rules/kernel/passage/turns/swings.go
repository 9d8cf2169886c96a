package turns

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// Swings are how the world's axes turn over a cell: each of the cell's three sides
// moves the end of each axis by a vector, to first order, and second is what that
// leaves at most.
type Swings struct {
	Of     [3][3]space.Vec // axis, side
	second float64
}

// Swings are those of a cell. From the quaternion p of its middle to p + d the
// body turns by the one whose imaginary part over the real one is
//
//	g = Im(p̄·d)/(|p|² + p·d),
//
// and a unit vector e becomes e + 2·(g × e + g × (g × e))/(1 + |g|²), but for the
// sign of g. The last term has along a vector v no more than sin²(ρ/2) of |v| ∓ v·e
// either way, ρ the greatest angle. Derived.
func (c Cube) Swings() Swings {
	q := c.Spread()
	least := q.Dot(q)
	for i, h := range c.Half {
		least -= math.Abs(c.At[i]) * h
	}
	out := Swings{second: (1 - c.Radius().Cos) / 2}
	im := space.Vec{X: q[1], Y: q[2], Z: q[3]}
	turn := c.Turn()
	for i, part := range parts[c.Front] {
		g := im.Times(-1)
		if part > 0 {
			e := [3]space.Vec{{X: 1}, {Y: 1}, {Z: 1}}[part-1]
			g = e.Times(q[0]).Minus(im.Cross(e))
		}
		for k, e := range turn {
			out.Of[k][i] = g.Cross(e).Times(2 * c.Half[i] / least)
		}
	}
	return out
}

// Widest is the side of a cell across which the body swings furthest, by so much across
// each; of two that differ by round-off alone, the first.
func Widest(by [3]float64) (side int) {
	for i, d := range by {
		if d > by[side]*passage.Further {
			side = i
		}
	}
	return side
}
