package carrying

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/layout"
)

// The ways on from a stair's landing, and what may be between two flights.
const (
	straightOn = "none"
	halfTurn   = "half"
	walled     = "wall"
)

// turns reports whether the way goes on from a landing by a known way.
func turns(l layout.Leg, way string) bool { return l.Turn.Given() && l.Turn.Get() == way }

// stair is the flight, seen square to its slope, and the turn on its landing.
// From the slope to the level of the landing the panel is not followed. A flight
// of which the number of steps is not given may be short, and a landing may not
// turn: then what does not pass needs that key.
func (p *panel) stair(l layout.Leg, left *passage.Budget) Way {
	head := passage.AcrossSlope(l.Headroom.Get(), l.Rise.Get(), l.Going.Get())
	up := p.flight(l, head, left)
	if turns(l, straightOn) {
		return up
	}
	turn := p.decided(landingWalls(l), left)
	switch {
	case !l.Turn.Given() && turn.Outcome != passage.Passes:
		turn.Needs = "turn"
	case turn.Bound == passage.HalfTurnCover && !l.Between.Given():
		turn.Needs = "between"
	}
	turn.Unfollowed = !p.rolls(l.Width.Get(), head, l.Landing.Length.Get(), l.Landing.Width.Get())
	up.Unfollowed = turn.Unfollowed
	if worse(turn, up) {
		up = turn
	}
	up.Depth, up.Side = 0, 0
	return up
}

// flight is the flight alone, its headroom square to its slope.
func (p *panel) flight(l layout.Leg, head float64, left *passage.Budget) Way {
	// The flight's soffit begins and ends H·sin α further up the slope than its floor.
	slope := math.Hypot(l.Rise.Get(), l.Going.Get())
	long := max(0, slope*given(l.Risers, 0)-l.Headroom.Get()*l.Rise.Get()/slope)
	flight := tube(l.Width.Get(), head, long, []any{"headroom"})
	flight.words = func(m passage.Motion) string { return "up the flight, " + openingWords(m) }
	up := p.decided(flight, left)
	if !l.Risers.Given() && up.Outcome != passage.Passes {
		up.Needs = "risers"
	}
	up.Unfollowed = !p.rolls(l.Width.Get(), head)
	return up
}

// landingWalls are those of a landing on which the way turns. The way on from the
// landing's side is as wide as the landing is long, on from the top step.
func landingWalls(l layout.Leg) walls {
	w := cornerWalls(l.Width, l.Landing.Length, l.Headroom, []any{"landing", "length"}, []any{"headroom"})
	w.words = func(m passage.Motion) string { return "turned on the landing, " + cornerWords(m) }
	w.decide = func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
		return quarterTurn(b, corner(s), left)
	}
	if turns(l, halfTurn) {
		w.dims = append(w.dims, dim{[]any{"landing", "width"}, "landing's width", l.Landing.Width.Get()})
		w.decide = func(b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
			return onLanding(l, b, s, left)
		}
	}
	return w
}

// corner is the one that a flight and the way on make.
func corner(s []float64) passage.Corner {
	return passage.Corner{Width: s[0], Onward: s[1], Height: s[2]}
}

// quarterTurn decides the corner on a landing. What reaches out over the flight has
// more than the headroom over it, so that only what no height lets around is ruled out.
func quarterTurn(b *passage.Body, c passage.Corner, left *passage.Budget) passage.Decision {
	d := b.Around(c, left)
	c.Height = math.Inf(1)
	if d.Outcome == passage.Cannot && b.Around(c, left).Outcome != passage.Cannot {
		d.Outcome, d.Bound = passage.Undecided, 0
	}
	return d
}

// onLanding decides a half turn: two corners, on a landing on which the panel that has
// come around the first one lies free of the flight. Around the end of a wall an arch
// may hook, so that no corner rules it out. Where nothing is between the flights, nothing
// does.
func onLanding(l layout.Leg, b *passage.Body, s []float64, left *passage.Budget) passage.Decision {
	if !l.Between.Given() || l.Between.Get() == walled {
		st := passage.Stair{Width: s[0], Length: s[1], Headroom: s[2], Across: s[3], Rise: l.Rise.Get(), Going: l.Going.Get()}
		if d := b.HalfTurn(st, left); d.Outcome == passage.Cannot {
			d.Motion = b.Around(corner(s), nil).Motion
			return d
		}
	}
	d := b.Around(corner(s), left)
	if d.Outcome == passage.Cannot {
		d.Outcome, d.Bound = passage.Undecided, 0
	}
	if spare := (s[3]-b.Longest())/2 - b.Wrap(); d.Outcome == passage.Passes && spare < 0 {
		d.Outcome, d.Motion.Margin = passage.Undecided, spare
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
