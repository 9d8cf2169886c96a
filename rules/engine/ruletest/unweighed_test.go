package ruletest

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// Each rule that compares what a panel weighs, or where, names a fitting of which
// the spec states no mass, and no other rule does; with a mass none does.
func TestAFittingWithoutAMassIsNamed(t *testing.T) {
	key := spec.Key("fitting", 1, "mass")
	without := func(tree map[string]any) (rules []string) {
		s, ok := stateOf(tree, standards.BuiltIn(), engine.Means{}, every...)
		require.True(t, ok)
		for _, n := range s.outcome.NotChecked {
			if n.Key == key {
				rules = append(rules, n.Rule.ID)
			}
		}
		slices.Sort(rules)
		return rules
	}
	assert.Equal(t, []string{
		"install.lift-balance", "install.lift-share", "raise.hands", "raise.secure", "rib.radial", "rib.sag", "rib.stress",
		"strap.balance", "strap.load", "strap.lost", "strap.screws", "strap.section", "transit.weight",
	}, without(sample.Tree(t, sample.ReadingRoom, nil)))
	assert.Empty(t, without(sample.Tree(t, sample.ReadingRoom, map[string]any{key: "0.4kg"})))
}
