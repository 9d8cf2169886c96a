package curve_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/curve"
)

// drawn is the figure of a strip in chords.
func drawn(t *testing.T, c curve.Curve, s0, s1, from, to float64, chords int) curve.Region {
	t.Helper()
	part := c.Between(s0, s1)
	inner, outer := must2(t)(part.Offset(from)).Polyline(chords), must2(t)(part.Offset(to)).Polyline(chords)
	slices.Reverse(outer)
	return append(inner, outer...)
}

// A strip has the area and the centre to which those of its drawing come, the finer the
// nearer: by the square of the chords.
func TestAStripIsWhatItsDrawingComesTo(t *testing.T) {
	for name, c := range map[string]curve.Curve{
		"flat":          must2(t)(curve.Flat(3)),
		"segmental":     must2(t)(curve.Segmental(4.2, 0.84)),
		"semicircular":  must2(t)(curve.Semicircular(5)),
		"three-centred": must2(t)(curve.ThreeCentredByHaunch(5, 1.6, 0.9)),
		"pointed":       must2(t)(curve.PointedByRise(3, 2)),
	} {
		for _, d := range [][2]float64{{0, 0.09}, {0.02, 0.03}, {-0.1, 0.2}} {
			for _, at := range [][2]float64{{0.02, 0.06}, {0.3, 0.31}, {0.6, 0.9}} {
				s0, s1 := at[0]*c.Length(), at[1]*c.Length()
				area, centre, ok := c.Strip(s0, s1, d[0], d[1])
				if name == "three-centred" && at[1] == 0.06 || name != "three-centred" {
					require.True(t, ok, "%s %v", name, at)
				}
				if !ok {
					continue
				}
				rough, _ := drawn(t, c, s0, s1, d[0], d[1], 50).Moments()
				fine, middle := drawn(t, c, s0, s1, d[0], d[1], 400).Moments()
				limit := fine + (fine-rough)/63 // the error falls with the square of the chords: 1 in 64
				assert.InEpsilon(t, limit, area, 1e-10, "%s %v %v", name, d, at)
				assert.InDelta(t, middle.Y, centre.Y, 2e-6*c.Length(), "%s %v %v", name, d, at)
				assert.InDelta(t, middle.Z, centre.Z, 2e-6*c.Length(), "%s %v %v", name, d, at)
			}
		}
	}
}

// What is not within one line or one arc, or ends at a joint, is left to a drawing, as is
// what is no figure.
func TestWhatNoStripIs(t *testing.T) {
	arcs, ellipse := must2(t)(curve.ThreeCentredByHaunch(5, 1.6, 0.9)), must2(t)(curve.Elliptical(4.2, 1.3))
	arch := must2(t)(curve.PointedByRise(3, 2))
	joint, apex := arcs.Corners()[1], arch.Corners()[1]
	for name, test := range map[string]struct {
		c              curve.Curve
		s0, s1, d0, d1 float64
	}{
		"over a joint":     {arcs, joint - 0.1, joint + 0.1, 0, 0.1},
		"to a joint":       {arcs, joint - 0.1, joint, 0, 0.1},
		"from a joint":     {arcs, joint, joint + 0.1, 0, 0.1},
		"to a crown":       {arch, apex - 0.1, apex, 0, 0.1},
		"from a crown":     {arch, apex, apex + 0.1, 0, 0.1},
		"of an ellipse":    {ellipse, 1, 1.1, 0, 0.1},
		"folded":           {must2(t)(curve.Semicircular(2)), 0.1, 0.2, -1.1, 0},
		"of no length":     {arcs, 0.1, 0.1, 0, 0.1},
		"of no depth":      {arcs, 0.1, 0.2, 0.1, 0.1},
		"past the end":     {arcs, arcs.Length() - 0.1, arcs.Length() + 0.1, 0, 0.1},
		"of no curve":      {curve.Curve{}, 0, 1, 0, 0.1},
		"before its start": {arcs, -0.1, 0.1, 0, 0.1},
	} {
		_, _, ok := test.c.Strip(test.s0, test.s1, test.d0, test.d1)
		assert.False(t, ok, name)
	}
	for _, c := range []curve.Curve{arcs, arch} {
		_, _, ok := c.Strip(0, 0.1, 0, 0.1)
		assert.True(t, ok, "an end of the curve is no joint")
		_, _, ok = c.Strip(c.Length()-0.1, c.Length(), 0, 0.1)
		assert.True(t, ok, "an end of the curve is no joint")
	}
}
