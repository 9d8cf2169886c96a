package curve

import (
	"math"
	"slices"
)

// Region is a plane figure in the section, as a closed polygon.
type Region []Point

// Area is positive, in the square of the unit of its points, by the sum of cross products (Green's theorem). The
// figure is shifted to its first corner before it is multiplied out, to keep
// round-off small.
func (r Region) Area() float64 {
	area, _ := r.Moments()
	return area
}

// Centroid is the centre of the area; of an empty figure, the zero Point.
func (r Region) Centroid() Point {
	area, c := r.Moments()
	if area == 0 {
		return Point{}
	}
	return c
}

// Moments are the area, in the square of the unit of its points, and the centroid;
// both zero of fewer than three corners.
func (r Region) Moments() (float64, Point) {
	if len(r) < 3 {
		return 0, Point{}
	}
	o := r[0]
	var a, my, mz float64
	for i := 1; i+1 < len(r); i++ {
		y1, z1 := r[i].Y-o.Y, r[i].Z-o.Z
		y2, z2 := r[i+1].Y-o.Y, r[i+1].Z-o.Z
		t := y1*z2 - y2*z1
		a += t
		my += t * (y1 + y2) / 3
		mz += t * (z1 + z2) / 3
	}
	if a == 0 {
		return 0, Point{}
	}
	return math.Abs(a) / 2, Point{Y: o.Y + my/a, Z: o.Z + mz/a}
}

// Bounds is the least box around the figure, upright.
func (r Region) Bounds() (low, high Point) {
	low = Point{Y: math.Inf(1), Z: math.Inf(1)}
	high = Point{Y: math.Inf(-1), Z: math.Inf(-1)}
	for _, p := range r {
		low.Y, low.Z = min(low.Y, p.Y), min(low.Z, p.Z)
		high.Y, high.Z = max(high.Y, p.Y), max(high.Z, p.Z)
	}
	return low, high
}

// onCut is how near a corner is, in m, to lie on the line that a foot is cut along:
// above round-off, far below what a shop cuts to.
const onCut = 1e-9

// Clip is what is left of the figure in a half plane: of the points p with
// n·(p − at) ≥ 0. A corner on the line stays one, and makes none beside it.
func (r Region) Clip(at, n Point) Region {
	var room Region
	return r.ClipInto(&room, at, n)
}

// ClipInto is the same in the room of another figure, or r itself where nothing is cut
// off it.
func (r Region) ClipInto(room *Region, at, n Point) Region {
	side := func(p Point) float64 {
		if d := (p.Y-at.Y)*n.Y + (p.Z-at.Z)*n.Z; math.Abs(d) > onCut {
			return d
		}
		return 0
	}
	if !slices.ContainsFunc(r, func(p Point) bool { return side(p) < 0 }) {
		return r // as of most stretches of a member
	}
	out := slices.Grow((*room)[:0], len(r)+2) // as many corners as most figures keep
	for i, p := range r {
		q := r[(i+1)%len(r)]
		a, b := side(p), side(q)
		if a >= 0 {
			out = append(out, p)
		}
		if (a >= 0) != (b >= 0) {
			t := a / (a - b)
			out = append(out, Point{Y: p.Y + t*(q.Y-p.Y), Z: p.Z + t*(q.Z-p.Z)})
		}
	}
	*room = out
	return out
}
