package curve_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/curve"
)

// ends are where a curve begins and ends, and which way.
func ends(c curve.Curve) (from, to, first, last curve.Point) {
	return c.At(0), c.At(c.Length()), c.Tangent(0), c.Tangent(math.Nextafter(c.Length(), 0))
}

// A semicircle of radius 1 with every curvature times 1/(1 − 1/4): radius 3/4, the
// length of π kept.
func TestRecurvedCircle(t *testing.T) {
	c := must2(t)(curve.Semicircular(2)).Recurved(1 / (1 - 1.0/4))
	assert.InDelta(t, 0.75, c.TightestRadius(), 1e-12)
	assert.InDelta(t, math.Pi, c.Length(), 1e-12)
	from, to, _, _ := ends(c)
	assert.InDelta(t, 2*0.75*math.Abs(math.Sin(math.Pi/1.5)), math.Hypot(to.Y-from.Y, to.Z-from.Z), 1e-12)
}

// A factor of one gives any curve again.
func TestRecurvedByOne(t *testing.T) {
	for name, c := range map[string]curve.Curve{
		"flat":          must2(t)(curve.Flat(4)),
		"three-centred": must2(t)(curve.ThreeCentredByHaunch(4, 1.2, 0.8)),
		"elliptical":    must2(t)(curve.Elliptical(4, 1.2)),
	} {
		r := c.Recurved(1)
		assert.InDelta(t, c.Length(), r.Length(), 1e-9, name)
		for i := range 11 {
			s := c.Length() * float64(i) / 10
			p, q := c.At(s), r.At(s)
			assert.InDelta(t, 0, math.Hypot(p.Y-q.Y, p.Z-q.Z), 2e-5, name)
		}
	}
}

// The arcs of an ellipse lie on it: every point of the ellipse and of a parallel is
// as far from the centre of its arc as the ends are.
func TestArcsFollowAnEllipse(t *testing.T) {
	const within = 1e-5
	for _, d := range []float64{0, 0.06} {
		c, err := must2(t)(curve.Elliptical(4, 1.2)).Offset(d)
		assert.NoError(t, err)
		arcs := c.Arcs(within)
		assert.Less(t, len(arcs), 80)
		sum := 0.0
		for i, a := range arcs {
			if i > 0 {
				assert.InDelta(t, 0, math.Hypot(a.From.Y-arcs[i-1].To.Y, a.From.Z-arcs[i-1].To.Z), 1e-12)
			}
			sum += math.Hypot(a.To.Y-a.From.Y, a.To.Z-a.From.Z) / 2 / math.Sin(a.Turn/2) * a.Turn
		}
		assert.InDelta(t, c.Length(), sum, 1e-4)
	}
}

// Past its ends a semicircle runs on in its circle, and an ellipse of 2 by 1 in the
// circle of its ends' radius, 1²/2.
func TestExtended(t *testing.T) {
	c := must2(t)(curve.Semicircular(2)).Extended(math.Pi/2, math.Pi/2)
	from, to, _, _ := ends(c)
	assert.InDelta(t, 0, math.Hypot(from.Y-1, from.Z+1), 1e-12)
	assert.InDelta(t, 0, math.Hypot(to.Y-1, to.Z+1), 1e-12)
	e := must2(t)(curve.Elliptical(4, 1)).Extended(math.Pi/4, math.Pi/4)
	from, to, _, _ = ends(e)
	assert.InDelta(t, 0, math.Hypot(from.Y-0.5, from.Z+0.5), 1e-9)
	assert.InDelta(t, 0, math.Hypot(to.Y-3.5, to.Z+0.5), 1e-9)
}
