package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/timber"
)

// Strength left by plain scarfs, Wood Handbook, from memory: 0.80 at 1:8, 0.85 at 1:10,
// 0.90 at 1:12. Between rows the steeper one holds.
func TestScarfFactor(t *testing.T) {
	for slope, want := range map[float64]float64{8: 0.80, 9.9: 0.80, 10: 0.85, 12: 0.90, 16: 0.90} {
		got, err := timber.ScarfFactor(slope)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 1e-12, slope)
	}
	_, err := timber.ScarfFactor(6)
	var r *timber.RangeError
	assert.ErrorAs(t, err, &r)
}
