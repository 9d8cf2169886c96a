package curve_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/curve"
)

// The crown of a pointed arch, worked by hand from its two centres: arcs of
// radius R + d about centres that lie c to each side of the axis, on the
// springing line, cross at a height of √((R + d)² − c²). A span of 4 and a radius
// of 2.5 give c = 0.5: at d = 0, √6 = 2.449490; at d = 0.1, √6.51 = 2.551470,
// where the radius square to either arc ends at √6·2.6/2.5 = 2.547469.
func TestCrownOfAPointedArch(t *testing.T) {
	c := must2(t)(curve.PointedByRadius(4, 2.5))
	middle := c.Length() / 2
	assert.InDelta(t, math.Asin(0.5/2.5), c.Kink(middle), 1e-12)
	assert.Zero(t, c.Kink(middle/2))
	for d, want := range map[float64]float64{0: math.Sqrt(6), 0.1: 2.551470, -0.1: math.Sqrt(2.4*2.4 - 0.25)} {
		crown, err := c.Beside(middle, d)
		require.NoError(t, err)
		assert.InDelta(t, 2, crown.Y, 1e-12, "on the axis")
		assert.InDelta(t, want, crown.Z, 1e-6)
		o := must2(t)(c.Offset(d))
		assert.InDelta(t, crown.Z, o.At(o.Length()/2).Z, 1e-12)
		assert.InDelta(t, 2*(2.5+d)*math.Acos(0.5/(2.5+d)), o.Length(), 1e-9, "both arcs from the springing to the axis")
		for _, half := range []curve.Curve{c.Between(0, middle), c.Between(middle, 2*middle)} {
			h := must2(t)(half.Offset(d))
			assert.InDelta(t, o.Length()/2, h.Length(), 1e-9, "cut at the crown")
			again := must2(t)(h.Offset(0.2))
			assert.InDelta(t, (2.7+d)*math.Acos(0.5/(2.7+d)), again.Length(), 1e-9, "a parallel of a parallel")
		}
	}
	beside, err := c.Beside(middle/2, 0.1)
	require.NoError(t, err)
	n, at := curve.Normal(c.Tangent(middle/2)), c.At(middle/2)
	assert.InDelta(t, 0, near(beside, curve.Point{Y: at.Y + 0.1*n.Y, Z: at.Z + 0.1*n.Z}), 1e-12)
}

// Inward of the line between the centres the arcs no longer meet.
func TestMitreFolds(t *testing.T) {
	c := must2(t)(curve.PointedByRadius(4, 4))
	var fold *curve.FoldError
	_, err := c.Offset(-2.1)
	assert.True(t, errors.As(err, &fold))
	_, err = c.Beside(c.Length()/2, -2.1)
	assert.True(t, errors.As(err, &fold))
}
