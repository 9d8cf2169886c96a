package review_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/review"
)

// A spec of the least that the format takes waits for its straps most: no rule of
// the hanging can be checked without them. What is not given is asked for by the
// count of the rules that its absence keeps waiting, and no more than three keys.
func TestAwaited(t *testing.T) {
	src, err := os.ReadFile("../../testdata/specs/porch.ceiling.toml")
	require.NoError(t, err)
	s := review.Spec("porch.ceiling.toml", src, options())
	require.Empty(t, s.Problems)
	require.Len(t, s.Awaited, 3)
	for i, a := range s.Awaited {
		assert.False(t, s.Ceiling.Has(a.Key), a.Key)
		for _, r := range a.Rules {
			found := false
			for _, n := range s.NotChecked {
				found = found || n.Rule == r
			}
			assert.True(t, found, "%s waits for %s and is checked", r.ID, a.Key)
		}
		if i > 0 {
			assert.LessOrEqual(t, len(a.Rules), len(s.Awaited[i-1].Rules))
		}
	}
	var ids []string
	for _, r := range s.Awaited[0].Rules {
		ids = append(ids, r.ID)
	}
	assert.Equal(t, "strap.stations", s.Awaited[0].Key)
	assert.Subset(t, ids, []string{"strap.load", "strap.balance", "rib.stress", "install.lift-share"})
}
