package curve

import (
	"fmt"
	"math"
	"sort"
)

// FoldError says that a parallel curve folds back on itself.
type FoldError struct {
	Distance float64 // inward
	Radius   float64 // the tightest
}

// Error is in the unit of the curve.
func (e *FoldError) Error() string {
	return fmt.Sprintf("a parallel %g inside a curve of radius %g folds", e.Distance, e.Radius)
}

// line is a straight piece.
type line struct{ from, to Point }

func (l line) length() float64           { return l.from.distance(l.to) }
func (l line) curvature(float64) float64 { return 0 }
func (l line) tightest() float64         { return math.Inf(1) }

func (l line) at(s float64) Point { return l.from.add(l.tangent(s).scale(s)) }

func (l line) tangent(float64) Point { return l.to.sub(l.from).scale(1 / l.length()) }

func (l line) parallel(d float64) (segment, error) {
	n := Normal(l.tangent(0)).scale(d)
	return line{l.from.add(n), l.to.add(n)}, nil
}

func (l line) part(s0, s1 float64) segment { return line{l.at(s0), l.at(s1)} }

func (l line) swept(o Point) float64 { return l.from.sub(o).cross(l.to.sub(o)) }

// arc is a circular piece that turns right: its angle from the centre falls
// from start by sweep.
type arc struct {
	centre       Point
	radius       float64
	start, sweep float64
}

func (a arc) length() float64           { return a.radius * a.sweep }
func (a arc) curvature(float64) float64 { return 1 / a.radius }
func (a arc) tightest() float64         { return a.radius }

func (a arc) at(s float64) Point {
	return a.centre.add(direction(a.start - s/a.radius).scale(a.radius))
}

// turns is how many directions follow from one by turning it before one is worked out
// anew: each adds a rounding.
const turns = 16

// divided appends the k+1 points that divide the arc evenly: a turn costs a tenth of a
// sine and a cosine.
func (a arc) divided(points []Point, k int) []Point {
	step := direction(-a.sweep / float64(k))
	var d Point
	for i := range k + 1 {
		if i%turns == 0 || i == k {
			d = direction(a.start - a.sweep*float64(i)/float64(k))
		} else {
			d = Point{d.Y*step.Y - d.Z*step.Z, d.Z*step.Y + d.Y*step.Z}
		}
		points = append(points, a.centre.add(d.scale(a.radius)))
	}
	return points
}

func (a arc) tangent(s float64) Point { return direction(a.start - s/a.radius - math.Pi/2) }

func (a arc) parallel(d float64) (segment, error) {
	if !(a.radius+d > 0) {
		return nil, &FoldError{-d, a.radius}
	}
	a.radius += d
	return a, nil
}

func (a arc) part(s0, s1 float64) segment {
	a.start -= s0 / a.radius
	a.sweep = (s1 - s0) / a.radius
	return a
}

// swept is in two parts: of the centre about o, and of the arc about its
// centre.
func (a arc) swept(o Point) float64 {
	return a.centre.sub(o).cross(a.at(a.length()).sub(a.at(0))) - a.radius*a.radius*a.sweep
}

// ellipse is the parallel, at distance d, of an elliptical arc with half axes
// a along Y and b along Z, which runs from parameter t0 down to t1 (π is the
// left end, 0 the right). The arc length is tabulated at equal steps of the
// parameter; between them it is integrated.
type ellipse struct {
	centre Point
	a, b   float64
	d      float64
	t0, t1 float64
	table  []float64 // arc length at t0, …, t1
}

// ellipseSteps is how many steps the table of half an ellipse has, and leastSteps that of
// a short part.
const (
	ellipseSteps = 128
	leastSteps   = 4
)

func newEllipse(e ellipse) ellipse {
	n := max(leastSteps, int(math.Ceil((e.t0-e.t1)/math.Pi*ellipseSteps-coincident)))
	e.table = make([]float64, n+1)
	for i := range n {
		e.table[i+1] = e.table[i] + e.stretch(e.parameter(i), e.parameter(i+1))
	}
	return e
}

