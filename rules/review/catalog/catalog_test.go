package catalog_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

// A built-in limit lies in the range that a standards file may set it in, and the
// range leaves room on both sides but for shares of a whole.
func TestLimitsLieInTheirRange(t *testing.T) {
	for _, r := range catalog.Rules() {
		for _, l := range r.Limits {
			assert.GreaterOrEqual(t, l.Lowest, 0.0, r.Full(l.Key))
			if l.Value.Unit == quantity.Newton || l.Value.Unit == quantity.Kilogram || l.Value.Unit == quantity.Metre {
				assert.LessOrEqual(t, l.Lowest, 1.0, "%s may be set small", r.Full(l.Key))
			}
			if v := l.Value.SI; !math.IsNaN(v) {
				assert.True(t, l.Lowest <= v && v <= l.Most, "%s: %v is not from %v to %v", r.Full(l.Key), v, l.Lowest, l.Most)
			}
		}
	}
}

func TestCatalogueIsWellFormed(t *testing.T) {
	require.NoError(t, engine.Validate(catalog.Families()))
}
