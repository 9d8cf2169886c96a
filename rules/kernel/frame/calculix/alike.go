package calculix

import (
	"math"
	"testing"
)

// Alike holds each of our figures to theirs: to 0.5% of the largest, ours or theirs,
// whichever is less.
func Alike(t testing.TB, what string, ours, theirs []float64) {
	t.Helper()
	if len(ours) != len(theirs) {
		t.Fatalf("%s: %d figures here, %d there", what, len(ours), len(theirs))
	}
	here, there, worst, at := 0.0, 0.0, 0.0, 0
	for i := range ours {
		here, there = max(here, math.Abs(ours[i])), max(there, math.Abs(theirs[i]))
		if off := math.Abs(ours[i] - theirs[i]); off > worst || math.IsNaN(off) {
			worst, at = off, i
		}
	}
	largest := min(here, there)
	t.Logf("%s: off by %.3f%% of the largest, %.4g", what, 100*worst/largest, largest)
	if !(worst <= 0.005*largest) {
		t.Errorf("%s %d: %v here, %v there", what, at, ours[at], theirs[at])
	}
}
