package passage

import "math"

// flightCover looks for turns at which the body may be with a place P of it over one line
// across the flight that comes up, or over the landing's edge: it is there once on its
// way.
//
// Theorem. At that instant what of the body is over the flight is between its walls and
// what is over the landing between those of the landing, and all is between floor and
// soffit. If that can be at no turn and with P nowhere on the line, there is no motion.
// What room there is past the flight's foot is not looked at, nor the soffit past the
// landing's edge where a flight goes on from its side. Derived.
type flightCover struct {
	*stairProbes
	s  Stair
	at float64 // of P, along Y
}

// alongFlight reports whether what is before the landing's edge and over the flight's run
// is in the flight, P being there: no hollow of the body holds the wall between two
// flights.
func (b *Body) alongFlight(s Stair) bool {
	return s.Turn != Half || math.Abs(signedArea(b.hull))-math.Abs(signedArea(b.section)) < alikeShare*b.wide*b.high
}

// landing is what the body has across on the landing: for a way straight on its walls may
// be to either side, and are nowhere where its width is not known.
func (s Stair) landing() bounds {
	switch {
	case s.Turn == Straight && s.Across > 0:
		return bounds{s.Width - s.Across, s.Across}
	case s.Turn == Straight:
		return bounds{none, math.Inf(1)}
	case s.Turn == Quarter:
		return bounds{0, math.Inf(1)}
	default:
		return bounds{0, s.Across}
	}
}

// out reports whether none of the turns that are seen can be.
func (q *flightCover) out() bool {
	g, run := q.b.wrap, q.s.run()
	landing, far := q.s.landing(), math.Inf(1)
	if q.s.Turn != Straight {
		far = q.s.Length - g
	}
	least, most := math.Inf(1), none
	z, x := bounds{none, math.Inf(1)}, bounds{none, math.Inf(1)}
	for i := range q.seen {
		p := &q.seen[i]
		y := bounds{q.at + p[1].low, q.at + p[1].high}
		floor, soffit := q.s.heightsAlong(y)
		near := q.s.Turn != Quarter || q.s.Width+p[0].high < q.s.Across+run // of the end of the flight that goes on
		if y.low >= -run {
			walls := landing
			if y.high <= 0 && near {
				walls = bounds{0, q.s.Width}
			}
			x = x.both(bounds{walls.low + g - p[0].high, walls.high - g - p[0].low})
			least, most = min(least, p[0].high), max(most, p[0].low)
		}
		z = z.both(bounds{floor + g - p[2].high, soffit - g - p[2].low})
		if z.low > z.high || x.low > x.high || y.low > far && near {
			return true
		}
	}
	if q.s.Turn == Quarter {
		return q.through(q.s, bounds{x.low - q.s.Width, x.high - q.s.Width}, bounds{q.at, q.at})
	}
	return q.s.Across > 0 && most-least > q.s.Across-2*g
}

// heightsAlong are the lowest floor and the highest soffit over a part of the flight and
// the landing.
func (s Stair) heightsAlong(y bounds) (floor, soffit float64) {
	if y.low < 0 {
		floor = s.tread(y.low)
	}
	if y.low < -s.run() || y.high > 0 && s.Turn == Quarter {
		return floor, math.Inf(1)
	}
	return floor, s.Headroom + s.slope()*min(0, y.high)
}
