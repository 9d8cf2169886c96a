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

// Moved is how far a point of the left half of the arch, at arc length s, moves
// against the crown, in m, when the arch keeps its length and each slope, in rad,
// becomes another. The slopes are followed from the point to the crown: ∫(cos,
// sin)ds by two-point Gauss-Legendre quadrature in 128 steps. Derived.
func (v Vault) Moved(s float64, becomes func(slope float64) float64) curve.Point {
	// Two Gauss points in each step.
	const steps, point = 128, 0.28867513459481288 // 1/√12
	var by curve.Point
	intrados := v.Intrados.Get()
	ds := (v.Arc.Get()/2 - s) / steps
	for i := range 2 * steps {
		at := float64(i/2) + 0.5 + point*float64(2*(i%2)-1)
		t := intrados.Tangent(s + at*ds)
		before := math.Atan2(t.Z, t.Y)
		after := becomes(before)
		by.Y -= (math.Cos(after) - math.Cos(before)) * ds / 2
		by.Z -= (math.Sin(after) - math.Sin(before)) * ds / 2
	}
	return by
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
	foot := v.Moved(0, v.Recurved(-e))
	return -2 * foot.Y / foot.Z
}

// RiseBy is how much the rise grows, in m, when every curvature is multiplied by 1
// + e, e above −1, and the arch keeps its length. Derived; see [Vault.Moved].
func (c *Ceiling) RiseBy(e float64) float64 { return -c.Vault.Moved(0, c.Vault.Recurved(e)).Z }
