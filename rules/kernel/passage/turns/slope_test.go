package turns

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

func randomSlope(r *rand.Rand) Slope {
	low := r.NormFloat64()
	out := Slope{Low: low, High: low + r.Float64()}
	for i := range out.By {
		out.By[i] = r.NormFloat64()
	}
	return out
}

// Sums and differences of bounds hold what is within them at the same shares, and
// touch it at their ends: by interval arithmetic.
func TestSlopesHoldTheirSums(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 0))
	for range 2000 {
		a, b := randomSlope(r), randomSlope(r)
		n, m := r.NormFloat64(), r.NormFloat64()
		var s Shares
		for i := range s {
			s[i] = 2*r.Float64() - 1
		}
		less, plus := a.Less(&b), a.Plus(n, &b, m)
		lowLess, highLess, lowPlus, highPlus := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
		for _, x := range []float64{a.Low, a.High} {
			for _, y := range []float64{b.Low, b.High} {
				x, y := x+a.By.Dot(&s), y+b.By.Dot(&s)
				lowLess, highLess = min(lowLess, x-y), max(highLess, x-y)
				lowPlus, highPlus = min(lowPlus, n*x+m*y), max(highPlus, n*x+m*y)
			}
		}
		assert.InDelta(t, lowLess, less.Low+less.By.Dot(&s), 1e-12)
		assert.InDelta(t, highLess, less.High+less.By.Dot(&s), 1e-12)
		assert.InDelta(t, lowPlus, plus.Low+plus.By.Dot(&s), 1e-12)
		assert.InDelta(t, highPlus, plus.High+plus.By.Dot(&s), 1e-12)
	}
}