func (e ellipse) steps() int { return len(e.table) - 1 }

func (e ellipse) parameter(i int) float64 {
	return e.t0 + (e.t1-e.t0)*float64(i)/float64(e.steps())
}

// speed is the arc length by parameter: that of the ellipse, √(a²sin²t +
// b²cos²t), and d times the turn of its normal, ab/(a²sin²t + b²cos²t).
func (e ellipse) speed(t float64) float64 {
	s, c := math.Sincos(t)
	q := e.a*e.a*s*s + e.b*e.b*c*c
	return math.Sqrt(q) + e.d*e.a*e.b/q
}

// stretch is the arc length between two parameters of one step.
func (e ellipse) stretch(t0, t1 float64) float64 {
	mid, half, sum := (t0+t1)/2, math.Abs(t1-t0)/2, 0.0
	for k, x := range gaussNodes {
		sum += gaussWeights[k] * e.speed(mid+x*half)
	}
	return sum * half
}

func (e ellipse) length() float64 { return e.table[e.steps()] }

// newtonSteps bounds the inversion of the arc length inside one step of the
// table, where it is smooth and nearly linear; three are enough for round-off.
const newtonSteps = 6

// parameterAt is the parameter at arc length s.
func (e ellipse) parameterAt(s float64) float64 {
	i := min(max(sort.SearchFloat64s(e.table, s)-1, 0), e.steps()-1)
	from, rest := e.parameter(i), s-e.table[i]
	t := from - rest/e.speed(from)
	for range newtonSteps {
		miss := e.stretch(t, from) - rest
		if t > from {
			miss = -e.stretch(from, t) - rest
		}
		last := t
		if t += miss / e.speed(t); t == last {
			break // each further step would be the same
		}
	}
	return t
}

func (e ellipse) tangentAt(t float64) Point {
	s, c := math.Sincos(t)
	p := Point{e.a * s, -e.b * c}
	return p.scale(1 / math.Hypot(p.Y, p.Z))
}

func (e ellipse) at(s float64) Point { return e.point(e.parameterAt(s)) }

func (e ellipse) point(t float64) Point {
	sin, cos := math.Sincos(t)
	on := Point{e.centre.Y + e.a*cos, e.centre.Z + e.b*sin}
	return on.add(Normal(e.tangentAt(t)).scale(e.d))
}

func (e ellipse) tangent(s float64) Point { return e.tangentAt(e.parameterAt(s)) }

// swept is integrated over the steps of the table.
func (e ellipse) swept(o Point) float64 {
	sum, half := 0.0, (e.t0-e.t1)/float64(e.steps())/2
	for i := range e.steps() {
		mid := (e.parameter(i) + e.parameter(i+1)) / 2
		for k, x := range gaussNodes {
			t := mid + x*half
			sum += gaussWeights[k] * e.point(t).sub(o).cross(e.tangentAt(t)) * e.speed(t)
		}
	}
	return sum * half
}

// radius is that of the parallel: that of the ellipse, q^(3/2)/(ab), and d.
func (e ellipse) radius(t float64) float64 {
	s, c := math.Sincos(t)
	q := e.a*e.a*s*s + e.b*e.b*c*c
	return q*math.Sqrt(q)/(e.a*e.b) + e.d
}

func (e ellipse) curvature(s float64) float64 { return 1 / e.radius(e.parameterAt(s)) }

// tightest is at an end of the piece, or where it passes an axis.
func (e ellipse) tightest() float64 {
	r := min(e.radius(e.t0), e.radius(e.t1))
	if e.t1 < math.Pi/2 && math.Pi/2 < e.t0 {
		r = min(r, e.radius(math.Pi/2))
	}
	return r
}

func (e ellipse) parallel(d float64) (segment, error) {
	if !(e.tightest()+d > 0) {
		return nil, &FoldError{-d, e.tightest()}
	}
	e.d += d
	return newEllipse(e), nil
}

func (e ellipse) part(s0, s1 float64) segment {
	e.t0, e.t1 = e.parameterAt(s0), e.parameterAt(s1)
	return newEllipse(e)
}
