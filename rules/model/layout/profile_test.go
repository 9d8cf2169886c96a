package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec"
)

// A profile that lacks a part fails here, by the part's name.
func TestEveryProfileHasItsParts(t *testing.T) {
	for i, p := range spec.Profiles() {
		if i >= len(Shapes()) || Shapes()[i].Profile != p {
			t.Fatalf("no shape of profile %s, in the order of spec.Profiles", p)
		}
		s := ShapeOf(p)
		assert.NotNil(t, s.make, "%s: how its curve is made", p)
		assert.NotNil(t, s.radius, "%s: how its radius follows", p)
		assert.NotNil(t, s.slope, "%s: how its slope at the springing follows", p)
		assert.NotNil(t, s.arc, "%s: how the length of its arc follows", p)
		assert.NotNil(t, s.tightest, "%s: how its tightest radius follows", p)
		for _, f := range s.Follows {
			assert.Contains(t, s.Takes, f.Key, "%s: what follows is a dimension that it takes", p)
		}
	}
	assert.Panics(t, func() { ShapeOf("catenary") })
}
