package rib_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/rib"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// The factor for curved members is published from R/t = 125 for softwood: strips
// of 25mm bent to 3045mm have 121.8, and a rib of them no figure. A sawn rib
// without its segments has none either.
func TestStressIsNotCheckedWithoutStrength(t *testing.T) {
	var stress *engine.Rule
	for _, r := range rib.Family().List() {
		if r.ID == "rib.stress" {
			stress = r
		}
	}
	for construction, want := range map[string]engine.NotChecked{
		`lamination = "25mm"`:   {Rule: stress, Key: "rib.lamination", Why: "radius by strip thickness 121.8 is under 125, the least for the curvature factor"},
		`construction = "sawn"`: {Rule: stress, Key: "rib.segments"},
	} {
		src, _ := ruletest.Compose("[rib]\nspecies = \"eastern white pine\"\nwidth = \"40mm\"\ndepth = \"20mm\"\n" + construction + "\n")
		assessment := review.Spec("s", []byte(src), review.Options{Rules: []*engine.Rule{stress}, Standards: standards.BuiltIn(), On: ruletest.On})
		require.Empty(t, assessment.Problems)
		assert.Empty(t, assessment.Findings, construction)
		assert.Contains(t, assessment.NotChecked, want, construction)
		for _, n := range assessment.NotChecked {
			assert.Contains(t, []string{want.Key, "fitting.1.mass"}, n.Key, construction)
		}
	}
}
