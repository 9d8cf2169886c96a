package curve_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"

	"dryfit/rules/kernel/curve"
)

// What is summed over the ways is the integral over the arc: of 1 the length, of the
// tangent the chord, and of another function what an outside library finds.
func TestWaysSumToTheIntegral(t *testing.T) {
	for name, c := range map[string]curve.Curve{
		"flat":           must2(t)(curve.Flat(3)),
		"segmental":      must2(t)(curve.Segmental(4.2, 0.84)),
		"semicircular":   must2(t)(curve.Semicircular(5)),
		"elliptical":     must2(t)(curve.Elliptical(4.2, 1.3)),
		"low elliptical": must2(t)(curve.Elliptical(6, 0.6)),
		"three-centred":  must2(t)(curve.ThreeCentredByHaunch(5, 1.6, 0.9)),
		"pointed":        must2(t)(curve.PointedByRise(3, 2)),
	} {
		var length, y, z, squares float64
		angle := func(p curve.Point) float64 { return math.Atan2(p.Z, p.Y) }
		for _, w := range c.Ways() {
			assert.InDelta(t, 1, math.Hypot(w.Tangent.Y, w.Tangent.Z), 1e-12, name)
			length, y, z = length+w.Length, y+w.Length*w.Tangent.Y, z+w.Length*w.Tangent.Z
			squares += w.Length * math.Sin(angle(w.Tangent)) * angle(w.Tangent)
		}
		from, to := c.At(0), c.At(c.Length())
		assert.InDelta(t, c.Length(), length, 1e-9, name)
		assert.InDelta(t, to.Y-from.Y, y, 1e-9, name)
		assert.InDelta(t, to.Z-from.Z, z, 1e-9, name)
		want := 0.0
		for i, corners := 1, c.Corners(); i < len(corners); i++ {
			f := func(s float64) float64 { a := angle(c.Tangent(s)); return math.Sin(a) * a }
			want += quad.Fixed(f, corners[i-1]*(1+1e-15), corners[i]*(1-1e-15), 400, nil, 0)
		}
		assert.InDelta(t, want, squares, 1e-9*c.Length(), name)
	}
}
