package review_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/review"
)

// against checks the reading room with changes against it with others.
func against(t *testing.T, now, earlier *strings.Replacer, strict bool) *review.Assessment {
	t.Helper()
	src := string(sample.Source(t, "reading-room"))
	o := options()
	o.Strict, o.Offers = strict, false
	s := review.Spec("now", []byte(now.Replace(src)), o)
	require.Empty(t, s.Problems)
	before := review.Spec("earlier", []byte(earlier.Replace(src)), o)
	require.Empty(t, before.Problems)
	s.Against(before, o)
	return s
}

var asItIs = strings.NewReplacer()

// fresh are the rules whose holds and queries are new.
func fresh(s *review.Assessment) []string {
	var out []string
	for _, f := range s.Findings {
		if f.Baseline == engine.New && (f.Severity == engine.Hold || f.Severity == engine.Query) {
			out = append(out, f.Rule.ID)
		}
	}
	return out
}

func TestWhatWasThereFailsNothing(t *testing.T) {
	s := against(t, asItIs, asItIs, true)
	assert.Empty(t, fresh(s))
	assert.Positive(t, s.Counts.Queried)
	assert.Equal(t, engine.PassedWithNotes, s.Verdict)
	// Lines move, and a leg is put before the others.
	leg := "[[route]]\nname = \"yard gate\"\nkind = \"door\"\nwidth = \"3m\"\nheight = \"3m\"\n\n"
	s = against(t, strings.NewReplacer("[[route]]", "# moved\n\n"+leg+"[[route]]"), asItIs, true)
	assert.Empty(t, fresh(s))
}

func TestWhatIsNewFails(t *testing.T) {
	s := against(t, strings.NewReplacer(`depth        = "60mm"`, `depth = "20mm"`), asItIs, true)
	assert.Contains(t, fresh(s), "rib.depth-to-span")
	assert.Equal(t, engine.Failed, s.Verdict)
	// It was there, and is worse.
	s = against(t, strings.NewReplacer(`depth        = "60mm"`, `depth = "20mm"`), strings.NewReplacer(`depth        = "60mm"`, `depth = "25mm"`), true)
	assert.Contains(t, fresh(s), "rib.depth-to-span")
	s = against(t, strings.NewReplacer(`depth        = "60mm"`, `depth = "25mm"`), strings.NewReplacer(`depth        = "60mm"`, `depth = "20mm"`), true)
	assert.NotContains(t, fresh(s), "rib.depth-to-span")
}

func TestWithoutAnEarlierSpecAllIsNew(t *testing.T) {
	o := options()
	o.Strict, o.Offers = true, false
	src := sample.Source(t, "reading-room")
	s := review.Spec("now", src, o)
	s.Against(nil, o)
	assert.Len(t, fresh(s), s.Counts.Queried)
	assert.Equal(t, engine.Failed, s.Verdict)
	s = review.Spec("now", src, o)
	s.Against(review.Spec("earlier", []byte("dryfit = "), o), o)
	assert.Equal(t, engine.Failed, s.Verdict)
	torn := review.Spec("now", []byte("dryfit = "), o)
	torn.Against(review.Spec("earlier", []byte("dryfit = "), o), o)
	assert.Equal(t, engine.CouldNotCheck, torn.Verdict)
}

// A figure that could not be computed before either fails nothing; of another
// rule or key it does.
func TestFiguresThatTheBaselineCouldNotCompute(t *testing.T) {
	rule, other := &engine.Rule{ID: "test.rule"}, &engine.Rule{ID: "test.other"}
	failed := func(r *engine.Rule, key string) engine.NotChecked {
		return engine.NotChecked{Rule: r, Key: key, Why: "no solution", Failed: true}
	}
	for _, c := range []struct {
		name         string
		now, earlier []engine.NotChecked
		want         engine.Verdict
	}{
		{"it failed before", []engine.NotChecked{failed(rule, "a")}, []engine.NotChecked{failed(rule, "a")}, engine.PassedWithNotes},
		{"it was only not checked", []engine.NotChecked{failed(rule, "a")}, []engine.NotChecked{{Rule: rule, Key: "a"}}, engine.Failed},
		{"another key", []engine.NotChecked{failed(rule, "a")}, []engine.NotChecked{failed(rule, "b")}, engine.Failed},
		{"another rule", []engine.NotChecked{failed(rule, "a")}, []engine.NotChecked{failed(other, "a")}, engine.Failed},
		{"one more", []engine.NotChecked{failed(rule, "a"), failed(rule, "b")}, []engine.NotChecked{failed(rule, "a")}, engine.Failed},
	} {
		s := &review.Assessment{NotChecked: c.now}
		s.Against(&review.Assessment{NotChecked: c.earlier}, review.Options{})
		assert.Equal(t, c.want, s.Verdict, c.name)
	}
}
