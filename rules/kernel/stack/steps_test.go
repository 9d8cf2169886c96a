package stack

import (
	"math"
	"testing"
)

// Within each step the truncated normal's distribution, (erf(3x/√2)/erf(3/√2) +
// 1)/2, is off the straight line by no more than is said of the steps.
func TestStepsFollowTheNormal(t *testing.T) {
	within := math.Erf(sigmas / math.Sqrt2)
	for i := range steps {
		for _, part := range []float64{0, 0.25, 0.5, 0.75, 1} {
			x := quantiles[i] + part*(quantiles[i+1]-quantiles[i])
			is := (math.Erf(sigmas*x/math.Sqrt2)/within + 1) / 2
			if off := math.Abs(is - (float64(i)+part)/steps); off > 1e-4 {
				t.Fatalf("step %d is off by %g", i, off)
			}
		}
	}
	if quantiles[0] != -1 || quantiles[steps/2] != 0 || quantiles[steps] != 1 {
		t.Fatal("the steps do not reach from −1 over 0 to +1")
	}
}
