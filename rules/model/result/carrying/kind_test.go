package carrying

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec"
)

// A kind of leg that lacks a part fails here, by the part's name.
func TestEveryKindOfLegHasItsParts(t *testing.T) {
	keys := spec.Keys()
	for i, kind := range spec.LegKinds() {
		k := KindOf(kind)
		assert.Equal(t, kind, k.Kind)
		assert.Equal(t, i, k.index, "%s: its place among spec.LegKinds", kind)
		assert.NotNil(t, k.way, "%s: its motions", kind)
		assert.True(t, slices.Contains(keys, "route.*."+spec.Key(k.Place...)), "%s: the key of its clear width", kind)
	}
	assert.Panics(t, func() { KindOf("ferry") })
}
