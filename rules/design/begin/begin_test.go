package begin_test

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/rules/design/begin"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// asked draws what a designer may ask for: spans of 1.5 m to 12 m, lengths of 2 m
// to 30 m, rises of a tenth of the span to half of it, and of a pointed vault,
// which can't be lower, from half to all of it.
var asked = rapid.Custom(func(t *rapid.T) begin.Wanted {
	w := begin.Wanted{
		Title:   rapid.String().Draw(t, "title"),
		Profile: rapid.SampledFrom(begin.Profiles()).Draw(t, "profile"),
		Units:   rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.Imperial}).Draw(t, "units"),
	}
	span := rapid.Float64Range(1.5, 12).Draw(t, "span")
	share := rapid.Float64Range(0.1, 0.5).Draw(t, "rise by span")
	if w.Profile == "pointed" {
		share += 0.5
	}
	if w.Profile != "pointed" {
		share = min(share, 0.48) // not above half the span when both are rounded
	}
	written := func(m float64) string {
		if w.Units == quantity.Imperial {
			n := int(m / 0.0254)
			return fmt.Sprintf("%dft %din", n/12, n%12)
		}
		return fmt.Sprintf("%.0fmm", m*1000)
	}
	w.Span, w.Length = written(span), written(rapid.Float64Range(2, 30).Draw(t, "length"))
	if begin.HasRise(w.Profile) {
		w.Rise = written(span * share)
		if w.Profile == "pointed" {
			w.Rise = written(span*share + 0.03) // above half the span when rounded
		}
	}
	return w
})

// springing is the tightest radius that a vault upright at its springing can
// have: of half an ellipse b²/a, of a three-centred one less than its rise.
func springing(w begin.Wanted) float64 {
	span, _ := quantity.Parse(quantity.Metre, w.Span)
	rise, _ := quantity.Parse(quantity.Metre, w.Rise)
	if w.Profile == "three-centred" {
		return 0.97 * rise.SI
	}
	return rise.SI * rise.SI / (span.SI / 2)
}

var draws = flag.Int("draws", 20, "how many vaults are asked for")

// Whatever is asked for, the draft passes its own check, read anew from its
// bytes; the only vaults without an answer are those whose springing is tighter
// than the thinnest strip bends to.
func TestWhateverIsAskedForPasses(t *testing.T) {
	none, queried := make([]bool, *draws), make([]bool, *draws)
	t.Run("draws", func(t *testing.T) {
		for i := range none {
			w := asked.Example(i)
			t.Run(fmt.Sprintf("%s %s %s %s", w.Profile, w.Span, w.Rise, w.Length), func(t *testing.T) {
				t.Parallel()
				d, err := begin.Spec(w, catalog.Rules())
				var no *begin.NoAnswerError
				if errors.As(err, &no) {
					none[i] = true
					require.Contains(t, []string{"elliptical", "three-centred"}, w.Profile)
					assert.Less(t, springing(w), 58.6*0.0016, "1.5mm or 1/16in strips of white oak break at 58.55 times that, 1.78e6/(2·15,200)")
					assert.Equal(t, "bend.lamination", no.Against[0].Rule.ID)
					return
				}
				require.NoError(t, err)
				queried[i] = passes(t, d)
			})
		}
	})
	count := func(list []bool) (n int) {
		for _, b := range list {
			if b {
				n++
			}
		}
		return n
	}
	t.Logf("of %d: %d without an answer, %d with a query", len(none), count(none), count(queried))
	assert.LessOrEqual(t, 10*count(none), len(none))
	assert.LessOrEqual(t, 10*count(queried), len(none))
}

// passes holds a draft to its promise, and reports whether a query is left.
func passes(t *testing.T, d *begin.Draft) bool {
	assessment := review.Spec("draft.ceiling.toml", d.Text, review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn()})
	require.Empty(t, assessment.Problems, string(d.Text))
	assert.LessOrEqual(t, assessment.Verdict, engine.PassedWithNotes, string(d.Text))
	for _, f := range assessment.Findings {
		assert.NotEqual(t, engine.Hold, f.Severity, f.Text)
	}
	for _, n := range assessment.NotChecked {
		assert.False(t, n.Failed, n.Why)
	}
	assert.NotRegexp(t, `"[0-9]+\.[0-9]+%"`, string(d.Text), "a share is one that a person would write")
	assert.Greater(t, d.Confirm, 20)
	assert.Equal(t, d.Confirm, len(regexp.MustCompile(`(?m)^[^#\n]+ # confirm: `).FindAllString(string(d.Text), -1)))
	return assessment.Counts.Queried > 0
}

