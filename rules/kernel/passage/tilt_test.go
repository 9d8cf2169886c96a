package passage_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
)

// A table worked from the closed form, which is derived.
func TestTilting(t *testing.T) {
	for _, r := range [][5]float64{{3000, 100, 3001, 3001.666, 36.8}, {3000, 200, 3005, 3006.659, 100.1}, {2400, 150, 2404, 2404.683, 92.7}, {144, 12, 144.25, 144.499, 3.5}} {
		tilt := passage.Between(r[0], r[1], r[2])
		assert.InDelta(t, r[3], tilt.Peak, 1e-3)
		assert.InDelta(t, r[4], tilt.Level, 0.06)
	}
	assert.True(t, math.IsInf(passage.Between(3000, 100, 3100).Level, 1))
}
