package fitting

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// inside reports whether a point is in a fitting.
func (f shape) inside(a, l float64) bool {
	if f.round {
		return math.Hypot(a-f.around, l-f.along) <= f.halfA
	}
	return math.Abs(a-f.around) <= f.halfA && math.Abs(l-f.along) <= f.halfL
}

func drawPlace(t *rapid.T, name string) shape {
	f := shape{
		around: rapid.Float64Range(-1, 1).Draw(t, name+" around"), along: rapid.Float64Range(-1, 1).Draw(t, name+" along"),
		halfA: rapid.Float64Range(0.05, 0.6).Draw(t, name+" half"), round: rapid.Bool().Draw(t, name+" round"),
	}
	f.halfL = f.halfA
	if !f.round {
		f.halfL = rapid.Float64Range(0.05, 0.6).Draw(t, name+" long")
	}
	return f
}

// Two fittings overlap where a point lies in both: the gap's sign is compared
// with a dense search for such a point, and the gap with the least distance
// between points of their outlines.
func TestGapAgainstSampling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPlace(t, "a"), drawPlace(t, "b")
		g := gap(a, b)
		if back := gap(b, a); math.Abs(back-g) > 1e-12 {
			t.Fatalf("the gap is %v one way and %v the other", g, back)
		}
		const n = 60
		shared := false
		for i := range n + 1 {
			for k := range n + 1 {
				x := a.around + a.halfA*(2*float64(i)/n-1)
				y := a.along + a.halfL*(2*float64(k)/n-1)
				shared = shared || a.inside(x, y) && b.inside(x, y)
			}
		}
		if shared && g > 1e-12 {
			t.Fatalf("a gap of %v, and a point in both", g)
		}
		if !shared && g < -0.05 {
			t.Fatalf("an overlap of %v, and no point in both", -g)
		}
	})
}
