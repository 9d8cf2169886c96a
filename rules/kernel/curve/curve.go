// Package curve holds the profiles of vaults as plane curves: chains of lines,
// circular arcs and elliptical arcs, with length, point, tangent and curvature
// at any place along them, and their parallels.
//
// Y runs across the span from the left springing, Z up from the springing; a
// curve runs from left to right. Lengths are in any one unit (this program
// uses m), angles in rad. Outward is to the left of the way along the curve:
// away from the side on which an arch is concave. A profile that a dimension makes
// impossible is an *ImpossibleError.
package curve

import (
	"math"
	"sort"
)

// Point is a place in the section.
type Point struct{ Y, Z float64 }

func (p Point) add(q Point) Point        { return Point{p.Y + q.Y, p.Z + q.Z} }
func (p Point) sub(q Point) Point        { return Point{p.Y - q.Y, p.Z - q.Z} }
func (p Point) scale(f float64) Point    { return Point{f * p.Y, f * p.Z} }
func (p Point) cross(q Point) float64    { return p.Y*q.Z - p.Z*q.Y }
func (p Point) distance(q Point) float64 { return math.Hypot(p.Y-q.Y, p.Z-q.Z) }
func direction(angle float64) Point      { s, c := math.Sincos(angle); return Point{c, s} }

// further reports whether p is further from q than d, without a root.
func (p Point) further(d float64, q Point) bool {
	y, z := p.Y-q.Y, p.Z-q.Z
	return y*y+z*z > d*d
}

// Normal is the unit vector a quarter turn to the left of a unit tangent: outward.
// A tangent of another length gives a normal of that length.
func Normal(tangent Point) Point { return Point{-tangent.Z, tangent.Y} }

// segment is one smooth piece of a curve, by the arc length s from its start.
type segment interface {
	length() float64
	at(s float64) Point
	tangent(s float64) Point
	curvature(s float64) float64 // positive where the curve turns right, as an arch does
	tightest() float64           // least radius
	parallel(d float64) (segment, error)
	part(s0, s1 float64) segment
	swept(o Point) float64 // integral of (p − o) × dp
}

// Curve is a chain of segments. Neighbours meet; only a pointed arch has a
// corner, at its crown. The zero Curve is none.
type Curve struct {
	segments []segment
	ends     []float64 // arc length at the end of each segment
	// before and after are the pieces that meet the ends of a part of a curve
	// where it was cut at a joint.
	before, after segment
}

func chain(segments ...segment) Curve {
	c := Curve{segments: segments, ends: make([]float64, len(segments))}
	total := 0.0
	for i, s := range segments {
		total += s.length()
		c.ends[i] = total
	}
	return c
}

// Length is the length along the curve, in the unit of its points: 0 of the zero
// Curve. Lines and arcs by closed form; of an ellipse see [Elliptical].
func (c Curve) Length() float64 {
	if len(c.ends) == 0 {
		return 0
	}
	return c.ends[len(c.ends)-1]
}

// find is the segment that holds arc length s, and s within it. s is clamped to [0,
// Length]; at a joint it is the segment that begins there. It panics for the zero
// Curve, as everything does that asks for a place on one.
func (c Curve) find(s float64) (segment, float64) {
	s = min(max(s, 0), c.Length())
	i := min(sort.Search(len(c.ends), func(i int) bool { return c.ends[i] > s }), len(c.ends)-1)
	if i > 0 {
		s -= c.ends[i-1]
	}
	return c.segments[i], min(s, c.segments[i].length())
}

// At is the point at arc length s from the left end. s is clamped to [0, Length]:
// nothing is extrapolated, see [Curve.Extended]. NaN gives a point of NaN.
func (c Curve) At(s float64) Point {
	g, t := c.find(s)
	return g.at(t)
}

// Tangent is the unit vector along the curve at arc length s, clamped to [0,
// Length]; at a corner, that of the piece that begins there. See [Curve.Tangents]
// for both.
func (c Curve) Tangent(s float64) Point {
	g, t := c.find(s)
	return g.tangent(t)
}

// Curvature is one over the radius at arc length s, clamped to [0, Length]:
// positive where the curve is concave downward, 0 on a line. At a joint it is that
// of the piece that begins there; a corner, where it has no value, is in
// [Curve.Kink].
func (c Curve) Curvature(s float64) float64 {
	g, t := c.find(s)
	return g.curvature(t)
}

// TightestRadius is the least radius anywhere on the curve, in the unit of its
// points: +Inf where nothing bends. Corners are left out.
func (c Curve) TightestRadius() float64 {
	r := math.Inf(1)
	for _, s := range c.segments {
		r = min(r, s.tightest())
	}
	return r
}

// Offset is the parallel curve at distance d, outward where d is positive. At a
// corner both pieces run on until they meet, on the mitre; so does the end of a
// part that was cut at a corner.
//
// Errors. A *FoldError where −d is not less than the radius of some piece, or where
// the parallels of two pieces do not meet at their corner or leave nothing of one
// of them.
//
// Source: lines and arcs by closed form; the parallel of an ellipse, its length
// ∫(√q + d·ab/q)dt with q = a²sin²t + b²cos²t, is derived here.
func (c Curve) Offset(d float64) (Curve, error) {
	const usual = 8
	row := make([]segment, 0, usual) // with both neighbours
	for i := -1; i <= len(c.segments); i++ {
		p := c.neighbour(i)
		if p != nil {
			var err error
			if p, err = p.parallel(d); err != nil {
				return Curve{}, err
			}
		}
		row = append(row, p)
	}
	segments := make([]segment, len(c.segments))
	for i := range segments {
		s, err := mitred(row[i], row[i+1], row[i+2], d)
		if err != nil {
			return Curve{}, err
		}
		segments[i] = s
	}
	o := chain(segments...)
	o.before, o.after = row[0], row[len(row)-1]
	return o, nil
}

