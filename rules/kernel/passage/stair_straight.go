package passage

import "math"

// straightCover looks for turns at which a place P of the body may be over one line
// across a straight flight, or over the landing's edge: it is there once on its way.
// What room there is past the flight's two ends is not looked at, but for the landing's
// floor and soffit. Derived.
type straightCover struct {
	*stairProbes
	s  Stair
	at float64 // of P, along Y
}

// out reports whether none of the turns that are seen can be.
func (q *straightCover) out() bool {
	g, slope := q.b.wrap, q.s.slope()
	least, most := math.Inf(1), none
	z := bounds{none, math.Inf(1)}
	for i := range q.seen {
		p := &q.seen[i]
		y := bounds{q.at + p[1].low, q.at + p[1].high}
		floor, soffit := 0.0, q.s.Headroom
		if y.low < 0 {
			floor = q.s.tread(y.low)
		}
		if y.low < -q.s.run() {
			soffit = math.Inf(1)
		} else {
			soffit += slope * min(0, y.high)
			if y.high <= 0 { // the landing may be wider than the flight
				least, most = min(least, p[0].high), max(most, p[0].low)
			}
		}
		if z = z.both(bounds{floor + g - p[2].high, soffit - g - p[2].low}); z.low > z.high {
			return true
		}
	}
	return most-least > q.s.Width-2*g
}
