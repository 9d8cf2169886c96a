// Package stair decides whether a body is carried up a stair, and how. Lengths are in m and
// angles in rad.
package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

var none = math.Inf(-1)

// Turn is how a flight alike goes on from a stair's landing.
type Turn uint8

// The ways on.
const (
	Straight Turn = iota + 1 // none does: the way is level from the landing's edge
	Quarter                  // from its side
	Half                     // back beside the flight that comes up
)

// Stair is a flight that comes up to a landing, and one alike that goes on from it. The
// world's axes: X across, Y on from the top step, Z up from the landing, which is
// 0 ≤ X ≤ Across and 0 ≤ Y ≤ Length; straight on it has no end, and its walls are Across
// apart, the first one Left of the flight's where it is Placed, else the flight is anywhere
// between them, or they are not known where Across is 0. The flight comes up along Y in
// 0 ≤ X ≤ Width. The way goes on along X in 0 ≤ Y ≤ Length at a quarter turn,
// and against Y in Across - Width ≤ X ≤ Across at a half; then all between the flights is
// wall. The headroom is upright, over the line of the nosings and over the landing. With
// Corridors the way is level past the ends of the flights, between the same walls and under
// the same headroom; else what is there is not known. Lengths in m.
type Stair struct {
	Turn                         Turn
	Width, Headroom, Rise, Going float64
	Across, Length, Left         float64
	Risers                       int
	Placed, Corridors            bool
}

// run is how far a flight goes, along Y.
func (s Stair) run() float64 { return s.Going * float64(s.Risers) }

// walled is how far from the landing, along Y, the walls and the soffit of a flight are known.
func (s Stair) walled() float64 {
	if s.Corridors {
		return math.Inf(1)
	}
	return s.run()
}

// slope is the rise of the line of the nosings over its run.
func (s Stair) slope() float64 { return s.Rise / s.Going }

// nosing is by how much, in m, a nosing is before the riser under it at most: common
// practice.
const nosing = 0.03

// tread is the height of the tread under a place before the landing, or a little less.
func (s Stair) tread(y float64) float64 {
	return s.Rise * max(-float64(s.Risers), math.Floor((y-nosing)/s.Going))
}

// treadOn is the height of the tread at a place so far beyond the landing's edge at the
// least: the flight that goes on may begin there or a step later, and under a nosing a place
// is as low as the tread before.
func (s Stair) treadOn(y float64) float64 {
	return s.Rise * min(float64(s.Risers), max(0, (y-nosing)/s.Going-1))
}

// rounded is a stair with its lengths rounded as those of a body in trees are.
func (s Stair) rounded() Stair {
	for _, x := range []*float64{&s.Width, &s.Headroom, &s.Rise, &s.Going, &s.Across, &s.Length, &s.Left} {
		*x = passage.Round(*x, roundOff)
	}
	return s
}

// Climb decides a stair: from the floor at its foot, by one motion, to its landing, and up
// the flight that goes on to the floor there. What it does not decide ClimbFreely may.
func Climb(b *passage.Body, s Stair, budget *passage.Budget) passage.Decision {
	if budget.Spent() {
		return passage.Decision{Outcome: passage.Undecided, RanOut: true}
	}
	l := landing{b: b, s: s, half: s.Turn == Half, off: b.Wrap()}
	for _, u := range plainUps(b) {
		if m := l.carried(u.up, u.way, budget); m.Follow != nil {
			return passage.Decision{Outcome: passage.Passes, Motion: m}
		}
	}
	proven, ranOut := coverLanding(b, s, budget)
	if proven {
		return passage.Decision{Outcome: passage.Cannot, Bound: passage.StairCover}
	}
	for _, u := range l.leaningUps() {
		if m := l.carried(u, passage.Free, budget); m.Follow != nil {
			return passage.Decision{Outcome: passage.Passes, Motion: m}
		}
	}
	inFlight, over := coverFlight(b, s, budget)
	if inFlight {
		return passage.Decision{Outcome: passage.Cannot, Bound: passage.StairCover}
	}
	return passage.Decision{Outcome: passage.Undecided, RanOut: ranOut || over || budget.Spent()}
}

