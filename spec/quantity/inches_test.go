package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec/quantity"
)

// Derived: inches are whole and a fraction in lowest terms, and from two feet on there are
// feet, without inches where these are none.
func TestInchTexts(t *testing.T) {
	for _, c := range []struct {
		n, parts     int
		inches, feet string
	}{
		{0, 64, "0in", "0in"},
		{2, 64, "1/32in", "1/32in"},
		{64, 64, "1in", "1in"},
		{17, 16, "1 1/16in", "1 1/16in"},
		{-12, 16, "-3/4in", "-3/4in"},
		{47, 2, "23 1/2in", "23 1/2in"},
		{24 * 32, 32, "24in", "2ft"},
		{24*32 + 8, 32, "24 1/4in", "2ft 1/4in"},
		{-101, 2, "-50 1/2in", "-4ft 2 1/2in"},
	} {
		assert.Equal(t, c.inches, quantity.InchText(c.n, c.parts), "%d/%d", c.n, c.parts)
		assert.Equal(t, c.feet, quantity.FeetText(c.n, c.parts), "%d/%d", c.n, c.parts)
	}
}

// What is written is read again as the same length.
func TestInchTextsAreReadAgain(t *testing.T) {
	for _, parts := range []int{4, 16, 32, 64} {
		for n := -5 * 12 * parts; n <= 5*12*parts; n++ {
			for _, text := range []string{quantity.InchText(n, parts), quantity.FeetText(n, parts)} {
				v, err := quantity.Parse(quantity.Metre, text)
				require.NoError(t, err, text)
				assert.InDelta(t, float64(n)/float64(parts)*quantity.Inch, v.SI, 1e-12, text)
			}
		}
	}
}
