package passage

import (
	"math"
)

// coarse is a body of fewer corners within a distance of this one, whose wrap
// makes up for it: what takes it through takes this one through.
func (b *Body) coarse(off float64) *Body {
	points := simplified(b.section, off)
	c := NewBody(points, 2*b.half, b.wrap+off)
	// About this body's origin, not the middle of its own box.
	for _, points := range [2][]Point{c.section, c.hull} {
		for i := range points {
			points[i] = Point{points[i].X + c.origin.X, points[i].Y + c.origin.Y}
		}
	}
	c.mirrored = c.mirrored && math.Abs(c.origin.X) <= alikeShare*b.wide
	return c
}

// further is by how much one corner must be further than another to come first:
// round-off does not choose between two that mirror each other.
const further = 1 + 1e-9

// simplified leaves out corners of a closed outline that are within a distance of
// the rest. Source: the algorithm of Ramer, Douglas and Peucker, from memory.
func simplified(section []Point, off float64) []Point {
	n := len(section)
	furthest, most := 0, 0.0
	for i, p := range section {
		if d := p.minus(section[0]); dot(d, d) > most*further {
			furthest, most = i, dot(d, d)
		}
	}
	keep := make([]bool, n)
	keep[0], keep[furthest] = true, true
	var cut func(i, j int)
	cut = func(i, j int) {
		far, at := off, -1
		for k := i + 1; k < j; k++ {
			p := section[k%n]
			if d := math.Sqrt(nearestSquare(section[i%n].minus(p), section[j%n].minus(p))); d > far*further {
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
	var out []Point
	for i, k := range keep {
		if k {
			out = append(out, section[i])
		}
	}
	return out
}
