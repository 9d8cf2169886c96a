package review_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// A firm's own species that is stiffer than any that is built in, 1.95 million psi, is
// listed as loosened by every spec that is made of it, and by no other.
func TestMaterialsBeyondThePublishedAreListed(t *testing.T) {
	l, problems := catalog.ReadStandards("dryfit.toml", []byte(`dryfit = 1
name = "s"
[[material]]
name = "wonder wood"
kind = "timber"
source = "word of mouth"
group = "hardwood"
specific_gravity = 0.6
modulus = "40GPa"
rupture = "100MPa"
`))
	require.Empty(t, problems)
	o := options()
	o.Offers, o.Standards = false, standards.With(l)
	for _, species := range []string{"white oak", "wonder wood"} {
		s, faults := review.Tree(sample.Tree(t, sample.ReadingRoom, map[string]any{"rib.species": species}), o)
		require.Empty(t, faults)
		if species == "white oak" {
			assert.Empty(t, s.Loosened)
			continue
		}
		require.Len(t, s.Loosened, 1)
		got := s.Loosened[0]
		assert.Equal(t, []string{"material.1.modulus", "40.00GPa", "at most 13.44GPa", "of wonder wood, word of mouth"}, []string{got.Name, got.Used, got.BuiltIn, got.Source})
		assert.Equal(t, standards.Origin{File: "dryfit.toml", Line: 9}, got.Origin)
	}
}
