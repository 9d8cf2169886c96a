// Package opening decides whether a body goes through an opening in a wall, along a corridor,
// and into the room behind a door, and how. Lengths are in m and angles in rad.
package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// Door is an opening in an endless wall. The world's axes: X through the wall,
// which is 0 ≤ X ≤ Wall; the opening is 0 ≤ Y ≤ Width and 0 ≤ Z ≤ Height.
// Lengths in m.
type Door struct {
	Width, Height, Wall float64
	Floor               bool // Z = 0 is a floor that goes on before the wall and beyond it
}

// Through decides an opening, the margin of a motion in m. What is neither found
// nor proved is Undecided.
//
// The plain ways are tried first: straight, and along the body's own curve. Then
// come the proof by bars, straight ways at any turn, which are exact, and the cover
// of the part within the wall. Derived.
func Through(b *passage.Body, d Door, budget *passage.Budget) passage.Decision {
	ways := Straight(b, d.Width, d.Height)
	if m, ok := alongRing(b, d); ok {
		ways = append(ways, m)
	}
	plain := passage.Best(ways)
	if plain.Margin >= Facing {
		return passage.Passing(ways)
	}
	if Barred(b, d.Width, d.Height) {
		return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.BarInside}
	}
	if m, ok := Thread(b, d, budget); ok {
		ways = append(ways, m)
	}
	if plain = passage.Best(ways); plain.Margin >= 0 {
		return passage.Passing(ways)
	}
	w := turns.Within(b, [3]float64{math.Inf(1), d.Width, d.Height}, budget)
	if w.Margin >= 0 {
		m := passage.Motion{Way: passage.Free, Margin: w.Margin, Tilted: true, Depth: b.Width(w.Turn[0]) + 2*b.Wrap()}
		m.Follow = func() []space.Pose { return Push(b, w.Turn, d.Width, d.Height, 0, 0) }
		return passage.Decision{Outcome: passage.Passes, Motion: m}
	}
	proven, ranOut := tooWide(b, d, budget)
	if proven {
		return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.SectionCover}
	}
	return passage.Decision{Outcome: passage.Undecided, Motion: plain, RanOut: w.RanOut || ranOut}
}
