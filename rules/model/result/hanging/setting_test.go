package hanging_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
	"dryfit/spec/quantity"
)

// A millimetre or two of setting is in proportion on taut straps. A setting that
// lets straps go slack is not: the rate near zero stays, the solved change no
// longer follows it.
func TestSettingIsGivenNearNoughtAndAsSolved(t *testing.T) {
	little := solve(t, sample.Room(t, map[string]any{"strap.setting": "0.1mm"}))
	great := solve(t, sample.Room(t, map[string]any{"strap.setting": "20mm"}))
	for i := range little.Changes {
		assert.InEpsilon(t, little.Changes[i].Rate*0.0001, little.Changes[i].Most, 1e-6, "strap %d", i+1)
		assert.InEpsilon(t, little.Changes[i].Rate, great.Changes[i].Rate, 1e-6, "strap %d", i+1)
		assert.Less(t, great.Changes[i].Most, 0.8*great.Changes[i].Rate*0.02, "strap %d", i+1)
		longer, shorter := great.Set[2*i].Straps[i], great.Set[2*i+1].Straps[i]
		assert.InDelta(t, math.Max(great.First.Straps[i]-longer, shorter-great.First.Straps[i]), great.Changes[i].Most, 1e-9)
	}
}

// The rate prints by the unit of length: no force for each mm where lengths are
// in inches.
func TestRatesOfSettingPrintByTheUnitOfLength(t *testing.T) {
	for units, want := range map[string]string{"metric": `^[0-9.]+N/mm$`, "imperial": `^[0-9.]+lbf/in$`} {
		c := sample.Room(t, map[string]any{"project.units": units})
		found := false
		for _, f := range hanging.Of(c, nil).Figures(c) {
			if f.Key == "hanging.setting-rate.2" {
				found = true
				assert.Regexp(t, want, c.Units.Format(f.Value))
			}
			if units == "imperial" {
				assert.NotContains(t, f.Name, "mm", f.Key)
			}
		}
		assert.True(t, found)
	}
	assert.Equal(t, "312lbf/in", quantity.Imperial.Format(quantity.Value{SI: 312 * 4.4482216152605 / 0.0254, Unit: quantity.NewtonPerMetre}))
}

// The greatest sag and the greatest by its run lie on two runs: between the
// straps at 2% and 58%, and on twice the overhang past 77%.
func TestTheGreatestSagAndTheGreatestByItsRun(t *testing.T) {
	c := sample.Room(t, map[string]any{"strap.stations": []any{"2%", "58%", "77%"}})
	first, arc := solve(t, c).First, c.Vault.Arc.Get()
	assert.InEpsilon(t, 0.56*arc, first.Sag.Run, 1e-9)
	assert.InEpsilon(t, 2*0.23*arc, first.ByRun.Run, 1e-9)
	assert.Greater(t, first.Sag.Drop, 1.1*first.ByRun.Drop)
	assert.Greater(t, first.ByRun.Drop/first.ByRun.Run, first.Sag.Drop/first.Sag.Run)
	printed := map[string]float64{}
	for _, f := range hanging.Of(c, nil).Figures(c) {
		printed[f.Key] = f.Value.SI
	}
	assert.Equal(t, first.Sag, hanging.Sag{Drop: printed["hanging.first-hung.sag"], Run: printed["hanging.first-hung.sag-run"]})
	assert.Equal(t, first.ByRun, hanging.Sag{Drop: printed["hanging.first-hung.sag-by-run"], Run: printed["hanging.first-hung.sag-by-run-run"]})
}