// landingPlaces are the places P of the body, as shares of its middle line, that are looked
// at half way around the landing; those that are looked at down the flight are its middle
// at such shares of the run.
var (
	landingPlaces = []float64{0.5, 0.2}
	flightPlaces  = []float64{0.5, 0.25, 0}
)

// coverLanding proves, if it can, that no motion takes the body around a stair's landing.
func coverLanding(b *passage.Body, s Stair, budget *passage.Budget) (proven, ranOut bool) {
	if s.Turn == Straight || s.Turn == Half && s.Across < 2*s.Width {
		return false, false
	}
	for _, share := range landingPlaces {
		probes := probesAt(b, share)
		if probes == nil {
			return false, false
		}
		out := (&halfCover{probes, s, s.Across/2 - s.Width}).out
		if s.Turn == Quarter {
			far := math.Hypot(s.Width, s.Length)
			out = (&quarterCover{probes, s, space.Point{X: -s.Width / far, Y: s.Length / far}}).out
		}
		proven, over := probes.all(out, budget)
		if proven {
			return true, false
		}
		ranOut = ranOut || over
	}
	return false, ranOut
}

// What a cover of a flight may spend at most, in cells, and how many looks each costs.
const (
	flightCells = 10500
	looksACell  = 2
)

// coverFlight proves, if it can, that no motion takes the body up the flight.
func coverFlight(b *passage.Body, s Stair, budget *passage.Budget) (proven, ranOut bool) {
	probes := probesAt(b, 0.5)
	if probes == nil || !alongFlight(b, s) {
		return false, false
	}
	for _, down := range flightPlaces {
		given := min(flightCells, budget.Looks/looksACell)
		part := &passage.Budget{Cells: given}
		proven, over := probes.all((&flightCover{probes, s, -down * s.run()}).out, part)
		if budget.Looks -= looksACell * (given - part.Cells); proven {
			return true, false
		}
		ranOut = ranOut || over
	}
	return false, ranOut
}

// probesAt are those from the place at a share of the body's middle line; nil if it has
// none.
func probesAt(b *passage.Body, share float64) *probes {
	m := b.Middle()
	if len(m) == 0 {
		return nil
	}
	return newProbes(b, m[int(share*float64(len(m)-1)+0.5)].At, share == 0.5, stairStep, alongStair)
}

// AsCorner is a motion up a stair as it is seen in a Corner: its Y against the stair's,
// from the landing's end.
func (s Stair) AsCorner(m passage.Motion) passage.Motion {
	return eachPose(m, func(p space.Pose) space.Pose {
		return space.Pose{Turn: space.Turn{p.Turn[0], p.Turn[1].Times(-1), p.Turn[2].Times(-1)}, At: space.Vec{X: p.At.X, Y: s.Length - p.At.Y, Z: s.Headroom - p.At.Z}}
	})
}

// AsFlight is a motion up a stair as it is seen along the flight: X along it, from the
// landing's edge, and Y across from its right wall, as one goes up.
func (s Stair) AsFlight(m passage.Motion) passage.Motion {
	return eachPose(m, func(p space.Pose) space.Pose {
		return space.Pose{Turn: space.Turn{p.Turn[1], p.Turn[0].Times(-1), p.Turn[2]}, At: space.Vec{X: p.At.Y, Y: s.Width - p.At.X, Z: p.At.Z}}
	})
}

// eachPose is a motion with each of its poses seen in another way.
func eachPose(m passage.Motion, seen func(space.Pose) space.Pose) passage.Motion {
	poses := m.Follow
	m.Follow = func() (out []space.Pose) {
		for _, p := range poses() {
			out = append(out, seen(p))
		}
		return out
	}
	return m
}

// AcrossSlope is the headroom of a stair, square to its slope, from that measured
// upright, in its unit: headroom·cos(atan(rise/going)), what a piece carried
// parallel to the flight sees. Rise and going are positive and in one unit.
// Derived.
func AcrossSlope(headroom, rise, going float64) float64 {
	return headroom * math.Cos(math.Atan2(rise, going))
}
