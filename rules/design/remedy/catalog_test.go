package remedy_test

import (
	"context"
	"flag"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/remedy"
	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec/edit"
)

// noNumber are the rules whose finding does not hang on a number, a count or a
// word of the spec, and why.
var noNumber = map[string]string{
	"strap.source":      "the source of a load is words",
	"strap.sideways":    "always referred",
	"strap.engineer":    "referred until an engineer is named, and then to him",
	"moisture.fire":     "referred by the species, which is a name",
	"moisture.emission": "noted by the material, which is a name",
	"accept.in-force":   "an acceptance is words and a date",
	"fitting.luminaire": "always referred",
	"fitting.sprinkler": "always referred",
	"vault.height":      "always referred",
	"survey.bow":        "a reading between two stations is taken in the room",
	// Of a case alone.
	"joint.rail/fails-glue":   "what bears the rail better wants sizes, which nobody states",
	"strap.apart/fails-twice": "two stations that are one strap's can't be told apart to be moved",
}

// everything lets every table change, facts too: a rule's own remedy may be a
// wider door. For the room, whose proof takes a second, it is the room and the panels.
func everything(r *engine.Rule) []string {
	if r.ID == "transit.room" {
		return []string{"room", "panels"}
	}
	var out []string
	for _, p := range schema.Properties() {
		if p.Type == "object" || p.Type == "array" {
			if p.Path != "project" && p.Path != "accept" {
				out = append(out, p.Path)
			}
		}
	}
	return out
}

func options() review.Options {
	return review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
}

var everyCase = flag.Bool("cases", false, "try the remedy of each failing case, and not of the first of each rule")

// A failing case of each rule is cleared by its own remedy, written into its file.
func TestEveryRuleHasItsRemedy(t *testing.T) {
	for _, family := range catalog.Families() {
		for _, r := range family.List() {
			cases, err := family.CasesOf(r)
			require.NoError(t, err)
			first := true
			for _, c := range cases {
				if c.Fails() && (first || *everyCase) {
					first = false
					t.Run(r.ID+"/"+c.Name, func(t *testing.T) {
						t.Parallel()
						cure(t, r, c)
					})
				}
			}
		}
	}
}

func cure(t *testing.T, r *engine.Rule, c engine.Case) {
	src, _ := ruletest.Compose(c.Text)
	assessment := review.Spec("case.ceiling.toml", []byte(src), options())
	require.Empty(t, assessment.Problems)
	seen := map[string]bool{}
	for _, f := range assessment.Findings {
		if f.Rule.ID != r.ID || seen[f.At] {
			continue
		}
		seen[f.At] = true
		o := remedy.Options{Review: options(), MayChange: everything(r)}
		o.Review.Rules = []*engine.Rule{f.Rule} // all of them would take ten times as long
		cures, _, err := remedy.Cures(context.Background(), assessment.Document.Tree, f, o)
		require.NoError(t, err)
		_, excused := noNumber[r.ID]
		if _, alone := noNumber[r.ID+"/"+c.Name]; excused || alone {
			assert.Empty(t, cures, "%s is cured after all", r.ID)
			continue
		}
		if len(cures) == 0 {
			together(t, r, src)
			continue
		}
		best := cures[0]
		t.Logf("%s: %v to %v, %d cures", best.Key, best.Was, best.Value, len(cures))
		var changes []edit.Change
		for _, c := range best.All() {
			changes = append(changes, edit.Change{Key: c.Key, Value: c.Value})
		}
		out, err := edit.Apply([]byte(src), changes)
		require.NoError(t, err)
		again := review.Spec("case.ceiling.toml", out, options())
		require.Empty(t, again.Problems)
		for _, g := range again.Findings {
			assert.False(t, g.Rule.ID == r.ID && g.At == f.At && g.Severity == f.Severity, "%s still at %s: %s", r.ID, g.At, g.Text)
		}
	}
}

// together clears what no key clears by itself: several at a time.
func together(t *testing.T, r *engine.Rule, src string) {
	o := remedy.Options{Review: options(), MayChange: everything(r), Answers: 1}
	o.Review.Rules, o.Review.Strict = []*engine.Rule{r}, true
	got, err := remedy.Search(context.Background(), "case.ceiling.toml", []byte(src), o)
	require.NoError(t, err)
	require.NotEmpty(t, got.Answers, "%s: %v", r.ID, got.Open)
	for _, c := range got.Answers[0].Changes {
		t.Logf("%s: %v to %v", c.Key, c.Was, c.Value)
	}
	assert.Empty(t, got.Answers[0].Assessment.Findings)
}
