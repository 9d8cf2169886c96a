package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// Along decides a corridor, the margin of a motion in m: exactly, but for the
// budget, if it is endless or twice as long as the body's diameter, since all of
// the body is then in it at some instant. A shorter one is an opening in a wall as
// thick as it is long. Derived.
func Along(b *passage.Body, c Corridor, budget *passage.Budget) passage.Decision {
	ways := Straight(b, c.Width, c.Height)
	plain := passage.Best(ways)
	if plain.Margin >= 0 {
		return passage.Passing(ways)
	}
	w := turns.Within(b, [3]float64{math.Inf(1), c.Width, c.Height}, budget)
	switch {
	case w.Margin >= 0:
		m := passage.Motion{Way: passage.Free, Margin: w.Margin, Tilted: true}
		m.Follow = func() []space.Pose { return Push(b, w.Turn, c.Width, c.Height, 0, 0) }
		return passage.Decision{Outcome: passage.Passes, Motion: m}
	case w.RanOut:
		return passage.Decision{Outcome: passage.Undecided, Motion: plain, RanOut: true}
	case c.Length == 0 || c.Length >= 2*b.Diameter():
		return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.WholeBody}
	default:
		return Through(b, Door{Width: c.Width, Height: c.Height, Wall: c.Length, Floor: true}, budget)
	}
}

// Corridor is a straight space of a width and a height, in m. Length 0 is endless.
type Corridor struct{ Width, Height, Length float64 }
