package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/spec/quantity"
)

func TestChain(t *testing.T) {
	for _, c := range []struct {
		system quantity.System
		parts  []float64 // in mm
		whole  string
		each   []string
	}{
		{quantity.Metric, []float64{24.5, 7079.5, 40}, "7144mm", []string{"24.5mm", "7079.5mm", "40mm"}},
		{quantity.Metric, []float64{1000.4, 1000.4}, "2000.8mm", []string{"1000.4mm", "1000.4mm"}}, // 1000 and 1000 are not 2001
		{quantity.Metric, []float64{100.0 / 3, 100.0 / 3, 100.0 / 3}, "100mm", []string{"33.4mm", "33.3mm", "33.3mm"}},
		{quantity.Imperial, []float64{25.4 / 32, 25.4 / 32}, `1/16"`, []string{`1/32"`, `1/32"`}},
		{quantity.Imperial, []float64{25.4 * 1.5, 25.4 * 12}, `1'-1 1/2"`, []string{`1 1/2"`, `1'-0"`}},
	} {
		var parts []float64
		for _, mm := range c.parts {
			parts = append(parts, mm/1000)
		}
		whole, each := c.system.Chain(parts...)
		assert.Equal(t, c.whole, whole)
		assert.Equal(t, c.each, each)
	}
}

// What is printed adds up, and no part is moved by a whole step.
func TestWhatAChainPrintsAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SliceOfN(rapid.Float64Range(0, 9), 1, 8).Draw(t, "parts")
		for _, s := range []quantity.System{quantity.Metric, quantity.Imperial} {
			whole, each := s.Chain(parts...)
			sum, step := 0.0, 0.001
			if s == quantity.Imperial {
				step = inch / 16
			}
			for i, text := range each {
				m := readBack(t, text)
				sum += m
				if diff := m - parts[i]; diff > step || diff < -step {
					t.Fatalf("%v of %v prints as %s", parts[i], s, text)
				}
			}
			if diff := sum - readBack(t, whole); diff > 1e-9 || diff < -1e-9 {
				t.Fatalf("%v do not make up %s", each, whole)
			}
		}
	})
}

func readBack(t *rapid.T, text string) float64 {
	v, err := quantity.Parse(quantity.Metre, text)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return v.SI
}
