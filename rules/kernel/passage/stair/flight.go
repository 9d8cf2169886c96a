package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// flightCover looks for turns at which the body may be with a place P of it over one line
// across the flight that comes up, or over the landing's edge: it is there once on its
// way.
//
// Theorem. At that instant what of the body is over the flight is between its walls and
// what is over the landing between those of the landing, and all is between floor and
// soffit. If that can be at no turn and with P nowhere on the line, there is no motion.
// What room there is past the flight's foot is looked at only where it is a corridor. The
// soffit past the landing's edge is not looked at where a flight goes on from its side.
// Derived.
type flightCover struct {
	*probes
	s  Stair
	at float64 // of P, along Y
}

// alongFlight reports whether what is before the landing's edge and over the flight's run
// is in the flight, P being there: no hollow of the body holds the wall between two
// flights.
func alongFlight(b *passage.Body, s Stair) bool {
	return s.Turn != Half || math.Abs(space.SignedArea(b.Hull()))-math.Abs(space.SignedArea(b.Section())) < passage.AlikeShare*b.Wide()*b.High()
}

// landing is what the body has across on the landing: for a way straight on its walls may
// be to either side, and are nowhere where its width is not known.
func (s Stair) landing() turns.Bounds {
	switch {
	case s.Turn == Straight && s.Placed:
		return turns.Bounds{Low: -s.Left, High: s.Across - s.Left}
	case s.Turn == Straight && s.Across > 0:
		return turns.Bounds{Low: s.Width - s.Across, High: s.Across}
	case s.Turn == Straight:
		return turns.Bounds{Low: none, High: math.Inf(1)}
	case s.Turn == Quarter:
		return turns.Bounds{Low: 0, High: math.Inf(1)}
	default:
		return turns.Bounds{Low: 0, High: s.Across}
	}
}

// out reports whether none of the turns that are seen can be.
func (q *flightCover) out() bool {
	g, run := q.b.Wrap(), q.s.walled()
	landing, far := q.s.landing(), math.Inf(1)
	if q.s.Turn != Straight {
		far = q.s.Length - g
	}
	least, most := math.Inf(1), none
	z, x := turns.Bounds{Low: none, High: math.Inf(1)}, turns.Bounds{Low: none, High: math.Inf(1)}
	for i := range q.seen {
		p := &q.seen[i]
		y := turns.Bounds{Low: q.at + p[1].Low, High: q.at + p[1].High}
		floor, soffit := q.s.heightsAlong(y)
		near := q.s.Turn != Quarter || q.s.Width+p[0].High < q.s.Across+run // of the end of the flight that goes on
		if y.Low >= -run {
			walls := landing
			if y.High <= 0 && near {
				walls = turns.Bounds{Low: 0, High: q.s.Width}
			}
			x = x.Both(turns.Bounds{Low: walls.Low + g - p[0].High, High: walls.High - g - p[0].Low})
			least, most = min(least, p[0].High), max(most, p[0].Low)
		}
		z = z.Both(turns.Bounds{Low: floor + g - p[2].High, High: soffit - g - p[2].Low})
		if z.Low > z.High || x.Low > x.High || y.Low > far && near {
			return true
		}
	}
	if q.s.Turn == Quarter {
		return q.through(q.s, turns.Bounds{Low: x.Low - q.s.Width, High: x.High - q.s.Width}, turns.Bounds{Low: q.at, High: q.at})
	}
	return q.s.Across > 0 && most-least > q.s.Across-2*g
}

// heightsAlong are the lowest floor and the highest soffit over a part of the flight and
// the landing.
func (s Stair) heightsAlong(y turns.Bounds) (floor, soffit float64) {
	if y.Low < 0 {
		floor = s.tread(y.Low)
	}
	if y.Low < -s.walled() || y.High > 0 && s.Turn == Quarter {
		return floor, math.Inf(1)
	}
	return floor, s.Headroom + s.slope()*max(-s.run(), min(0, y.High))
}
