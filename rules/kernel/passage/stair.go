package passage

import "math"

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
// 0 ≤ X ≤ Across and 0 ≤ Y ≤ Length. The flight comes up along Y in 0 ≤ X ≤ Width. The
// way goes on along X in 0 ≤ Y ≤ Length at a quarter turn, and against Y in
// Across - Width ≤ X ≤ Across at a half; then all between the flights is wall. The
// headroom is upright, over the line of the nosings and over the landing. Lengths in m.
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
// least: the flight that goes on may begin there or a step later.
func (s Stair) treadOn(y float64) float64 {
	return s.Rise * min(float64(s.Risers), max(0, y/s.Going-1))
}

// Climb decides a stair: from the floor at its foot, by one motion, to its landing, and up
// the flight that goes on to the floor there.
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
	proven, ranOut := b.stairCover(s, landingPlaces, budget)
	if proven {
		return Decision{Outcome: Cannot, Bound: StairCover}
	}
	for _, u := range l.leaningUps() {
		if m := l.carried(u, Free, budget); m.poses != nil {
			return Decision{Outcome: Passes, Motion: m}
		}
	}
	if s.Turn == Straight {
		proven, over := b.stairCover(s, flightPlaces, budget)
		if proven {
			return Decision{Outcome: Cannot, Bound: StairCover}
		}
		ranOut = ranOut || over
	}
	return Decision{Outcome: Undecided, RanOut: ranOut || budget.spent()}
}

// coverPlace is a place P of the body, as a share of its middle line, that is somewhere on
// its way up: half way around the landing, or so far down a straight flight, as a share
// of its run.
type coverPlace struct{ share, down float64 }

// landingPlaces and flightPlaces are those that are looked at, the latter of straight
// flights alone, and last: what they take of the budget is no motion's.
var (
	landingPlaces = []coverPlace{{0.5, 0}, {0.2, 0}}
	flightPlaces  = []coverPlace{{0.5, 0.5}, {0.5, 0.25}}
)

// stairCover proves, if it can, that no motion takes the body up a stair.
func (b *Body) stairCover(s Stair, places []coverPlace, budget *Budget) (proven, ranOut bool) {
	m := b.middle()
	if len(m) == 0 || s.Turn == Half && s.Across < 2*s.Width {
		return false, false
	}
	for _, p := range places {
		at, even := m[int(p.share*float64(len(m)-1)+0.5)].at, p.share == 0.5
		probes := b.stairProbes(at, even)
		proven, over := probes.all(s.cover(probes, p.down), budget)
		if proven {
			return true, false
		}
		ranOut = ranOut || over
	}
	return false, ranOut
}

// cover reports of the turns that its probes see whether the body can't be half way at
// any, or so far down a straight flight.
func (s Stair) cover(probes *stairProbes, down float64) (out func() bool) {
	switch s.Turn {
	case Half:
		return (&halfCover{probes, s, s.Across/2 - s.Width}).out
	case Quarter:
		far := math.Hypot(s.Width, s.Length)
		return (&quarterCover{probes, s, Point{-s.Width / far, s.Length / far}}).out
	default:
		return (&straightCover{probes, s, -down * s.run()}).out
	}
}

// AsCorner is a motion up a stair as it is seen in a Corner: its Y against the stair's,
// from the landing's end.
func (s Stair) AsCorner(m Motion) Motion {
	poses := m.poses
	m.poses = func() (out []Pose) {
		for _, p := range poses() {
			out = append(out, Pose{Turn{p.Turn[0], p.Turn[1].times(-1), p.Turn[2].times(-1)}, Vec{p.At.X, s.Length - p.At.Y, s.Headroom - p.At.Z}})
		}
		return out
	}
	return m
}
