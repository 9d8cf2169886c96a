package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
)

// Part is one piece of an arch of the heaviest kind, as it weighs on its two
// edge ribs: twice what the one bears that its fittings load more.
type Part struct {
	From, To float64 // along the arc of the intrados
	Mass     float64
	Pieces   []Piece // all of them, those that are alike once
	Points   []Piece // what weighs at one place along the arc: rails, halves at its ends, fittings
}

// parts are the pieces of an arch from the left foot.
func (c *Ceiling) parts(arch []weighed) []Part {
	out := make([]Part, len(arch))
	for k, w := range arch {
		from, to := c.part(k)
		out[k] = Part{From: from, To: to, Mass: w.mass + w.uneven, Pieces: w.pieces, Points: w.points}
	}
	return out
}

// Along is the length of a parallel of the intrados between two places along the
// arc, as the feet are cut.
func (v Vault) Along(s0, s1, d float64) float64 {
	parallel, err := v.Intrados.Get().Between(s0, s1).Offset(d)
	if err != nil {
		panic(err) // outward never folds
	}
	switch v.Cut.Get() {
	case "plumb":
		return parallel.AtY(v.Span.Get()) - parallel.AtY(0)
	case "level":
		length := parallel.Length()
		if s0 <= 0 {
			length += v.run(d)
		}
		if s1 >= v.Arc.Get() {
			length += v.run(d)
		}
		return length
	default:
		return parallel.Length()
	}
}

// Parallel is the parallel of the intrados at a depth between two places along the
// arc, as the feet are cut: at a level foot it runs on along its own arc until it
// has come down to the springing.
func (v Vault) Parallel(s0, s1, d float64) curve.Curve {
	p, err := v.Intrados.Get().Between(s0, s1).Offset(d)
	if err != nil {
		panic(err) // outward never folds
	}
	switch v.Cut.Get() {
	case "plumb":
		return p.Between(p.AtY(0), p.AtY(v.Span.Get()))
	case "level":
		left, right, past := 0.0, 0.0, v.past(d)
		if s0 <= 0 {
			left = past
		}
		if s1 >= v.Arc.Get() {
			right = past
		}
		return p.Extended(left, right)
	default:
		return p
	}
}

// past is how far along its own arc a parallel runs on past the springing to a
// level foot: the arc's slope there is φ, and where it has come down its cosine is
// R·cos φ/(R + d).
func (v Vault) past(d float64) float64 {
	slope, radius := v.HalfAngle.Get(), inverse(v.Intrados.Get().Curvature(0))
	return (radius + d) * (math.Acos(radius*math.Cos(slope)/(radius+d)) - slope)
}

// Piece is where along the arc the k-th piece of an arch begins and ends, counted
// from 0 at the left.
func (c *Ceiling) Piece(k int) (s0, s1 float64) { return c.part(k) }

// run is how far a parallel runs on straight past the springing to a level foot:
// its end stands d·cos above it, and comes down over d·cot.
func (v Vault) run(d float64) float64 { return runOn(d, v.HalfAngle.Get()) }

func runOn(d, halfAngle float64) float64 { return d / math.Tan(halfAngle) }

// Holds reports whether a strap at a place along the arc belongs to the piece
// between two others: one on a seam to the piece after it.
func (c *Ceiling) Holds(s0, s1, s float64) bool {
	return s >= s0 && (s < s1 || s1 == c.Vault.Arc.Get())
}

// NearestSeam is the seam within the arch that is nearest to a place along it,
// counted from 1, and how far it is; none of a whole arch.
func (c *Ceiling) NearestSeam(s float64) (k int, off float64) {
	off = math.Inf(1)
	for i := range c.Panel.Around.Get() - 1 {
		_, end := c.part(i)
		if d := math.Abs(s - end); d < off {
			k, off = i+1, d
		}
	}
	return k, off
}

// onSeam is how near the seam, in m, what has no width lies on it: round-off.
const onSeam = 1e-6

// OnSeam reports whether a strap, or a lift for which one stands, lies over a
// seam that is so far from its middle.
func (c *Ceiling) OnSeam(off float64) bool {
	return off < onSeam || c.Strap.Width.Given() && off < c.Strap.Width.Get()/2
}

// StrapAcross is the line of a strap across the span, where it leaves the back
// of the ceiling square to the intrados at a station, or on the mitre of a
// pointed crown.
func (c *Ceiling) StrapAcross(station float64) float64 {
	return c.Vault.Behind(station*c.Vault.Arc.Get(), c.Vault.Thickness.Get()).Y
}

// present drops the pieces that there are none of, and those of which a cut leaves
// only round-off.
func present(pieces ...Piece) []Piece {
	var out []Piece
	for _, p := range pieces {
		if p.Count > 0 && p.Volume > quantity.RoundOff*p.Length*p.Width*p.Depth {
			out = append(out, p)
		}
	}
	return out
}
