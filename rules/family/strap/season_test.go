package strap_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/family/strap"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// A firm's own species has no movement published past 14% of moisture, which
// humid air brings: the seasons are not checked, and the other cases still find
// what they find.
func TestSeasonsThatAreNotKnown(t *testing.T) {
	layer, faults := catalog.ReadStandards("own", []byte(`dryfit = 1
name = "own"
[[material]]
name = "our oak"
kind = "timber"
group = "hardwood"
specific_gravity = 0.68
modulus = "12.3GPa"
rupture = "105MPa"
radial = 0.0018
tangential = 0.00365
source = "tests"`))
	require.Empty(t, faults)
	src := sample.Source(t, sample.ReadingRoom, `species      = "white oak"`, `species      = "our oak"`,
		`humidity = "60%"`, `humidity = "80%"`, `load = "0.9kN"`, `load = "0.12kN"`)
	assessment := review.Spec("spec", src, review.Options{Rules: strap.Family().List(), Standards: standards.With(layer)})
	require.Empty(t, assessment.Problems)
	said := map[string]string{}
	for _, n := range assessment.NotChecked {
		said[n.Rule.ID] += n.Why
	}
	assert.Contains(t, said["strap.load"], "the seasons' load on the straps: dryfit has no published coefficient of movement for the species")
	found := false
	for _, f := range assessment.Findings {
		found = found || f.Rule.ID == "strap.load" && f.Severity == engine.Hold
	}
	assert.True(t, found, "148N with one strap set short")
}