// What is commented out for the designer to fill in are keys that a spec has,
// and none of them passes while it is empty.
func TestWhatIsLeftOutAsksToBeFilledIn(t *testing.T) {
	d, err := begin.Spec(begin.Wanted{Profile: "segmental", Units: quantity.Metric, Span: "4200mm", Rise: "840mm", Length: "7080mm"}, catalog.Rules())
	require.NoError(t, err)
	text := regexp.MustCompile(`(?m)^# ([a-z_]+ *= |\[)`).ReplaceAllString(string(d.Text), "$1")
	doc, problems := spec.Parse("x", []byte(text))
	require.Empty(t, problems, text)
	said := map[string]bool{}
	for _, p := range schema.Check(doc) {
		assert.NotContains(t, p.Message, "no such key", p.Key)
		said[p.Key] = true
	}
	for _, key := range []string{
		"strap.allowable.load", "strap.hole", "strap.screws.diameter", "strap.fixing.top", "room.access",
		"room.framing.spacing", "lift.capacity", "route.1.width", "rail.joint.kind", "skin.glue.press",
	} {
		assert.True(t, said[key], key)
	}
}

func TestWhatCanNotBeIsSaid(t *testing.T) {
	for _, c := range []struct{ profile, span, rise, length, want string }{
		{"segmental", "4m", "2.5m", "6m", "vault.rise: a rise of 2500mm is impossible for a segmental vault"},
		{"segmental", "4m", "", "6m", "rise: a segmental vault needs its rise"},
		{"flat", "4m", "1m", "6m", "rise: a flat vault has no rise of its own; leave it out"},
		{"segmental", "4", "1m", "6m", "span: no unit"},
		{"segmental", "0mm", "1m", "6m", "span: 0mm is not greater than zero"},
		{"segmental", "4m", "1m", "5cm", "grid.along: 1 modules in 50mm are 50mm each"},
		{"segmental", "4m", "1m", "20cm", "no grid of coffers"},
		{"elliptical", "3m", "250mm", "6m", "bend.lamination: strips of 1.5mm are bent to a radius of 41.7mm, 27.78 times their thickness; at 58.55 the stress"},
	} {
		_, err := begin.Spec(begin.Wanted{Profile: c.profile, Units: quantity.Metric, Span: c.span, Rise: c.rise, Length: c.length}, catalog.Rules())
		if assert.Error(t, err, c.want) {
			assert.Contains(t, err.Error(), c.want)
		}
	}
}

// Between the practice of structural glulam and breaking strips a draft is
// written, with its straps, and says the query.
func TestStripsUnderThePracticeAreQueried(t *testing.T) {
	w := begin.Wanted{Profile: "elliptical", Units: quantity.Metric, Span: "3m", Rise: "425mm", Length: "6m"} // b²/a = 120.4mm
	d, err := begin.Spec(w, catalog.Rules())
	require.NoError(t, err)
	assert.True(t, passes(t, d))
	assert.Contains(t, string(d.Text), "\nstations")
	var said []string
	for _, f := range d.Assessment.Findings {
		if f.Severity == engine.Query {
			said = append(said, f.Rule.ID)
		}
	}
	assert.Contains(t, said, "bend.lamination")
}

// A title reaches the file as text, whatever is in it.
func TestTitlesAreQuoted(t *testing.T) {
	const title = "A \"b\" \\ \n[room]\nwidth = 1\x1b\u202e\U0001F600"
	d, err := begin.Spec(begin.Wanted{Title: title, Profile: "flat", Units: quantity.Metric, Span: "2m", Length: "3m"}, catalog.Rules())
	require.NoError(t, err)
	assert.Equal(t, title, d.Assessment.Ceiling.Project.Title.Get())
	assert.Equal(t, strings.ToValidUTF8(string(d.Text), ""), string(d.Text))
	assert.False(t, math.IsNaN(d.Assessment.Ceiling.Panel.Mass.Get()))
}
