package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/spec/quantity"
)

func TestRunning(t *testing.T) {
	printed, steps := quantity.Metric.Running(0.1, 0.20004, 0.30008, 4.614)
	assert.Equal(t, []string{"100.0mm", "200.0mm", "300.1mm", "4614.0mm"}, printed)
	assert.Equal(t, []string{"100mm", "100mm", "100.1mm", "4313.9mm"}, steps)
	printed, steps = quantity.Imperial.Running(0.0254/3, 0.0254*2/3, 0.0254*13)
	assert.Equal(t, []string{`21/64"`, `43/64"`, `1'-1"`}, printed)
	assert.Equal(t, []string{`21/64"`, `11/32"`, `1'-0 21/64"`}, steps)
}

// Steps add up to the last place, as both are printed.
func TestRunningStepsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.Imperial}).Draw(t, "system")
		var places []float64
		at := 0.0
		for range rapid.IntRange(1, 8).Draw(t, "n") {
			at += rapid.Float64Range(0, 2).Draw(t, "step")
			places = append(places, at)
		}
		printed, steps := system.Running(places...)
		sum := 0.0
		for _, s := range steps {
			sum += readBack(t, s)
		}
		assert.InDelta(t, readBack(t, printed[len(printed)-1]), sum, 1e-9)
	})
}
