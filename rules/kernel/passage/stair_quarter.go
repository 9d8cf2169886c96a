package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
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
	*stairProbes
	s    Stair
	walk space.Point // from the inner corner to the outer one, of length 1
}

// out reports whether none of the turns that are seen can be.
func (q *quarterCover) out() bool {
	g, far := q.b.wrap, math.Inf(1)
	run, wide := q.s.run(), q.s.Across-q.s.Width
	for i := range q.seen {
		p := &q.seen[i]
		// The outer walls end with the flights.
		if p[0].high <= wide+run {
			far = min(far, (q.s.Length-g-p[1].low)/q.walk.Y)
		}
		if p[1].low >= -run {
			far = min(far, (q.s.Width-g+p[0].high)/-q.walk.X)
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
		if !q.outAt(bounds{far * float64(i) / float64(n), far * float64(i+1) / float64(n)}) {
			return false
		}
	}
	return true
}

// outAt is out with P so far from the inner corner.
func (q *quarterCover) outAt(far bounds) bool {
	// From the inner corner.
	x, y := bounds{far.high * q.walk.X, far.low * q.walk.X}, bounds{far.low * q.walk.Y, far.high * q.walk.Y}
	g, z := q.b.wrap, bounds{none, math.Inf(1)}
	wide, run := q.s.Across-q.s.Width, q.s.run()
	for i := range q.seen {
		p := &q.seen[i]
		px, py := bounds{x.low + p[0].low, x.high + p[0].high}, bounds{y.low + p[1].low, y.high + p[1].high}
		if px.low >= 0 && px.high < wide+run && py.high < g || py.high <= 0 && py.low > -run && px.low > -g {
			return true
		}
		floor, soffit := q.s.over(px, py)
		if z = z.both(bounds{floor + g - p[2].high, soffit - g - p[2].low}); z.low > z.high {
			return true
		}
	}
	return q.through(q.s, x, y)
}

// over is the lowest floor and the highest soffit at a place, from the inner corner.
func (s Stair) over(x, y bounds) (floor, soffit float64) {
	slope, wide, run := s.slope(), s.Across-s.Width, s.run()
	switch {
	case x.low > wide:
		floor = s.treadOn(x.low - wide)
	case y.low < 0:
		floor = s.tread(y.low)
	}
	switch {
	case y.low < -run || x.high > wide+run:
		return floor, math.Inf(1)
	case y.high < 0:
		return floor, s.Headroom + slope*y.high
	case x.high > wide:
		return floor, s.Headroom + s.Rise + slope*(x.high-wide)
	}
	return floor, s.Headroom
}

// through reports whether the way between two probes that are next to each other goes
// through the inner corner for certain.
func (h *stairProbes) through(s Stair, x, y bounds) bool {
	for _, row := range h.rows {
		for k := 1; k < len(row); k++ {
			a, b := h.seen[row[k-1]], h.seen[row[k]]
			if a[0].low > b[0].low {
				a, b = b, a
			}
			left, right := bounds{x.low + a[0].low, x.high + a[0].high}, bounds{x.low + b[0].low, x.high + b[0].high}
			within := min(a[1].low, b[1].low)+y.low >= -s.run() && right.high <= s.Across-s.Width+s.run()
			if within && left.high < 0 && right.low > 0 && heightAtZero(left, right, y.high+a[1].high, y.high+b[1].high) < h.b.wrap {
				return true
			}
		}
	}
	return false
}

// heightAtZero is how high the line from a place on the left to one on the right is at most
// where it crosses 0, l and r being their heights.
func heightAtZero(left, right bounds, l, r float64) float64 {
	most := none
	for _, x := range [2]float64{left.low, left.high} {
		for _, z := range [2]float64{right.low, right.high} {
			most = max(most, (l*z-r*x)/(z-x))
		}
	}
	return most
}
