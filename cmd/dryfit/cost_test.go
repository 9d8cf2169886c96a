package main

import (
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// What a check costs is held by what it allocates beside the bare decoding of
// the same file: that is the same on every machine, where time is not. The
// bounds are a quarter over what was measured; docs/performance.md has the times.
func TestCheckAllocatesNoMoreThanItDid(t *testing.T) {
	src := readDemo(t)
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn()}
	decode := testing.AllocsPerRun(3, func() {
		var tree map[string]any
		_, err := toml.Decode(string(src), &tree)
		require.NoError(t, err)
	})
	whole := func() { require.Empty(t, review.Spec(demo, src, o).Problems) }
	check := testing.AllocsPerRun(3, whole)
	o.Offers = true
	offers := testing.AllocsPerRun(3, whole)
	t.Logf("allocations: decode %.0f, check %.0f, with offers %.0f: %.2f and %.2f times", decode, check, offers, check/decode, offers/decode)
	assert.Less(t, check/decode, 5.2)
	assert.Less(t, offers/decode, 7.4)
}
