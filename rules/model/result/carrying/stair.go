package carrying

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/stair"
	"dryfit/rules/model/layout"
)

// The ways on from a stair's landing, what may be between two flights, and what past their
// ends.
const (
	straightOn = "none"
	halfTurn   = "half"
	walled     = "wall"
	corridors  = "corridor"
)

// turns reports whether the way goes on from a landing by a known way.
func turns(l layout.Leg, way string) bool { return l.Turn.Given() && l.Turn.Get() == way }

// stair is a stair as upStair decides it, and whether one motion up it is found without
// the wrap.
func (p *panel) stair(l layout.Leg, left *passage.Budget) Way {
	up := p.upStair(l, left)
	up.Bare = up.Bare && p.climbsBare(l, left)
	return up
}

// upStair is a stair followed by one motion from the floor at its foot, where that is
// found, or ruled out where that is proven. Else it is the flight, seen square to its
// slope, and the turn on its landing, which are not followed as one. A flight of which
// the number of steps is not given may be short, and a landing may not turn: then what
// does not pass needs that key.
func (p *panel) upStair(l layout.Leg, left *passage.Budget) Way {
	head := stair.AcrossSlope(l.Headroom.Get(), l.Rise.Get(), l.Going.Get())
	if turns(l, straightOn) {
		up := p.climbed(straightWalls(l, head), left)
		if up.Unfollowed = !up.Climbs && !p.rolls(l.Width.Get(), head); !l.Risers.Given() && up.Outcome != passage.Passes {
			up.Needs = "risers"
		}
		return p.levelOn(l, head, up, left)
	}
	turn := p.climbed(landingWalls(l), left)
	if turn.Climbs {
		turn.Depth, turn.Side = 0, 0
		return turn
	}
	up := p.flight(l, head, left)
	turn.Needs = needs(l, turn)
	turn.Unfollowed = !p.rolls(l.Width.Get(), head, l.Landing.Length.Get(), l.Landing.Width.Get())
	up.Unfollowed = turn.Unfollowed
	// What is ruled out by the flight alone hangs on no key of the landing, nor does a
	// search of the flight that ran out.
	failed := up.Outcome == passage.Cannot || up.Outcome == passage.Undecided && up.RanOut
	if alone := failed && up.Needs == "" && turn.Needs != ""; !alone && worse(turn, up) {
		up = turn
	}
	up.Depth, up.Side = 0, 0
	return p.freely(l, up, left)
}

// searched reports whether a stair that is not decided, or not followed as one motion, may
// be searched for all ways of turning the panel on it.
func searched(l layout.Leg, up Way, left *passage.Budget) bool {
	unknown := up.Outcome == passage.Undecided || up.Outcome == passage.Passes && up.Unfollowed
	return unknown && left != nil && left.Looks > 0 && l.Risers.Given() && l.Turn.Given()
}

// turning is a motion up a stair on which the panel turns as need be, if one is found with
// some of the looks that are left.
func (p *panel) turning(s stair.Stair, left *passage.Budget) (passage.Motion, bool) {
	share := &passage.Budget{Looks: min(left.Looks, freeLooks)}
	left.Looks -= share.Looks
	m, found := stair.ClimbFreely(p.body, s, share)
	left.Looks += share.Looks
	return m, found
}

// levelOn is a stair from whose landing the way is level: a motion up it on which the panel
// turns as need be, where one is found, or ruled out if no way of turning it leads up.
func (p *panel) levelOn(l layout.Leg, head float64, up Way, left *passage.Budget) Way {
	if !searched(l, up, left) {
		return up
	}
	w := flightWalls(l, head)
	straight := straightStair(l, w.sizes(), head)
	if m, found := p.turning(straight, left); found {
		w.words = func(m passage.Motion) string { return "up the flight and onto the landing, " + openingWords(m) }
		w.view = alongFlight(l.Width.Get())
		return p.way(w, passage.Decision{Outcome: passage.Passes, Motion: straight.AsFlight(m)}, left)
	}
	proven, ranOut := stair.Apart(p.body, straight, left)
	if !proven {
		up.RanOut = up.Outcome == passage.Undecided && (up.RanOut || ranOut)
		return unproven(l, up)
	}
	d := w.decide(p.body, w.sizes(), nil)
	d.Outcome, d.Bound = passage.Cannot, passage.StairApart
	return p.asOne(straightWalls(l, head), d, left)
}

// freeLooks is how many looks a motion up a stair is looked for with on which the panel turns
// as need be.
const freeLooks = 120000

