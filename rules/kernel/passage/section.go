package passage

import (
	"math"
	"slices"
)

// Point is a place in a plane.
type Point struct{ X, Y float64 }

func (p Point) minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

func cross(a, b Point) float64 { return a.X*b.Y - a.Y*b.X }

// Hull is the convex hull of points, anticlockwise, without points on its edges.
// Source: Andrew's monotone chain, from memory.
func Hull(points []Point) []Point {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b Point) int {
		if a.X != b.X {
			return sign(a.X - b.X)
		}
		return sign(a.Y - b.Y)
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

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	default:
		return 0
	}
}

// extent is how far points reach along a direction and across it.
func extent(points []Point, angle float64) (along, across float64) {
	s, c := math.Sincos(angle)
	lowX, highX := math.Inf(1), math.Inf(-1)
	lowY, highY := math.Inf(1), math.Inf(-1)
	for _, p := range points {
		x, y := p.X*c-p.Y*s, p.X*s+p.Y*c
		lowX, highX = min(lowX, x), max(highX, x)
		lowY, highY = min(lowY, y), max(highY, y)
	}
	return highX - lowX, highY - lowY
}

// diameter is the greatest distance between two points, or a little more.
func diameter(points []Point) float64 {
	x, y := extent(points, 0)
	return math.Hypot(x, y)
}

// drawn is the accuracy of a margin that is searched for: a tenth of what a
// drawing shows, in m.
const drawn = 1e-5

// Through is the best way of pushing a section through a rectangular opening of
// a by b, turned in its own plane: the greatest clearance on all four sides at
// once, and the angle by which the section is turned for it. The section counts
// with its convex hull; its points are as they come. The margin is right to
// 0.01 mm.
//
// Method. Between two angles the margin changes by no more than the diameter by
// half their difference, since no point moves further about another: intervals
// that can't beat the best are dropped, the others halved.
func Through(section []Point, a, b float64) Fit {
	hull := Hull(section)
	slope := diameter(hull) / 2
	best := Fit{Margin: math.Inf(-1)}
	look := func(angle float64) float64 {
		w, h := extent(hull, angle)
		m := min(a-w, b-h) / 2
		if m > best.Margin {
			best = Fit{m, angle}
		}
		return m
	}
	type interval struct{ at, half, margin float64 }
	const first = 32
	var open []interval
	for i := range first {
		at := math.Pi * (float64(i) + 0.5) / first
		open = append(open, interval{at, math.Pi / first / 2, look(at)})
	}
	look(0)
	look(math.Pi / 2)
	for len(open) > 0 {
		var next []interval
		for _, v := range open {
			if v.margin+2*slope*v.half <= best.Margin+drawn {
				continue
			}
			for _, at := range []float64{v.at - v.half/2, v.at + v.half/2} {
				next = append(next, interval{at, v.half / 2, look(at)})
			}
		}
		open = next
	}
	return best
}
