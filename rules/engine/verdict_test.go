package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/engine"
)

// The verdict names the families of what was not checked, each once, and those of
// several files together.
func TestVerdictNamesFamilies(t *testing.T) {
	of := func(ids ...string) engine.Counts {
		var list []*engine.Rule
		for _, id := range ids {
			list = append(list, &engine.Rule{ID: id})
		}
		return engine.Counts{NotChecked: len(ids), Families: engine.FamiliesOf(list)}
	}
	one, other := of("strap.load", "bend.grain", "strap.lost"), of("bend.strips", "lift.reach")
	assert.Equal(t, "0 held, 0 queried, 0 referred, 3 not checked (bend, strap), 0 assumed", one.String())
	assert.Equal(t, "0 held, 0 queried, 0 referred, 5 not checked (bend, lift, strap), 0 assumed", one.Plus(other).String())
	assert.Equal(t, one.Plus(other), other.Plus(one))
	assert.Equal(t, "0 held, 0 queried, 0 referred, 0 not checked, 0 assumed", of().String())
}
