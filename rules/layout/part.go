package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
)

// Part is one piece of an arch of the heaviest kind, as it weighs on its two
// edge ribs.
type Part struct {
	From, To float64 // along the arc of the intrados
	Mass     float64
	Rails    []Piece // in their order along the arc; halves at its ends
}

// parts are the pieces of an arch from the left foot.
func (c *Ceiling) parts(arch []weighed) []Part {
	out := make([]Part, len(arch))
	for k, w := range arch {
		from, to := c.part(k)
		out[k] = Part{From: from, To: to, Mass: w.mass, Rails: w.rails}
	}
	return out
}

// holds reports whether a strap at a place along the arc belongs to the piece
// between two others: one on a seam to the piece after it.
func (c *Ceiling) holds(s0, s1, s float64) bool {
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
// of the ceiling square to the intrados at a station.
func (c *Ceiling) StrapAcross(station float64) float64 {
	intrados := c.Vault.Intrados.Get()
	s := station * c.Vault.Arc.Get()
	return intrados.At(s).Y + c.Vault.Thickness.Get()*curve.Normal(intrados.Tangent(s)).Y
}