// mitred is a piece of a parallel, run on or cut off at each end to meet its
// neighbours, if there are any.
func mitred(last, s, next segment, d float64) (segment, error) {
	var from, past float64
	var err error
	if last != nil {
		if _, from, err = mitre(last, s, d); err != nil {
			return nil, err
		}
	}
	if next != nil {
		if past, _, err = mitre(s, next, d); err != nil {
			return nil, err
		}
	}
	if from == 0 && past == 0 {
		return s, nil
	}
	if from+s.length()+past <= 0 {
		return nil, &FoldError{-d, s.tightest() - d}
	}
	return s.part(-from, s.length()+past), nil
}

// Between is the part of the curve from arc length s0 to s1, both clamped to [0,
// Length]. The caller sees to it that s0 < s1 on the curve; otherwise the part has
// no meaning.
func (c Curve) Between(s0, s1 float64) Curve {
	s0, s1 = max(s0, 0), min(s1, c.Length())
	near := min(coincident*c.Length(), (s1-s0)/4)
	var parts []segment
	first, last, start := 0, 0, 0.0
	for i, s := range c.segments {
		lo, hi := max(s0, start), min(s1, c.ends[i])
		if hi-lo > near {
			if len(parts) == 0 {
				first = i
			}
			last = i
			parts = append(parts, s.part(lo-start, hi-start))
		}
		start = c.ends[i]
	}
	p := chain(parts...)
	if from := c.ends[first] - c.segments[first].length(); math.Abs(s0-from) <= near {
		p.before = c.neighbour(first - 1)
	}
	if math.Abs(s1-c.ends[last]) <= near {
		p.after = c.neighbour(last + 1)
	}
	return p
}

// Corners are the arc lengths at which pieces meet, smoothly or not, in ascending
// order: 0 first and Length last.
func (c Curve) Corners() []float64 {
	return append([]float64{0}, c.ends...)
}

// Polyline is at least n+1 points along the curve from end to end: each piece is
// divided evenly by arc length, and its ends are points. n below 1 counts as 1. The
// points lie on the curve, so that the chords lie inside an arch.
func (c Curve) Polyline(n int) []Point {
	return c.AppendPolyline(make([]Point, 0, n+1+2*len(c.segments)), n)
}

// AppendPolyline appends what [Curve.Polyline] gives to points.
func (c Curve) AppendPolyline(points []Point, n int) []Point {
	before, length := len(points), c.Length()
	near := coincident * length
	for _, s := range c.segments {
		k := max(1, int(math.Ceil(float64(n)*s.length()/length-coincident)))
		kept := len(points)
		points = divided(points, s, k)
		for _, p := range points[kept:] {
			if kept == before || points[kept-1].further(near, p) {
				points[kept] = p
				kept++
			}
		}
		points = points[:kept]
	}
	return points
}

// divided appends the k+1 points that divide a piece evenly.
func divided(points []Point, s segment, k int) []Point {
	if a, ok := s.(arc); ok {
		return a.divided(points, k)
	}
	for i := range k + 1 {
		points = append(points, s.at(s.length()*float64(i)/float64(k)))
	}
	return points
}

// coincident is how near two points are, by the curve's length, to be one, and
// a share of its pieces to a whole number: far above round-off, far below what a
// drawing shows.
const coincident = 1e-9

// Area is the area between the curve and the chord of its ends, in squares of the
// unit of its points: ½·|∮ p × dp|, Green's theorem. Of a curve that crosses its
// chord the parts on both sides cancel. Lines and arcs by closed form, ellipses by
// quadrature.
func (c Curve) Area() float64 {
	origin := c.At(0)
	sum := 0.0
	for _, s := range c.segments {
		sum += s.swept(origin)
	}
	return math.Abs(sum) / 2
}

// AtY is the arc length at which the curve passes y, to the last bit by bisection.
// y is clamped: at or before the left end it gives 0, at or past the right end
// Length, also where the curve overhangs that end and passes y elsewhere.
func (c Curve) AtY(y float64) float64 {
	f := func(s float64) float64 { return c.At(s).Y - y }
	if f(0) >= 0 {
		return 0
	}
	if f(c.Length()) <= 0 {
		return c.Length()
	}
	from, to := 0.0, c.Length()
	if near, ok := c.aboutY(y); ok {
		off := roundoff * to
		if low, high := near-off, near+off; low > from && high < to && f(low) < 0 && f(high) > 0 {
			from, to = low, high
		}
	}
	return root(f, from, to)
}

// roundoff is more than what rounding makes of an arc length, by the curve's.
const roundoff = 1e-13

// aboutY is where the curve passes y but for round-off, if that is on an arc within the
// upper half of its circle.
func (c Curve) aboutY(y float64) (float64, bool) {
	start := 0.0
	for i, s := range c.segments {
		a, ok := s.(arc)
		if !ok || a.start > math.Pi || a.start < a.sweep {
			return 0, false
		}
		if end := a.centre.Y + a.radius*math.Cos(a.start-a.sweep); y <= end {
			return start + (a.start-math.Acos(min(max((y-a.centre.Y)/a.radius, -1), 1)))*a.radius, true
		}
		start = c.ends[i]
	}
	return 0, false
}

// HalfAngle is the angle of the curve with the horizontal at its left end, in rad
// from −π to π: half of what a symmetric arch without a corner turns by.
func (c Curve) HalfAngle() float64 {
	t := c.Tangent(0)
	return math.Atan2(t.Z, t.Y)
}
