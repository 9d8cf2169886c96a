package corner

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// Around decides a corner. The margin of a motion is in m, known to 0.05mm or at
// least 0.05m; without a budget to a millimetre only, and a motion that has less
// may not be found. Undecided says that the budget ran out.
//
// The plain ways are tried first, then the covers of all turns within either
// corridor, then that of all turns around the corner, which decide exactly but for
// the budget. Derived.
func Around(b *passage.Body, c Corner, budget *passage.Budget) passage.Decision {
	to := exact
	if budget == nil {
		to = rough
	}
	plain := levelAround(b, c, to)
	if plain.Margin >= 0 {
		return passage.Decision{Outcome: passage.Passes, Motion: plain}
	}
	inf := math.Inf(1)
	for _, width := range [2]float64{c.Width, c.Onward} {
		if w := turns.Within(b, [3]float64{inf, width, c.Height}, budget); w.Margin < 0 {
			if w.RanOut {
				return passage.Decision{Outcome: passage.Undecided, Motion: plain, RanOut: true}
			}
			return passage.Decision{Outcome: passage.Cannot, Motion: plain, Bound: passage.WholeBody}
		}
	}
	d := anyTurn(b, c, budget)
	if d.Outcome != passage.Passes {
		d.Motion = plain
	}
	return d
}

// Ample is a margin, in m, with which the search on edge ends: the true one may be
// larger.
const Ample = 0.05

// exactness says when a search for a margin ends: with one that is enough, or that is
// known within so much; in m.
type exactness struct{ enough, within float64 }

var (
	exact = exactness{Ample, passage.Settled}
	rough = exactness{math.Inf(1), 1e-3}
)

// levelAround is the best of the plain ways around a corner.
func levelAround(b *passage.Body, c Corner, to exactness) passage.Motion {
	n := 2 * b.Half()
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	ways := []passage.Motion{
		boxAround(b, c, passage.AsHung, z, y, b.Wide(), n, b.High()),
		boxAround(b, c, passage.OnFoot, y, z, b.High(), n, b.Wide()),
		boxAround(b, c, passage.OnEdge, x, y, b.Wide(), b.High(), n),
	}
	if b.Own().Angle != 0 {
		s, k := math.Sincos(b.Own().Angle)
		up := space.Vec{Y: s, Z: k}
		ways = append(ways, boxAround(b, c, passage.OnOwnChord, up, x.Cross(up), b.Own().Along, n, b.Own().Across))
	}
	upright := []space.Vec{x, x.Times(-1)}
	if b.Mirrored() {
		upright = upright[:1]
	}
	for _, u := range upright {
		ways = append(ways, around(b, c, passage.OnEdge, u, to, passage.Best(ways).Margin))
	}
	return passage.Best(ways)
}
