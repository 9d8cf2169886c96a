package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// side is a stair seen along its flight: the flight comes up along Y to Y = 0, from a
// floor that is deep below the landing behind it. At the landing's end is a wall, or it
// has none.
type side struct {
	slope, headroom float64
	length          float64 // of the landing, +Inf if it has no end
	deep            float64
	lower           float64 // by how much the flight's own soffit is lower
}

// ramp is a height over Y, at + by·y.
type ramp struct{ at, by float64 }

func (l ramp) of(y float64) float64 { return l.at + l.by*y }

// sidelong is where the origin of a body may be at one turn, seen from the side: over
// all floors and one of those over, under all soffits and one of those under, and no
// further on than last.
//
// A convex body is free of the nosing at the landing's edge exactly if some line
// through it, as steep as the landing, the flight or between, has the body over it. The
// edge of the soffit over the flight's foot is alike. Derived.
type sidelong struct {
	floors, over   []ramp
	soffits, under []ramp
	last           float64
}

// overLines and underLines are how many lines through an edge are looked at: fewer
// find less.
const (
	overLines  = 5
	underLines = 3
)

// sidelongOf is that of the body at a turn, everything off from the walls.
func sidelongOf(b *passage.Body, s side, t space.Turn, off float64) sidelong {
	out := sidelong{last: s.length - off - b.Reach(t[1]).Dot(t[1])}
	// Of a line through a place along.
	line := func(steep, y, z, sign float64) ramp {
		e := t[2].Minus(t[1].Times(steep))
		return ramp{z + sign*off*math.Hypot(1, steep) - steep*y - b.Reach(e.Times(-sign)).Dot(e), steep}
	}
	for k := range overLines {
		out.over = append(out.over, line(s.slope*float64(k)/(overLines-1), 0, 0, 1))
	}
	out.soffits = append(out.soffits, line(0, 0, s.headroom, -1))
	out.floors = append(out.floors, line(0, 0, -s.deep, 1))
	for k := range underLines {
		out.under = append(out.under, line(s.slope*float64(k)/(underLines-1), (s.lower-s.deep)/s.slope, s.headroom-s.deep, -1))
	}
	return out
}

// region is the places of a sidelong that are over one line and under one: convex.
type region struct {
	low, high []ramp
	last      float64
}

// regions are those of which the sidelong is made.
func (s *sidelong) regions() (out []region) {
	for _, o := range s.over {
		low := append([]ramp{o}, s.floors...)
		for _, u := range s.under {
			out = append(out, region{low, append([]ramp{u}, s.soffits...), s.last})
		}
	}
	return out
}

// and is the places of both.
func (r region) and(o region) region {
	return region{append(append([]ramp(nil), r.low...), o.low...), append(append([]ramp(nil), r.high...), o.high...), min(r.last, o.last)}
}

// along is from where to where the region is; from above to for one that is empty.
func (r region) along() (from, to float64) {
	from, to = math.Inf(-1), r.last
	for _, l := range r.low {
		for _, h := range r.high {
			switch by := h.by - l.by; {
			case by > 0:
				from = max(from, (l.at-h.at)/by)
			case by < 0:
				to = min(to, (l.at-h.at)/by)
			case h.at < l.at:
				return 1, 0
			}
		}
	}
	return from, to
}

// heights are those of the region at a place along.
func (r region) heights(y float64) turns.Bounds {
	z := turns.Bounds{Low: none, High: math.Inf(1)}
	for _, l := range r.low {
		z.Low = max(z.Low, l.of(y))
	}
	for _, h := range r.high {
		z.High = min(z.High, h.of(y))
	}
	return z
}

// room is how far a place is from what bounds the sidelong, below nothing past it.
func (s *sidelong) room(y, z float64) float64 {
	over, under := none, none
	for _, l := range s.over {
		over = max(over, (z-l.of(y))/math.Hypot(1, l.by))
	}
	for _, l := range s.under {
		under = max(under, (l.of(y)-z)/math.Hypot(1, l.by))
	}
	room := min(over, under, s.last-y)
	for _, l := range s.floors {
		room = min(room, (z-l.of(y))/math.Hypot(1, l.by))
	}
	for _, l := range s.soffits {
		room = min(room, (l.of(y)-z)/math.Hypot(1, l.by))
	}
	return room
}

// heights are those at a place along.
func (s *sidelong) heights(y float64) turns.Bounds {
	z, under := turns.Bounds{Low: math.Inf(1), High: math.Inf(1)}, none
	for _, l := range s.over {
		z.Low = min(z.Low, l.of(y))
	}
	for _, l := range s.floors {
		z.Low = max(z.Low, l.of(y))
	}
	for _, l := range s.under {
		under = max(under, l.of(y))
	}
	z.High = under
	for _, l := range s.soffits {
		z.High = min(z.High, l.of(y))
	}
	return z
}
