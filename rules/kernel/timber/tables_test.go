package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/timber"
)

// Every sheet's density as it stands, in pounds by cubic foot: by retail charts for
// plywood and MDF (45lb and 66.7lb for half an inch of 4 by 8 ft), by common practice
// for the rest.
func TestSheetDensities(t *testing.T) {
	const lbft3 = 0.45359237 / (0.3048 * 0.3048 * 0.3048)
	want := map[string]float64{
		"bendable plywood": 35, "softwood plywood": 33, "hardwood plywood": 45 / (32 * 0.5 / 12),
		"aircraft plywood": 45, "MDF": 50, "particleboard": 45,
	}
	assert.Len(t, want, len(timber.SheetNames()))
	for name, density := range want {
		assert.InEpsilon(t, density*lbft3, sheet(t, name).Density, 1e-9, name)
	}
}

// Rows of the handbook's tables of movement as they are printed (Wood Handbook, 2010,
// tables 13-5 and 4-3; some of them from memory): change by one percent of moisture,
// and shrinkage from green to ovendry in percent, radial and tangential.
func TestMovementTable(t *testing.T) {
	for _, r := range []struct {
		name                                 string
		radial, tangential, shrinkR, shrinkT float64
	}{
		{"Douglas-fir", 0.00165, 0.00267, 4.8, 7.6},
		{"white oak", 0.00180, 0.00365, 5.6, 10.5},
		{"red oak", 0.00158, 0.00369, 4.0, 8.6},
		{"black walnut", 0.00190, 0.00274, 5.5, 7.8},
		{"yellow-poplar", 0.00158, 0.00289, 4.6, 8.2},
		{"sugar maple", 0.00165, 0.00353, 4.8, 9.9},
		{"western redcedar", 0.00111, 0.00234, 2.4, 5.0},
		{"eastern white pine", 0.00071, 0.00212, 2.1, 6.1},
		{"black cherry", 0.00126, 0.00248, 3.7, 7.1},
	} {
		s, err := timber.Lookup(r.name)
		require.NoError(t, err)
		assert.InDelta(t, r.radial, s.RadialChange/100, 1e-12, r.name)
		assert.InDelta(t, r.tangential, s.TangentialChange/100, 1e-12, r.name)
		assert.InDelta(t, r.shrinkR, 100*s.RadialShrinkage, 1e-9, r.name)
		assert.InDelta(t, r.shrinkT, 100*s.TangentialShrinkage, 1e-9, r.name)
	}
}
