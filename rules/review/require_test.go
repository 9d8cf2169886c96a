package review_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// A spec that leaves out the tables which rules need says less and passes: where
// the rules are required, it is held for each key that keeps them from being
// checked.
func TestWhatIsRequiredIsChecked(t *testing.T) {
	tree := sample.Tree(t, sample.ReadingRoom, nil)
	delete(tree["strap"].(map[string]any), "allowable")
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25", Strict: false}
	held := func() (out []string) {
		s, faults := review.Tree(tree, o)
		require.Empty(t, faults)
		for _, f := range s.Findings {
			if f.Rule.ID == "require.checked" {
				assert.Equal(t, engine.Hold, f.Severity)
				assert.Equal(t, engine.Failed, s.Verdict)
				out = append(out, f.At+": "+f.Text)
			}
		}
		return out
	}
	assert.Empty(t, held())
	o.Require = []standards.Requirement{{Rule: true, Pattern: "strap.lo*", By: "--require"}}
	assert.Equal(t, []string{"strap.allowable: strap.allowable is not given, so that strap.load, strap.lost, which are required by --require, are not checked"}, held())
	o.Require = []standards.Requirement{{Rule: true, Pattern: "vault.*", By: "--require"}}
	assert.Empty(t, held(), "the vault is checked without it")
	o.Require = []standards.Requirement{{Rule: true, Pattern: "survey.b*", By: "--require"}}
	assert.Equal(t, []string{"survey: survey is not given, so that survey.bow, which is required by --require, is not checked"}, held())
	o.Require = nil
	s, _ := review.Tree(tree, o)
	for _, n := range s.NotChecked {
		assert.NotEqual(t, "survey", n.Key, "without a survey nothing is said of %s", n.Rule.ID)
	}
}

// Standards may say less of what they require themselves, and of nothing that the
// command requires.
func TestSeverityOfWhatIsRequired(t *testing.T) {
	tree := sample.Tree(t, sample.ReadingRoom, nil)
	delete(tree["strap"].(map[string]any), "allowable")
	l, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[check.require]\nrules = [\"strap.load\"]\nkeys = [\"project.revision\"]\n[severity]\n\"require.checked\" = \"query\"\n"))
	require.Empty(t, problems)
	o := review.Options{Rules: catalog.Rules(), Standards: standards.With(l), On: "2026-11-25"}
	delete(tree["project"].(map[string]any), "revision")
	found := func() (out []engine.Severity) {
		s, faults := review.Tree(tree, o)
		require.Empty(t, faults)
		require.Len(t, s.Loosened, 1)
		for _, f := range s.Findings {
			if f.Rule.ID == "require.checked" {
				out = append(out, f.Severity)
			}
		}
		return out
	}
	assert.Equal(t, []engine.Severity{engine.Query, engine.Query}, found())
	o.Require = []standards.Requirement{{Rule: true, Pattern: "strap.load", By: "--require"}}
	assert.Equal(t, []engine.Severity{engine.Query, engine.Hold}, found())
}

// However much is required and not given, what the spec accepts stays accepted.
func TestWhatIsRequiredLeavesWhatIsAccepted(t *testing.T) {
	tree := sample.Tree(t, sample.ReadingRoom, map[string]any{"accept": []any{
		map[string]any{"rule": "rib.sag", "reason": "measured", "by": "A. Builder", "until": "2026-12-01"},
	}})
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	for n := range 60 {
		s, faults := review.Tree(tree, o)
		require.Empty(t, faults)
		require.Equal(t, n, s.Counts.Held)
		require.Equal(t, 1, s.Counts.Accepted, "with %d keys that are required", n)
		o.Require = append(o.Require, standards.Requirement{Pattern: "align." + strconv.Itoa(n+1) + ".at", By: "--require"})
	}
}
