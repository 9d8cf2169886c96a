package corner_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/outline"
)

// aroundLevel decides a corner with a plate of l by w that stands as high as the
// corridors, so that it can't be tilted.
func aroundLevel(l, w, a, b float64) passage.Decision {
	const high = 0.5
	return corner.Around(passage.NewBody(outline.Rectangle(l, w), high, 0), corner.Corner{Width: a, Onward: b, Height: high + 1e-7}, nil)
}

// The ladder, (a^⅔ + b^⅔)^(3/2): any calculus text; corridors of 3 and 4 give
// 9.87 on a published page. Rectangles: 12.8927 for corridors of 8 and 3 and a
// width of 1 at 31 degrees is on a demonstration page of Moretti's; for equal
// corridors 2(√2·a − w) follows, the others from the same formula.
func TestPublishedCorners(t *testing.T) {
	for _, r := range [][4]float64{ // a, b, w, longest
		{1, 1, 1e-7, 2.8284},
		{3, 4, 1e-7, 9.8657},
		{8, 27, 1e-7, 46.8722},
		{4, 8, 1e-7, 16.6478},
		{64, 27, 1e-7, 125},
		{36, 36, 1e-7, 101.8234},
		{44, 44, 1e-7, 124.4508},
		{1.2, 0.9, 1e-7, 2.9596988},
		{0.914, 1.118, 1e-7, 2.8688434},
		{36, 44, 1e-7, 112.9481},
		{1, 1, 0.5, 1.8284},
		{3, 8, 1, 12.8563},
		{36, 36, 6, 89.8234},
		{36, 36, 12, 77.8234},
		{1.118, 1.118, 0.3, 2.5621815},
		{1.5, 1.2, 0.4, 3.0074127},
		{36, 44, 8, 96.9039},
		{0.914, 0.914, 0.15, 2.2851824},
		{1.2, 0.9, 0.3, 2.3558961},
		{1.8, 0.914, 0.25, 3.2524146},
	} {
		assert.Equal(t, passage.Passes, aroundLevel(r[3]*(1-1e-4), r[2], r[0], r[1]).Outcome, r)
		assert.NotEqual(t, passage.Passes, aroundLevel(r[3]*(1+1e-4), r[2], r[0], r[1]).Outcome, r)
	}
	at := 31 * math.Pi / 180
	assert.InDelta(t, 12.8927, (8*math.Sin(at)+3*math.Cos(at)-1)/(math.Sin(at)*math.Cos(at)), 1e-4)
}

func BenchmarkAroundOnEdge(b *testing.B) {
	body := passage.NewBody(outline.Arc(3, 0.1, 0.7, 400), 1.2, 0.025)
	for b.Loop() {
		corner.Around(body, corner.Corner{Width: 1.2, Onward: 1.2, Height: 2.4}, nil)
	}
}
