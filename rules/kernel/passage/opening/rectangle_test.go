package opening_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/passage/opening"
)

// The first row is Wetzel's own (Rectangles in Rectangles, 2000): 9 by 4 does
// not go into 8 by 6. The others follow from Carver's theorem, which gives the
// breadth b that is needed.
func TestRectangleInRectangle(t *testing.T) {
	for _, r := range []struct {
		p, q, a, b float64
		fits       bool
		needed     float64
	}{
		{9, 4, 8, 6, false, 9.7876},
		{10, 1, 9, 4, false, 6.1658},
		{13, 1, 12, 6, false, 6.8743},
		{2400, 100, 2100, 1100, false, 1336.845},
		{2250, 80, 2100, 1100, true, 958.822},
		{2050, 80, 2000, 1400, true, 611.526},
		{3000, 60, 2700, 1800, true, 1415.956},
		{2650, 150, 2400, 1400, true, 1397.168},
	} {
		assert.Equal(t, r.fits, opening.RectangleInRectangle(r.p, r.q, r.a, r.b).Margin >= 0, "%v", r)
		if r.needed <= r.a {
			assert.GreaterOrEqual(t, opening.RectangleInRectangle(r.p, r.q, r.a, r.needed*1.00001).Margin, 0.0)
			assert.Less(t, opening.RectangleInRectangle(r.p, r.q, r.a, r.needed*0.99999).Margin, 0.0)
		}
	}
}

// The margin agrees with a dense search over the angle.
func TestMarginAgainstSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) float64 { return rapid.Float64Range(0.05, 3).Draw(t, name) }
		p, q, a, b := draw("p"), draw("q"), draw("a"), draw("b")
		best := math.Inf(-1)
		const steps = 4000
		for i := range steps + 1 {
			s, c := math.Sincos(math.Pi * float64(i) / steps / 2)
			best = max(best, min(a-p*c-q*s, b-p*s-q*c)/2)
		}
		got := opening.RectangleInRectangle(p, q, a, b).Margin
		// The search is at most one step's turn of the diagonal behind.
		if slack := 3 * math.Hypot(p, q) * math.Pi / steps; got < best-1e-9 || got > best+slack {
			t.Fatalf("margin %v, searched %v", got, best)
		}
	})
}

// At its angle and margin the piece lies inside the opening.
func TestAngleIsThatOfTheFit(t *testing.T) {
	f := opening.RectangleInRectangle(2250, 80, 2100, 1100)
	s, c := math.Sincos(f.Angle)
	assert.LessOrEqual(t, 2250*c+80*s, 2100-2*f.Margin+1e-6)
	assert.LessOrEqual(t, 2250*s+80*c, 1100-2*f.Margin+1e-6)
}

func BenchmarkRectangleInRectangle(b *testing.B) {
	for b.Loop() {
		opening.RectangleInRectangle(2250, 80, 2100, 1100)
	}
}
