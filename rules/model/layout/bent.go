package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
)

// Behind is the point at a depth behind the intrados that belongs to an arc
// length: square to the curve, and on the mitre of a pointed crown.
func (v Vault) Behind(s, depth float64) curve.Point {
	p, err := v.Intrados.Get().Beside(s, depth)
	if err != nil {
		panic(err) // outward never folds
	}
	return p
}

// Moved is how far a foot of the arch moves against the crown, in m, when the arch
// keeps its length and each slope, in rad, becomes another: ∫(cos, sin)ds over the
// left half, at the Slopes. Derived.
func (v Vault) Moved(becomes func(slope float64) float64) curve.Point {
	var by curve.Point
	for _, s := range v.Slopes.Get() {
		sin, cos := math.Sincos(becomes(s.angle))
		by.Y -= (cos - s.along.Tangent.Y) * s.along.Length
		by.Z -= (sin - s.along.Tangent.Z) * s.along.Length
	}
	return by
}

// Slope is that of the intrados, in rad, with the way along it that has it.
type Slope struct {
	angle float64
	along curve.Way
}

// HalfSlopes are those of the ways along the left half of the arch.
func (v Vault) HalfSlopes() []Slope {
	ways := v.Intrados.Get().Between(0, v.Arc.Get()/2).Ways()
	out := make([]Slope, len(ways))
	for i, w := range ways {
		out[i] = Slope{math.Atan2(w.Tangent.Z, w.Tangent.Y), w}
	}
	return out
}

// Recurved is what slopes become when every curvature is multiplied by 1 + e: a
// mitre at the crown is cut, not bent, and keeps its angle.
func (v Vault) Recurved(e float64) func(slope float64) float64 {
	kink := v.Kink.Get()
	return func(slope float64) float64 { return kink + (slope-kink)*(1+e) }
}

// spread works out Spread from a small change of all curvature.
func (v Vault) spread() float64 {
	const e = 1e-4
	if math.IsInf(v.TightestRadius.Get(), 1) {
		return 0
	}
	foot := v.Moved(v.Recurved(-e))
	return -2 * foot.Y / foot.Z
}

// RiseBy is how much the rise grows, in m, when every curvature is multiplied by 1
// + e, e above −1, and the arch keeps its length. Derived; see [Vault.Moved].
func (c *Ceiling) RiseBy(e float64) float64 { return -c.Vault.Moved(c.Vault.Recurved(e)).Z }
