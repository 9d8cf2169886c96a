package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec/quantity"
)

// By hand: 1131.58mm is nearer to 1132mm, and 44.550in are 44 9/16in (712.8
// sixteenths, so 713) less an eightieth; a half goes up, round-off or not.
func TestCut(t *testing.T) {
	assert.InDelta(t, 1.132, quantity.Metric.Cut(1.13158), 1e-12)
	assert.InDelta(t, 0.0254*713/16, quantity.Imperial.Cut(1.13158), 1e-12)
	assert.InDelta(t, 0.645, quantity.Metric.Cut(0.6445-1e-16), 1e-12)
	assert.InDelta(t, 0, quantity.Metric.Cut(0.0004), 1e-12)
	assert.Equal(t, "1mm", quantity.Metric.CutStep())
	assert.Equal(t, `1/16"`, quantity.Imperial.CutStep())
}
