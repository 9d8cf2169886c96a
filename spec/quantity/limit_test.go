package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec/quantity"
)

func TestALimitPrintsAsItIsSet(t *testing.T) {
	for _, c := range []struct {
		set              quantity.Value
		metric, imperial string
	}{
		{quantity.Length(0.00125).Value(), "1.25mm", `3/64"`},
		{quantity.Length(0.05 * inch).Value(), "1.27mm", `0.05"`},
		{quantity.Length(inch / 32).Value(), "0.79375mm", `1/32"`},
		{quantity.Length(inch / 16).Value(), "1.5875mm", `1/16"`},
		{quantity.Length(0.005).Value(), "5mm", `13/64"`},
		{quantity.Length(0.02).Value(), "20mm", `25/32"`},
		{quantity.Length(7.5 * 12 * inch).Value(), "2286mm", `7'-6"`},
		{quantity.Value{SI: 0.0025, Unit: quantity.Fraction}, "0.25%", "0.25%"},
		{quantity.Value{SI: 1.0 / 3, Unit: quantity.Fraction}, "33.3%", "33.3%"},
		{quantity.Force(160).Value(), "0.16kN", "36lbf"},
	} {
		assert.Equal(t, c.metric, quantity.Metric.Limit(c.set))
		assert.Equal(t, c.imperial, quantity.Imperial.Limit(c.set))
	}
}

func TestAgainstALimit(t *testing.T) {
	length := func(mm float64) quantity.Value { return quantity.Length(mm / 1000).Value() }
	for _, c := range []struct {
		measured, limit quantity.Value
		m, l            string
	}{
		{length(1.4), length(1.27), "1.4mm", "1.27mm"},
		{length(1.28), length(1.27), "1.28mm", "1.27mm"},
		{length(1.2704), length(1.27), "1.2704mm", "1.27mm"},
		{quantity.Force(177).Value(), quantity.Force(90).Value(), "177N", "90N"},
	} {
		m, l := quantity.Metric.Against(c.measured, c.limit)
		assert.Equal(t, c.m, m)
		assert.Equal(t, c.l, l)
	}
	m, l := quantity.Imperial.Against(quantity.Length(inch/16).Value(), quantity.Length(inch/32).Value())
	assert.Equal(t, [2]string{`1/16"`, `1/32"`}, [2]string{m, l})
}

// A short length beside a long limit is not nothing.
func TestAShortLengthAgainstALimit(t *testing.T) {
	m, _ := quantity.Imperial.Against(quantity.Length(0.0003).Value(), quantity.Length(0.01).Value())
	assert.Equal(t, `1/64"`, m)
}