// freely is a stair that is not decided or not followed as one motion: the motion up it on
// which the panel turns as need be, where one is found, or ruled out if none exists.
func (p *panel) freely(l layout.Leg, up Way, left *passage.Budget) Way {
	if !searched(l, up, left) {
		return up
	}
	w := landingWalls(l)
	turning := turned(l, w.sizes())
	if m, found := p.turning(turning, left); found {
		return p.way(w, passage.Decision{Outcome: passage.Passes, Motion: turning.AsCorner(m)}, left)
	}
	up.RanOut = up.Outcome == passage.Undecided
	if open(l) {
		return up
	}
	if proven, _ := stair.Apart(p.body, turning, left); !proven {
		return unproven(l, up)
	}
	out := p.asOne(w, passage.Decision{Outcome: passage.Cannot, Bound: passage.StairApart, Motion: corner.Around(p.body, cornerOf(w.sizes()), nil).Motion}, left)
	out.Needs = needs(l, out)
	out.Depth, out.Side, out.Unfollowed = 0, 0, up.Unfollowed
	return out
}

// unproven is a stair for which no proof was found: with what is past its ends there may be
// one.
func unproven(l layout.Leg, up Way) Way {
	if up.Outcome == passage.Undecided && !l.Ends.Given() {
		up.Decides = "ends"
	}
	return up
}

// climbed is how a stair is decided.
func (p *panel) climbed(w walls, left *passage.Budget) Way {
	d := w.decide(p.body, w.sizes(), left)
	if d.Bound != passage.StairCover {
		return p.way(w, d, left)
	}
	return p.asOne(w, d, left)
}

// asOne is a stair that is ruled out as a whole: its sizes are those with which one motion
// is found, and not those of flight and landing apart.
func (p *panel) asOne(w walls, d passage.Decision, left *passage.Budget) Way {
	out := p.unsized(w, d)
	out.Bare = false
	if !p.brief && left != nil {
		out.Size.More, out.Size.Motion = p.roomierStair(w, left)
	}
	return out
}

// needs is the key that a turn which is not passed needs.
func needs(l layout.Leg, turn Way) string {
	switch {
	case turn.Outcome == passage.Passes:
		return ""
	case !l.Turn.Given():
		return "turn"
	case turn.Outcome == passage.Cannot && !l.Risers.Given():
		return "risers"
	case turn.Outcome == passage.Cannot && !l.Between.Given():
		return "between"
	default:
		return ""
	}
}

// climbCells is the share of what may be spent, in quarters, that one motion up a stair is
// looked for with, or a proof that there is none.
const climbCells = 3

// climb decides a stair as one motion.
func climb(l layout.Leg, b *passage.Body, s stair.Stair, left *passage.Budget) passage.Decision {
	if left == nil || !l.Risers.Given() || !l.Turn.Given() {
		return passage.Decision{Outcome: passage.Undecided}
	}
	part := &passage.Budget{Cells: left.Cells * climbCells / 4, Looks: left.Looks}
	left.Cells -= part.Cells
	d := stair.Climb(b, s, part)
	left.Cells, left.Looks = left.Cells+part.Cells, part.Looks
	return d
}

// steps gives a stair its steps, its turn and what is past its ends.
func steps(l layout.Leg, turn stair.Turn, s stair.Stair) stair.Stair {
	s.Turn, s.Rise, s.Going = turn, l.Rise.Get(), l.Going.Get()
	s.Corridors = l.Ends.Given() && l.Ends.Get() == corridors
	if l.Risers.Given() {
		s.Risers = l.Risers.Get()
	}
	return s
}

// straightWalls are those of a flight to a landing from which no flight goes on.
func straightWalls(l layout.Leg, head float64) walls {
	flight := flightWalls(l, head)
	apart := flight.decide
	flight.decide = func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
		whole := climb(l, b, straightStair(l, s, head), left)
		d := apart(b, s, left)
		switch {
		case whole.Outcome == passage.Passes && d.Outcome == passage.Passes:
			d.Motion.Climbs, d.Motion.Margin = true, min(d.Motion.Margin, whole.Motion.Margin)
		case whole.Outcome == passage.Cannot:
			d.Outcome, d.Bound = whole.Outcome, whole.Bound
		}
		d.RanOut = d.RanOut || whole.RanOut
		return d
	}
	return flight
}

// straightStair is a stair with a flight of such sizes, its headroom square to its slope
// where head is so much as it is given, to a landing from which no flight goes on.
func straightStair(l layout.Leg, s []float64, head float64) stair.Stair {
	level := stair.Stair{Width: s[0], Headroom: s[1] / head * l.Headroom.Get()}
	if l.Landing.Width.Given() {
		level.Placed, level.Left = l.LandingLeft.Given(), given(l.LandingLeft, 0)
		level.Across = max(level.Left+s[0], l.Landing.Width.Get())
	}
	return steps(l, stair.Straight, level)
}

