package stair

import (
	"math"

	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// quarterCover looks for turns at which the body may be half way around the corner of
// a landing whose way goes on from its side.
//
// Theorem. On its way a place P of the body is once in the upright plane from the inner
// corner to the outer one. At that instant all of the body is before the landing's end,
// beside the outer wall and clear of the inner corner, and between floor and soffit as
// at a half turn. If that can be at no turn and with P nowhere, there is no motion.
// Derived.
type quarterCover struct {
	*probes
	s    Stair
	walk space.Point // from the inner corner to the outer one, of length 1
}

// out reports whether none of the turns that are seen can be.
func (q *quarterCover) out() bool {
	g, far := q.b.Wrap(), math.Inf(1)
	run, wide := q.s.walled(), q.s.Across-q.s.Width
	for i := range q.seen {
		p := &q.seen[i]
		// The outer walls end with the flights.
		if p[0].High <= wide+run {
			far = min(far, (q.s.Length-g-p[1].Low)/q.walk.Y)
		}
		if p[1].Low >= -run {
			far = min(far, (q.s.Width-g+p[0].High)/-q.walk.X)
		}
	}
	if math.IsInf(far, 1) {
		return false
	}
	if far < 0 {
		return true
	}
	n := min(stairPlaces, 1+int(far/stairPlace))
	for i := range n {
		if !q.outAt(turns.Bounds{Low: far * float64(i) / float64(n), High: far * float64(i+1) / float64(n)}) {
			return false
		}
	}
	return true
}

// outAt is out with P so far from the inner corner.
func (q *quarterCover) outAt(far turns.Bounds) bool {
	// From the inner corner.
	x, y := turns.Bounds{Low: far.High * q.walk.X, High: far.Low * q.walk.X}, turns.Bounds{Low: far.Low * q.walk.Y, High: far.High * q.walk.Y}
	g, z := q.b.Wrap(), turns.Bounds{Low: none, High: math.Inf(1)}
	wide, run := q.s.Across-q.s.Width, q.s.walled()
	for i := range q.seen {
		p := &q.seen[i]
		px, py := turns.Bounds{Low: x.Low + p[0].Low, High: x.High + p[0].High}, turns.Bounds{Low: y.Low + p[1].Low, High: y.High + p[1].High}
		beside := px.High < wide+run && py.Low > -run // the ends of both flights
		if beside && (px.Low >= 0 && py.High < g || py.High <= 0 && px.Low > -g) {
			return true
		}
		floor, soffit := q.s.over(px, py)
		if z = z.Both(turns.Bounds{Low: floor + g - p[2].High, High: soffit - g - p[2].Low}); z.Low > z.High {
			return true
		}
	}
	return q.through(q.s, x, y)
}

// over is the lowest floor and the highest soffit at a place, from the inner corner.
func (s Stair) over(x, y turns.Bounds) (floor, soffit float64) {
	slope, wide, run := s.slope(), s.Across-s.Width, s.walled()
	switch {
	case x.Low > wide && (y.Low >= 0 || y.Low > -run && x.High < wide+run):
		floor = s.treadOn(x.Low - wide)
	case y.Low < 0:
		floor = s.tread(y.Low)
	}
	switch {
	case y.Low < -run || x.High > wide+run:
		return floor, math.Inf(1)
	case y.High < 0:
		return floor, s.Headroom + slope*max(-s.run(), y.High)
	case x.High > wide:
		return floor, s.Headroom + s.Rise + slope*(x.High-wide)
	}
	return floor, s.Headroom
}

// through reports whether the way between two probes that are next to each other goes
// through the inner corner for certain.
func (h *probes) through(s Stair, x, y turns.Bounds) bool {
	for _, row := range h.rows {
		for k := 1; k < len(row); k++ {
			a, b := h.seen[row[k-1]], h.seen[row[k]]
			if a[0].Low > b[0].Low {
				a, b = b, a
			}
			left, right := turns.Bounds{Low: x.Low + a[0].Low, High: x.High + a[0].High}, turns.Bounds{Low: x.Low + b[0].Low, High: x.High + b[0].High}
			within := min(a[1].Low, b[1].Low)+y.Low >= -s.walled() && right.High <= s.Across-s.Width+s.walled()
			if within && left.High < 0 && right.Low > 0 && heightAtZero(left, right, y.High+a[1].High, y.High+b[1].High) < h.b.Wrap() {
				return true
			}
		}
	}
	return false
}

// heightAtZero is how high the line from a place on the left to one on the right is at most
// where it crosses 0, l and r being their heights.
func heightAtZero(left, right turns.Bounds, l, r float64) float64 {
	most := none
	for _, x := range [2]float64{left.Low, left.High} {
		for _, z := range [2]float64{right.Low, right.High} {
			most = max(most, (l*z-r*x)/(z-x))
		}
	}
	return most
}
