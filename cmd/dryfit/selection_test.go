package main

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
)

// The totals under a drawn option are whole: no figure is cut away.
func TestContactSheetHasAllTotals(t *testing.T) {
	out, _, _ := printed(t, "dryfit study ../../docs/examples/alder-quay/specs/map-gallery.ceiling.toml --vary grid.along=4,5 --format svg --on 2026-11-25")
	text := strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(out, " ")), " ")
	whole := regexp.MustCompile(`(FAIL|PASS WITH NOTES) \d+ held, \d+ queried, (\d+ noted, )?\d+ referred, \d+ not checked( \([a-z, ]+\))?, \d+ assumed`)
	assert.Len(t, whole.FindAllString(text, -1), 2, text)
}

// Every pattern that is completed names rules, and what --rule takes of one is
// what --skip leaves out.
func TestPatterns(t *testing.T) {
	list := catalog.Rules()
	for _, p := range append(patterns(list), "*", "*.*", "?????.*", "[a-m]*") {
		why, err := selection{skip: []string{p}}.leaves(list)
		require.NoError(t, err, p)
		only, err := selection{only: []string{p}}.leaves(list)
		require.NoError(t, err, p)
		for _, r := range list {
			assert.NotEqual(t, why(r) == "", only(r) == "", "%s is skipped, or the others are: %s", r.ID, p)
		}
	}
	why, err := selection{}.leaves(list)
	assert.NoError(t, err)
	assert.Nil(t, why, "none is left out")
	assert.Contains(t, selection{skip: []string{"strap.engineer"}}.stays(list), "strap.engineer")
	assert.Empty(t, selection{skip: []string{"strap.load"}}.stays([]*engine.Rule{}))
}
