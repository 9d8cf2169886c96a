package space

import (
	"math"
	"slices"
)

// Point is a place in a plane, in m.
type Point struct{ X, Y float64 }

// Minus is the vector from q to p.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Dot is the scalar product of two vectors of a plane.
func Dot(a, b Point) float64 { return a.X*b.X + a.Y*b.Y }

// Cross is the vector product of two vectors of a plane, along its normal.
func Cross(a, b Point) float64 { return a.X*b.Y - a.Y*b.X }

// Hull is the convex hull of points, anticlockwise, without points on its edges. Of
// points on one line it is the two ends; no points panic. Source: Andrew's monotone
// chain, from memory.
func Hull(points []Point) []Point {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b Point) int { // without the care of Compare for what is no number
		switch {
		case a.X < b.X || a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return 0
		default:
			return 1
		}
	})
	half := func(p []Point) []Point {
		h := make([]Point, 0, len(p))
		for _, q := range p {
			for len(h) > 1 && Cross(h[len(h)-1].Minus(h[len(h)-2]), q.Minus(h[len(h)-2])) <= 0 {
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

// Box is the corners of the upright box around points.
func Box(points []Point) (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return low, high
}

// SignedArea is the area in a closed outline of at least one point, above nothing if it
// runs anticlockwise: in m².
func SignedArea(outline []Point) float64 {
	sum, last := 0.0, outline[len(outline)-1]
	for _, q := range outline {
		sum += Cross(last, q)
		last = q
	}
	return sum / 2
}

// Clip is the range of y of the part of an edge within |x| ≤ half, and false where the edge
// has none.
func Clip(x0, y0, x1, y1, half float64) (lo, hi float64, ok bool) {
	if x0 > x1 {
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	if x1 < -half || x0 > half {
		return 0, 0, false
	}
	ya, yb := y0, y1
	if x0 < -half {
		ya = y0 + (y1-y0)*(-half-x0)/(x1-x0)
	}
	if x1 > half {
		yb = y0 + (y1-y0)*(half-x0)/(x1-x0)
	}
	return min(ya, yb), max(ya, yb), true
}

// NearestSquare is the square of the least distance of an edge from the origin.
func NearestSquare(p, q Point) float64 {
	d := q.Minus(p)
	l := Dot(d, d)
	if l == 0 {
		return Dot(p, p)
	}
	f := min(1, max(0, -Dot(p, d)/l))
	p.X, p.Y = p.X+f*d.X, p.Y+f*d.Y
	return Dot(p, p)
}

// FromRegion is how far a place is outside a closed outline, in m, in either sense around; 0
// within it.
func FromRegion(outline []Point, at Point) float64 {
	least, within := math.Inf(1), false
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		least = min(least, NearestSquare(p.Minus(at), q.Minus(at)))
		if (p.Y > at.Y) != (q.Y > at.Y) && at.X < p.X+(at.Y-p.Y)/(q.Y-p.Y)*(q.X-p.X) {
			within = !within // a ray along X crosses this side
		}
	}
	if within {
		return 0
	}
	return math.Sqrt(least)
}
