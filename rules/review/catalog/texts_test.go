package catalog_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// What a standards file changes, the sentence says.
func TestSentencesFollowTheStandards(t *testing.T) {
	for _, c := range []struct{ rule, limit, says string }{
		{"rib.stress", "5", "divided by 5"},
		{"rib.stress", "6.5", "divided by 6.5"},
	} {
		f, r, ok := catalog.Find(c.rule)
		require.True(t, ok)
		layer, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[limit]\n\""+
			r.Full(r.Limits[0].Key)+"\" = { value = "+c.limit+", source = \"x\" }\n"))
		require.Empty(t, problems)
		cases, err := f.CasesOf(r)
		require.NoError(t, err)
		src, _ := ruletest.Compose(cases[0].Text)
		assessment := review.Spec("s", []byte(src), review.Options{Rules: []*engine.Rule{r}, Standards: standards.With(layer)})
		require.NotEmpty(t, assessment.Findings)
		assert.Contains(t, assessment.Findings[0].Text, c.says)
	}
}
