package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Coarse is a body of fewer corners within a distance, in m, of this one, whose wrap
// makes up for it: what takes it through takes this one through.
func (b *Body) Coarse(off float64) *Body {
	return b.as(simplified(b.section, off), 2*b.half, b.wrap+off)
}

// Rounded is a body with corners on a grid, in m, near this one's: bodies that differ by
// round-off become the same. Its wrap makes up for what corners, length and wrap are off.
func (b *Body) Rounded(grid float64) *Body {
	points := make([]space.Point, len(b.section))
	for i, p := range b.section {
		points[i] = space.Point{X: Round(p.X, grid), Y: Round(p.Y, grid)}
	}
	return b.as(points, Round(2*b.half, grid), Round(b.wrap, grid)+2*grid)
}

// Round is a number to the nearest of a grid, in its unit.
func Round(x, grid float64) float64 { return math.Round(x/grid) * grid }

// as is a body of another section about this one's origin, not the middle of its own box.
func (b *Body) as(section []space.Point, length, wrap float64) *Body {
	c := NewBody(section, length, wrap)
	for _, points := range [2][]space.Point{c.section, c.hull} {
		for i := range points {
			points[i] = space.Point{X: points[i].X + c.origin.X, Y: points[i].Y + c.origin.Y}
		}
	}
	c.mirrored = c.mirrored && math.Abs(c.origin.X) <= AlikeShare*b.wide
	return c
}

// Further is by how much one corner must be further than another to come first:
// round-off does not choose between two that mirror each other.
const Further = 1 + 1e-9

// simplified leaves out corners of a closed outline that are within a distance of
// the rest. Source: the algorithm of Ramer, Douglas and Peucker, from memory.
func simplified(section []space.Point, off float64) []space.Point {
	n := len(section)
	furthest, most := 0, 0.0
	for i, p := range section {
		if d := p.Minus(section[0]); space.Dot(d, d) > most*Further {
			furthest, most = i, space.Dot(d, d)
		}
	}
	keep := make([]bool, n)
	keep[0], keep[furthest] = true, true
	var cut func(i, j int)
	cut = func(i, j int) {
		far, at := off, -1
		for k := i + 1; k < j; k++ {
			p := section[k%n]
			if d := math.Sqrt(space.NearestSquare(section[i%n].Minus(p), section[j%n].Minus(p))); d > far*Further {
				far, at = d, k
			}
		}
		if at >= 0 {
			keep[at%n] = true
			cut(i, at)
			cut(at, j)
		}
	}
	cut(0, furthest)
	cut(furthest, n)
	var out []space.Point
	for i, k := range keep {
		if k {
			out = append(out, section[i])
		}
	}
	return out
}
