package calcs

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/layout"
	"dryfit/spec"
)

// A profile that lacks a part fails here, by the part's name.
func TestEveryProfileHasItsFormulas(t *testing.T) {
	for _, p := range spec.Profiles() {
		s := formulasOf(p)
		assert.NotNil(t, s.radius, "%s: how its radius follows", p)
		assert.NotNil(t, s.slope, "%s: how its slope at the springing follows", p)
		assert.NotNil(t, s.arc, "%s: how the length of its arc follows", p)
		assert.NotNil(t, s.tightest, "%s: how its tightest radius follows", p)
		assert.Equal(t, layout.ShapeOf(p).Kinked(), s.kink != nil, "%s: how the slope at its corner follows", p)
	}
}
