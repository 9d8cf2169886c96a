package review_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// No offer on any of the sample ceilings makes another finding worse than it
// was: what it promises is tried on the tree with its value.
func TestNoOfferMakesAnotherMatterWorse(t *testing.T) {
	offers := 0
	for _, name := range sample.Names(t) {
		assessment := review.Spec(name, sample.Source(t, name), options())
		for _, f := range assessment.Findings {
			if f.Passes == nil {
				continue
			}
			offers++
			tree, ok := spec.With(assessment.Document.Tree, f.Passes.Key, f.Passes.Value)
			require.True(t, ok)
			after, faults := review.Tree(tree, options())
			require.Empty(t, faults)
			for _, g := range after.Findings {
				for _, had := range assessment.Findings {
					if g.Rule != had.Rule || g.At != had.At || g.Severity < engine.Query || g.Severity == engine.Refer || had.Bound.Name == "" || g.Bound.Unit != had.Bound.Unit {
						continue
					}
					over := func(f engine.Finding) float64 { return max(f.Measured.SI-f.Bound.SI, f.Bound.SI-f.Measured.SI) }
					assert.LessOrEqual(t, over(g), over(had)*1.001, "%s: %s = %v, which clears %s, and %s goes from %s to %s",
						name, f.Passes.Key, f.Passes.Value, f.Rule.ID, g.Rule.ID, had.Text, g.Text)
				}
			}
		}
	}
	assert.Greater(t, offers, 10)
}

// A wider first gap takes from the last one. Where the last panel is short of
// its clearance already, it is not offered.
func TestAnOfferThatTakesAFindingFurtherIsNotMade(t *testing.T) {
	near := []string{`first_gap = "18mm"`, `first_gap = "5mm"`}
	free := find(review.Spec("s", sample.Source(t, "study", near...), options()), "close.first-gap")
	require.NotNil(t, free.Passes)
	assert.Equal(t, "6mm", free.Passes.Value)

	assessment := review.Spec("s", sample.Source(t, "study", append(near, `"7144mm"`, `"7125mm"`)...), options())
	short := find(assessment, "close.slide")
	require.NotNil(t, short)
	assert.Equal(t, engine.Query, short.Severity)
	assert.Nil(t, find(assessment, "close.first-gap").Passes, "the last gap would be a millimetre shorter")
}

// Of the values that would pass, the one is offered whose key the standards
// would rather change.
func TestOffersFollowTheOrderOfTheStandards(t *testing.T) {
	src := sample.Source(t, "study", `first_gap = "18mm"`, `first_gap = "30mm"`)
	offered := func(std *standards.Standards) string {
		o := options()
		o.Standards = std
		f := find(review.Spec("s", src, o), "close.slide")
		require.NotNil(t, f)
		require.NotNil(t, f.Passes)
		return f.Passes.Key
	}
	assert.Equal(t, "close.first_gap", offered(standards.BuiltIn()))
	firm, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[remedy]\norder = [[\"close.last\"], [\"*\"]]\n"))
	require.Empty(t, problems)
	assert.Equal(t, "close.last", offered(standards.With(firm)))
}

// However narrow a corner is, a wider one is offered: the least that leaves the clearance.
func TestACornerIsOfferedAWidthWithItsClearance(t *testing.T) {
	for _, width := range []string{"300mm", "400mm", "600mm", "700mm", "800mm", "900mm", "940mm"} {
		narrow := []string{`width  = "2400mm"`, `width  = "` + width + `"`}
		f := find(review.Spec("s", sample.Source(t, "study", narrow...), options()), "transit.corner")
		require.NotNil(t, f, width)
		require.NotNil(t, f.Passes, "%s: %s", width, f.Text)
		assert.Equal(t, "route.3.width", f.Passes.Key, width)
		narrow[1] = `width  = "` + f.Passes.Value.(string) + `"`
		assert.Nil(t, find(review.Spec("s", sample.Source(t, "study", narrow...), options()), "transit.corner"), width)
	}
}
