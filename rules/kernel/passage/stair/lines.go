package stair

import "dryfit/rules/kernel/passage/turns"

// ramps are two lines at most.
type ramps struct {
	of [2]ramp
	n  int
}

func (r *ramps) take(l ramp) {
	r.of[r.n] = l
	r.n++
}

func (r *ramps) all() []ramp { return r.of[:r.n] }

// reachOfLines is how far past the foot of a flight, in m, a line stands for its treads.
const reachOfLines = 1

// floors are lines over Y that are no higher than the floor of the flight that comes
// up, of its foot and of the landing, where a place is in y.
func (s *Stair) floors(y turns.Bounds) (out ramps) {
	if y.Low >= nosing {
		out.take(ramp{})
		return out
	}
	out.take(ramp{at: s.tread(y.Low)})
	slope := s.slope()
	drop := slope*nosing + s.Rise // by how much a tread is under the line of the nosings at most
	switch level := s.Going + nosing; {
	case y.Low < -s.run()-reachOfLines:
	case y.High > level:
		by := (drop - slope*y.Low) / (y.High - y.Low)
		out.take(ramp{-by * y.High, by})
	case y.High > -s.run():
		out.take(ramp{-drop, slope})
	}
	return out
}

// soffits are lines over Y that are no lower than the soffit of that flight and of the
// landing, and of a corridor past the foot. Else there is none there.
func (s *Stair) soffits(y turns.Bounds) (out ramps) {
	deep, low := s.slope()*s.run(), y.Low < -s.run()
	switch {
	case low && !s.Corridors:
	case low && y.High <= -s.run():
		out.take(ramp{at: s.Headroom - deep})
	case low: // from the corridor's soffit to the highest over the flight
		high := min(y.High, 0)
		by := (s.slope()*high + deep) / (high - y.Low)
		out.take(ramp{s.Headroom - deep - by*y.Low, by})
		out.take(ramp{at: s.Headroom})
	default:
		out.take(ramp{at: s.Headroom})
		if y.Low < 0 {
			out.take(ramp{s.Headroom, s.slope()})
		}
	}
	return out
}

// floorsOn are those of the landing and of the flight that goes on, over how far beyond the
// landing's edge a place is.
func (s *Stair) floorsOn(on turns.Bounds) (out ramps) {
	out.take(ramp{at: s.treadOn(on.Low)})
	if slope := s.slope(); on.Low > -reachOfLines && on.High > nosing && on.High <= s.run() {
		out.take(ramp{-slope*nosing - s.Rise, slope})
	}
	return out
}

// soffitsOn are those over them: past the landing's edge the soffit is a rise higher and
// goes up with the flight, and past its end there is none but that of a corridor, a rise over
// the last nosing's at most.
func (s *Stair) soffitsOn(on turns.Bounds) (out ramps) {
	slope, edge := s.slope(), s.Headroom+s.Rise
	switch {
	case on.High > s.run():
		if s.Corridors {
			out.take(ramp{at: edge + slope*s.run()})
		}
	case on.High <= 0:
		out.take(ramp{at: s.Headroom})
	case on.Low >= 0:
		out.take(ramp{edge, slope})
	case -on.Low <= s.Going: // two lines, over the soffit before the edge and past it
		out.take(ramp{edge, slope})
		out.take(ramp{edge, s.Rise / -on.Low})
	default:
		by := (s.Rise + slope*on.High) / (on.High - on.Low)
		out.take(ramp{s.Headroom - by*on.Low, by})
	}
	return out
}
