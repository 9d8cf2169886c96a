package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Around decides a corner. The margin of a motion is in m, known to 0.05mm or at
// least 0.05m; without a budget to a millimetre only, and a motion that has less
// may not be found. Undecided says that the budget ran out.
//
// The plain ways are tried first, then the covers of all turns within either
// corridor, then that of all turns around the corner, which decide exactly but for
// the budget. Derived.
func (b *Body) Around(c Corner, budget *Budget) Decision {
	to := exact
	if budget == nil {
		to = rough
	}
	plain := b.levelAround(c, to)
	if plain.Margin >= 0 {
		return Decision{Outcome: Passes, Motion: plain}
	}
	inf := math.Inf(1)
	for _, width := range [2]float64{c.Width, c.Onward} {
		if w := b.within([3]float64{inf, width, c.Height}, budget); w.margin < 0 {
			if w.ranOut {
				return Decision{Outcome: Undecided, Motion: plain, RanOut: true}
			}
			return Decision{Outcome: Cannot, Motion: plain, Bound: WholeBody}
		}
	}
	d := b.anyTurn(c, budget)
	if d.Outcome != Passes {
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
	exact = exactness{Ample, Settled}
	rough = exactness{math.Inf(1), 1e-3}
)

// levelAround is the best of the plain ways around a corner.
func (b *Body) levelAround(c Corner, to exactness) Motion {
	n := 2 * b.half
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	ways := []Motion{
		b.boxAround(c, AsHung, z, y, b.wide, n, b.high),
		b.boxAround(c, OnFoot, y, z, b.high, n, b.wide),
		b.boxAround(c, OnEdge, x, y, b.wide, b.high, n),
	}
	if b.own.Angle != 0 {
		s, k := math.Sincos(b.own.Angle)
		up := space.Vec{Y: s, Z: k}
		ways = append(ways, b.boxAround(c, OnOwnChord, up, x.Cross(up), b.own.Along, n, b.own.Across))
	}
	upright := []space.Vec{x, x.Times(-1)}
	if b.mirrored {
		upright = upright[:1]
	}
	for _, u := range upright {
		ways = append(ways, b.around(c, OnEdge, u, to, best(ways).Margin))
	}
	return best(ways)
}
