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
		for _, f := range s.Follows {
			assert.Contains(t, s.Takes, f.Key, "%s: what follows is a dimension that it takes", p)
		}
	}
	assert.Panics(t, func() { ShapeOf("catenary") })
}
