package passage

// Stair is a flight that comes up to a landing, on which the way turns back beside
// it. The world's axes: X across, Y on from the top step, Z up from the landing,
// which is 0 ≤ X ≤ Across and 0 ≤ Y ≤ Length. The flight comes up along Y in 0 ≤ X ≤
// Width, and the way goes on against Y in Across - Width ≤ X ≤ Across, up or level;
// all between them is wall. The headroom is upright, over the line of the nosings and
// over the landing. Lengths in m.
type Stair struct {
	Width, Headroom, Rise, Going float64
	Across, Length               float64
}

// slope is the rise of the line of the nosings over its run.
func (s Stair) slope() float64 { return s.Rise / s.Going }

// HalfTurn proves, if it can, that no motion takes the body around the end of the wall
// between two flights. It never proves that one does.
func (b *Body) HalfTurn(s Stair, budget *Budget) Decision {
	m := b.middle()
	if budget.spent() || len(m) == 0 || s.Across < 2*s.Width {
		return Decision{Outcome: Undecided, RanOut: budget.spent()}
	}
	proven, ranOut := b.halfCover(s, m[len(m)/2].at).all(budget)
	if proven {
		return Decision{Outcome: Cannot, Bound: HalfTurnCover}
	}
	return Decision{Outcome: Undecided, RanOut: ranOut}
}
