package compare_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/compare"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// A decision hangs on the worst leg and the worst lift, and on what a rule compares
// whose finding came: strips of 9mm are 6.67 of them, which was none of bend.strips'
// business before.
func TestDecidingFigures(t *testing.T) {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	a := review.Spec("a.ceiling.toml", sample.Source(t, sample.ReadingRoom), o)
	b := review.Spec("b.ceiling.toml", sample.Source(t, sample.ReadingRoom, `lamination   = "6mm"`, `lamination   = "9mm"`, `thickness = "9mm"`, `thickness = "8mm"`), o)
	require.Empty(t, b.Problems)
	c := compare.Of(a, b, 0.0001)
	var keys []string
	for _, f := range c.Deciding() {
		keys = append(keys, f.Key)
	}
	assert.Contains(t, keys, "rib.laminations")
	assert.Subset(t, keys, []string{"panel.mass", "hanging.worst"})
	assert.NotContains(t, keys, "vault.radius")
	assert.Less(t, len(keys), 20)
}
