package strap_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/strap"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// 44mm are left at the near end wall: under the 100mm of common practice, and
// more than a firm may need whose driver is small.
func TestHandIsALimit(t *testing.T) {
	src, _ := ruletest.Compose("[room]\nwidth = \"4240mm\"\nlength = \"7144mm\"\nheight = \"2700mm\"\naccess = \"none\"\n")
	for hand, want := range map[string]engine.Severity{"100mm": engine.Hold, "40mm": engine.Query} {
		layer, problems := catalog.ReadStandards("dryfit.toml", []byte("dryfit = 1\nname = \"Shop\"\n[limit]\n\"strap.access.hand\" = { value = \""+hand+"\", source = \"our driver\" }\n"))
		require.Empty(t, problems)
		var list []*engine.Rule
		for _, r := range strap.Family().List() {
			if r.ID == "strap.access" {
				list = append(list, r)
			}
		}
		assessment := review.Spec("s", []byte(src), review.Options{Rules: list, Standards: standards.With(layer), On: ruletest.On})
		require.Empty(t, assessment.Problems)
		found := engine.Note
		for _, f := range assessment.Findings {
			found = max(found, f.Severity)
		}
		assert.Equal(t, want, found, hand)
	}
}
