package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// StairTurn is how a flight alike goes on from a stair's landing.
type StairTurn uint8

// The ways on.
const (
	Straight StairTurn = iota + 1 // none does: the way is level from the landing's edge
	Quarter                       // from its side
	Half                          // back beside the flight that comes up
)

// Stair is a flight that comes up to a landing, and one alike that goes on from it. The
// world's axes: X across, Y on from the top step, Z up from the landing, which is
// 0 ≤ X ≤ Across and 0 ≤ Y ≤ Length; straight on it has no end, and its walls are Across
// apart, the flight anywhere between them, or not known where that is 0. The flight comes
// up along Y in 0 ≤ X ≤ Width. The way goes on along X in 0 ≤ Y ≤ Length at a quarter turn,
// and against Y in Across - Width ≤ X ≤ Across at a half; then all between the flights is
// wall. The headroom is upright, over the line of the nosings and over the landing. Lengths
// in m.
type Stair struct {
	Turn                         StairTurn
	Width, Headroom, Rise, Going float64
	Across, Length               float64
	Risers                       int
}

// run is how far a flight goes, along Y.
func (s Stair) run() float64 { return s.Going * float64(s.Risers) }

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

// Climb decides a stair: from the floor at its foot, by one motion, to its landing, and up
// the flight that goes on to the floor there. What it does not decide ClimbFreely may.
func (b *Body) Climb(s Stair, budget *Budget) Decision {
	if budget.spent() {
		return Decision{Outcome: Undecided, RanOut: true}
	}
	l := landing{b: b, s: s, half: s.Turn == Half, off: b.wrap}
	for _, u := range b.plainUps() {
		if m := l.carried(u.up, u.way, budget); m.poses != nil {
			return Decision{Outcome: Passes, Motion: m}
		}
	}
	proven, ranOut := b.landingCover(s, budget)
	if proven {
		return Decision{Outcome: Cannot, Bound: StairCover}
	}
	for _, u := range l.leaningUps() {
		if m := l.carried(u, Free, budget); m.poses != nil {
			return Decision{Outcome: Passes, Motion: m}
		}
	}
	inFlight, over := b.flightCover(s, budget)
	if inFlight {
		return Decision{Outcome: Cannot, Bound: StairCover}
	}
	return Decision{Outcome: Undecided, RanOut: ranOut || over || budget.spent()}
}

// landingPlaces are the places P of the body, as shares of its middle line, that are looked
// at half way around the landing; those that are looked at down the flight are its middle
// at such shares of the run.
var (
	landingPlaces = []float64{0.5, 0.2}
	flightPlaces  = []float64{0.5, 0.25, 0}
)

// landingCover proves, if it can, that no motion takes the body around a stair's landing.
func (b *Body) landingCover(s Stair, budget *Budget) (proven, ranOut bool) {
	if s.Turn == Straight || s.Turn == Half && s.Across < 2*s.Width {
		return false, false
	}
	for _, share := range landingPlaces {
		probes := b.probesAt(share)
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

// flightCover proves, if it can, that no motion takes the body up the flight.
func (b *Body) flightCover(s Stair, budget *Budget) (proven, ranOut bool) {
	probes := b.probesAt(0.5)
	if probes == nil || !b.alongFlight(s) {
		return false, false
	}
	for _, down := range flightPlaces {
		given := min(flightCells, budget.Looks/looksACell)
		part := &Budget{Cells: given}
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
func (b *Body) probesAt(share float64) *stairProbes {
	m := b.middle()
	if len(m) == 0 {
		return nil
	}
	return b.stairProbes(m[int(share*float64(len(m)-1)+0.5)].at, share == 0.5)
}

// AsCorner is a motion up a stair as it is seen in a Corner: its Y against the stair's,
// from the landing's end.
func (s Stair) AsCorner(m Motion) Motion {
	poses := m.poses
	m.poses = func() (out []space.Pose) {
		for _, p := range poses() {
			out = append(out, space.Pose{Turn: space.Turn{p.Turn[0], p.Turn[1].Times(-1), p.Turn[2].Times(-1)}, At: space.Vec{X: p.At.X, Y: s.Length - p.At.Y, Z: s.Headroom - p.At.Z}})
		}
		return out
	}
	return m
}
