package transit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/family/transit"
	"dryfit/spec"
)

func TestEveryKindOfLegHasItsRule(t *testing.T) {
	ids := map[string]bool{}
	for _, r := range transit.Family().Rules {
		ids[r.ID] = true
	}
	for _, kind := range spec.LegKinds() {
		assert.True(t, ids["transit."+string(kind)], "no rule of legs of kind %s", kind)
	}
}
