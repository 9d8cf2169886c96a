package checking

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
)

// Every pattern that is completed names rules, and what --rule takes of one is
// what --skip leaves out.
func TestPatterns(t *testing.T) {
	list := catalog.Rules()
	for _, p := range append(Patterns(list), "*", "*.*", "?????.*", "[a-m]*") {
		why, err := selection{Skip: []string{p}}.leaves(list)
		require.NoError(t, err, p)
		only, err := selection{Only: []string{p}}.leaves(list)
		require.NoError(t, err, p)
		for _, r := range list {
			assert.NotEqual(t, why(r) == "", only(r) == "", "%s is skipped, or the others are: %s", r.ID, p)
		}
	}
	why, err := selection{}.leaves(list)
	assert.NoError(t, err)
	assert.Nil(t, why, "none is left out")
	assert.Contains(t, selection{Skip: []string{"strap.engineer"}}.stays(list), "strap.engineer")
	assert.Empty(t, selection{Skip: []string{"strap.load"}}.stays([]*engine.Rule{}))
}
