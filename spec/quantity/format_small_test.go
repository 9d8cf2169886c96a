package quantity_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/spec/quantity"
)

func TestAShortLengthIsNotNothing(t *testing.T) {
	for _, c := range []struct {
		m                float64
		metric, imperial string
	}{
		{0, "0mm", `0"`},
		{0.00006, "0.1mm", `0.002"`},
		{0.00004, "0.04mm", `0.002"`},
		{-0.00004, "-0.04mm", `-0.002"`},
		{0.000001, "0.001mm", `0.00004"`},
		{0.0002, "0.2mm", `1/64"`},
		{1e-9, "0mm", `0"`}, // round-off
		{-1e-12, "0mm", `0"`},
	} {
		v := quantity.Length(c.m).Value()
		assert.Equal(t, c.metric, quantity.Metric.Format(v), "%v", c.m)
		assert.Equal(t, c.imperial, quantity.Imperial.Format(v), "%v", c.m)
	}
}

func TestNoLengthThatIsThereFormatsAsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := math.Pow(10, rapid.Float64Range(-6, 3).Draw(t, "exponent"))
		for _, s := range []quantity.System{quantity.Metric, quantity.Imperial} {
			if text := s.Format(quantity.Length(m).Value()); strings.Trim(text, `0.-'"m `) == "" {
				t.Fatalf("%v m prints as %s", m, text)
			}
		}
	})
}
