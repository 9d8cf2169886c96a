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
	ds := v.Arc.Get() / 2 / slopeSteps
	for _, s := range v.Slopes.Get() {
		sin, cos := math.Sincos(becomes(s.angle))
		by.Y -= (cos - s.cos) * ds / 2
		by.Z -= (sin - s.sin) * ds / 2
	}
	return by
}

// slopeSteps are those of the quadrature over half the arch.
const slopeSteps = 128

// Slope is that of the intrados at one place, in rad, with its sine and cosine.
type Slope struct{ angle, sin, cos float64 }

// HalfSlopes are those of the left half of the arch at the points of a two-point
// Gauss-Legendre quadrature in 128 steps.
func (v Vault) HalfSlopes() []Slope {
	const point = 0.28867513459481288 // 1/√12
	intrados, ds := v.Intrados.Get(), v.Arc.Get()/2/slopeSteps
	out := make([]Slope, 2*slopeSteps)
	for i := range out {
		at := float64(i/2) + 0.5 + point*float64(2*(i%2)-1)
		t := intrados.Tangent(at * ds)
		angle := math.Atan2(t.Z, t.Y)
		sin, cos := math.Sincos(angle)
		out[i] = Slope{angle, sin, cos}
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
