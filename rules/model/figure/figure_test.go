package figure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/figure"
	"dryfit/spec/quantity"
)

func TestWorked(t *testing.T) {
	f := figure.Figure{
		Symbol: "R", Value: quantity.Length(3.045).Value(), Formula: "(s^2 + 4*h^2) / (8*h)",
		Terms: []figure.Term{
			{Symbol: "s", Measure: figure.Measure{Value: quantity.Length(4.2).Value()}}, {Symbol: "h", Measure: figure.Measure{Value: quantity.Length(0.84).Value()}},
		},
	}
	arithmetic, result := f.Worked(quantity.Metric)
	assert.Equal(t, "(4200^2 + 4*840^2) / (8*840)", arithmetic)
	assert.Equal(t, "3045mm", result)
	arithmetic, result = f.Worked(quantity.Imperial)
	assert.Equal(t, "(165.354331^2 + 4*33.0708661^2) / (8*33.0708661)", arithmetic)
	assert.Equal(t, "119.882in", result)
}

func TestSymbolsAreWholeWords(t *testing.T) {
	f := figure.Figure{
		Value: quantity.Value{SI: 1, Unit: quantity.One}, Formula: "max(m_1, m) - ρ_r + max",
		Terms: []figure.Term{
			{Symbol: "m", Measure: figure.Measure{Value: quantity.Value{SI: 2, Unit: quantity.One}}},
			{Symbol: "m_1", Measure: figure.Measure{Value: quantity.Value{SI: -3, Unit: quantity.One}}},
			{Symbol: "ρ_r", Measure: figure.Measure{Value: quantity.Value{SI: 4, Unit: quantity.One}}},
		},
	}
	arithmetic, _ := f.Worked(quantity.Metric)
	assert.Equal(t, "max((-3), 2) - 4 + max", arithmetic)
}

func TestWhatHasNoFormulaIsNotWorked(t *testing.T) {
	arithmetic, result := figure.Figure{Value: quantity.Length(1).Value(), Method: "measured"}.Worked(quantity.Metric)
	assert.Empty(t, arithmetic+result)
}
