package passage

import (
	"cmp"
	"slices"
)

// Point is a place in a plane, in m.
type Point struct{ X, Y float64 }

func (p Point) minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

func cross(a, b Point) float64 { return a.X*b.Y - a.Y*b.X }

// Hull is the convex hull of points, anticlockwise, without points on its edges. Of
// points on one line it is the two ends; no points panic. Source: Andrew's monotone
// chain, from memory.
func Hull(points []Point) []Point {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	half := func(p []Point) []Point {
		var h []Point
		for _, q := range p {
			for len(h) > 1 && cross(h[len(h)-1].minus(h[len(h)-2]), q.minus(h[len(h)-2])) <= 0 {
				h = h[:len(h)-1]
			}
			h = append(h, q)
		}
		return h
	}
	lower := half(p)
	slices.Reverse(p)
	upper := half(p)
	return append(lower[:len(lower)-1], upper[:max(1, len(upper)-1)]...)
}

// drawn is the accuracy of a margin that is searched for: a tenth of what a
// drawing shows, in m.
const drawn = 1e-5
