package main

import (
	"encoding/json"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec/quantity"
)

// The figures that a page works by hand are the program's, as it prints them, and
// within half of the last digit that is shown.
func TestWorkedExample(t *testing.T) {
	page, err := os.ReadFile("../../docs/worked-example.md")
	require.NoError(t, err)
	out, _, _ := printed(t, "dryfit calcs --format json "+demo)
	var calcs struct {
		Figures []struct {
			Key     string  `json:"key"`
			Value   float64 `json:"value"`
			Unit    string  `json:"unit"`
			Printed string  `json:"printed"`
		} `json:"figures"`
	}
	require.NoError(t, json.Unmarshal([]byte(out), &calcs))
	worked := 0
	for _, row := range regexp.MustCompile("(?m)^\\| `([a-z0-9.-]+)` \\| (\\S+) \\| (\\S+) \\|$").FindAllStringSubmatch(string(page), -1) {
		key, hand, shown := row[1], row[2], row[3]
		for _, f := range calcs.Figures {
			if f.Key != key {
				continue
			}
			worked++
			assert.Equal(t, f.Printed, shown, key)
			by, digits := byHand(t, hand, f.Unit)
			assert.InDelta(t, f.Value, by, 0.51*digits, key)
		}
	}
	assert.Equal(t, 13, worked)
}

// byHand is a printed figure in SI, and its last digit.
func byHand(t *testing.T, text, unit string) (value, digit float64) {
	t.Helper()
	read := func(text string) float64 {
		if unit == "1" {
			var x float64
			require.NoError(t, json.Unmarshal([]byte(text), &x))
			return x
		}
		q, err := quantity.Parse(map[string]quantity.Unit{"m": quantity.Metre, "N": quantity.Newton}[unit], text)
		require.NoError(t, err, text)
		return q.SI
	}
	number := strings.TrimRight(text, "mkN")
	_, decimals, _ := strings.Cut(number, ".")
	return read(text), read("1"+strings.TrimPrefix(text, number)) * math.Pow10(-len(decimals))
}
