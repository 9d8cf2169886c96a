package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Door is an opening in an endless wall. The world's axes: X through the wall,
// which is 0 ≤ X ≤ Wall; the opening is 0 ≤ Y ≤ Width and 0 ≤ Z ≤ Height.
// Lengths in m.
type Door struct {
	Width, Height, Wall float64
	Floor               bool // Z = 0 is a floor that goes on before the wall and beyond it
}

// Corridor is a straight space of a width and a height, in m. Length 0 is endless.
type Corridor struct{ Width, Height, Length float64 }

// Through decides an opening, the margin of a motion in m. What is neither found
// nor proved is Undecided.
//
// The plain ways are tried first: straight, and along the body's own curve. Then
// come the proof by bars, straight ways at any turn, which are exact, and the cover
// of the part within the wall. Derived.
func (b *Body) Through(d Door, budget *Budget) Decision {
	ways := b.straight(d.Width, d.Height)
	if m, ok := b.alongRing(d); ok {
		ways = append(ways, m)
	}
	plain := best(ways)
	if plain.Margin >= facing {
		return passing(ways)
	}
	if b.Barred(d.Width, d.Height) {
		return Decision{Outcome: Cannot, Motion: plain, Bound: BarInside}
	}
	if m, ok := b.Thread(d, budget); ok {
		ways = append(ways, m)
	}
	if plain = best(ways); plain.Margin >= 0 {
		return passing(ways)
	}
	w := b.within([3]float64{math.Inf(1), d.Width, d.Height}, budget)
	if w.margin >= 0 {
		m := Motion{Way: Free, Margin: w.margin, Tilted: true, Depth: b.Width(w.turn[0]) + 2*b.wrap}
		m.Follow = func() []space.Pose { return b.push(w.turn, d.Width, d.Height, 0, 0) }
		return Decision{Outcome: Passes, Motion: m}
	}
	proven, ranOut := b.tooWide(d, budget)
	if proven {
		return Decision{Outcome: Cannot, Motion: plain, Bound: SectionCover}
	}
	return Decision{Outcome: Undecided, Motion: plain, RanOut: w.ranOut || ranOut}
}

// passing is the decision by plain ways of which one passes at least.
func passing(ways []Motion) Decision {
	at := bestOf(ways)
	d := Decision{Outcome: Passes, Motion: ways[at]}
	for i, m := range ways {
		if m.Margin >= 0 && i != at {
			d.Others = append(d.Others, m)
		}
	}
	return d
}