// flight is the flight alone, its headroom square to its slope.
func (p *panel) flight(l layout.Leg, head float64, left *passage.Budget) Way {
	up := p.decided(flightWalls(l, head), left)
	if !l.Risers.Given() && up.Outcome != passage.Passes {
		up.Needs = "risers"
	}
	return up
}

func flightWalls(l layout.Leg, head float64) walls {
	// The flight's soffit begins and ends H·sin α further up the slope than its floor.
	slope := math.Hypot(l.Rise.Get(), l.Going.Get())
	long := max(0, slope*given(l.Risers, 0)-l.Headroom.Get()*l.Rise.Get()/slope)
	flight := tube(l.Width.Get(), head, long, []any{"headroom"})
	flight.words = func(m passage.Motion) string { return "up the flight, " + openingWords(m) }
	return flight
}

// stairHeadroom is which of the sizes of landingWalls the headroom is.
const stairHeadroom = 2

// landingWalls are those of a landing on which the way turns. The way on from the
// landing's side is as wide as the landing is long, on from the top step.
func landingWalls(l layout.Leg) walls {
	w := cornerWalls(l.Width, l.Landing.Length, l.Headroom, []any{"landing", "length"}, []any{"headroom"})
	w.words = func(m passage.Motion) string {
		if m.Climbs {
			return "up the flights and around the landing, " + cornerWords(m)
		}
		return "turned on the landing, " + cornerWords(m)
	}
	apart := quarterTurn
	if turns(l, halfTurn) {
		apart = halfTurned
	}
	w.dims = append(w.dims, dim{[]any{"landing", "width"}, "landing's width", l.Landing.Width.Get()})
	w.decide = func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
		turning := turned(l, s)
		d := climb(l, b, turning, left)
		switch {
		case d.Outcome == passage.Passes:
			d.Motion = turning.AsCorner(d.Motion)
			return d
		case d.Outcome == passage.Cannot && !open(l):
			d.Motion = corner.Around(b, cornerOf(s), nil).Motion
			return d
		}
		each := apart(l, b, s, left)
		each.RanOut = each.RanOut || d.RanOut
		return each
	}
	return w
}

// turned is a stair with a landing of such sizes, on which the way turns.
func turned(l layout.Leg, s []float64) stair.Stair {
	turn := stair.Quarter
	if turns(l, halfTurn) {
		turn = stair.Half
	}
	return steps(l, turn, stair.Stair{Width: s[0], Length: s[1], Headroom: s[stairHeadroom], Across: s[3]})
}

// open reports whether nothing is between a stair's flights: then nothing rules out a turn.
func open(l layout.Leg) bool { return l.Between.Given() && l.Between.Get() != walled }

// cornerOf is the one that a flight and the way on make.
func cornerOf(s []float64) corner.Corner {
	return corner.Corner{Width: s[0], Onward: s[1], Height: s[2]}
}

// quarterTurn decides the corner on a landing. What reaches out over the flight has
// more than the headroom over it, so that only what no height lets around is ruled out,
// and that only where the panel can't reach past the foot of the flight.
func quarterTurn(l layout.Leg, b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
	c := cornerOf(s)
	d := corner.Around(b, c, left)
	if d.Outcome != passage.Cannot {
		return d
	}
	c.Height = math.Inf(1)
	short := l.Risers.Given() && l.Going.Get()*float64(l.Risers.Get()) < b.Diameter()
	if short || open(l) || corner.Around(b, c, left).Outcome != passage.Cannot {
		d.Outcome, d.Bound = passage.Undecided, 0
	}
	return d
}

// halfTurned decides a half turn as two corners, on a landing on which the panel that has
// come around the first one lies free of the flight. Around the end of a wall an arch
// may hook, so that no corner rules it out.
func halfTurned(_ layout.Leg, b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
	d := corner.Around(b, cornerOf(s), left)
	if d.Outcome == passage.Cannot {
		d.Outcome, d.Bound = passage.Undecided, 0
	}
	if d.Outcome == passage.Passes {
		d.Motion.Margin = min(d.Motion.Margin, (s[3]-b.Longest())/2-b.Wrap())
	}
	if d.Motion.Margin < 0 {
		d.Outcome = passage.Undecided
	}
	return d
}

// rolls reports whether a ball around the wrapped panel has room in all of some clear
// sizes: then the panel goes wherever its middle does.
func (p *panel) rolls(sizes ...float64) bool {
	return p.body.Diameter()+2*p.wrap <= slices.Min(sizes)
}

// worse reports whether one part of a leg is what the other can't make good.
func worse(a, b Way) bool {
	rank := func(w Way) int {
		return map[passage.Outcome]int{passage.Cannot: 2, passage.Undecided: 1}[w.Outcome]
	}
	if rank(a) != rank(b) {
		return rank(a) > rank(b)
	}
	return a.Margin < b.Margin
}
