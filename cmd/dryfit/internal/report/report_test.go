package report

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
)

func TestSafe(t *testing.T) {
	for text, want := range map[string]string{
		"plain é 漢 ½″":        "plain é 漢 ½″",
		"\x1b[31mred":         `\x1b[31mred`,
		"a\nb\tc\r":           `a\x0ab\x09c\x0d`,
		"\u202eturned":        `\u202eturned`,
		"zero\u200bwidth":     `zero\u200bwidth`,
		"line\u2028separator": `line\u2028separator`,
		"bad \xff byte":       `bad \xff byte`,
		"\u009bcsi":           `\x9bcsi`,
		"tag \U000e0041":      `tag \U000e0041`,
		"replacement \uFFFD":  "replacement \uFFFD",
	} {
		assert.Equal(t, want, show.Safe(text))
	}
}

// examples is a report on the demo and on files that can't be read.
func examples(t *testing.T) Report {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), Offers: true}
	var assessments []*review.Assessment
	for _, name := range []string{"map-gallery", "reading-room"} {
		assessments = append(assessments, review.Spec("specs/"+name+".ceiling.toml", sample.Source(t, name), o))
	}
	assessments = append(assessments, review.Unreadable("gone.ceiling.toml", "there is no such file", o),
		review.Spec("bad.ceiling.toml", []byte("dryfit = 1\nroom = 3\n"), o))
	return Report{Version: "(devel)", On: "2026-11-25", Runs: []Run{{Assessments: assessments}}}
}

// everyCeiling is a report on all that tests have.
func everyCeiling(t *testing.T) Report {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	var assessments []*review.Assessment
	for _, name := range sample.Names(t) {
		assessments = append(assessments, review.Spec("specs/"+name+".ceiling.toml", sample.Source(t, name), o))
	}
	return Report{Version: "(devel)", On: "2026-11-25", Rules: catalog.Rules(), Runs: []Run{{Assessments: assessments}}}
}

func TestJSONSatisfiesItsSchema(t *testing.T) {
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	require.NoError(t, c.AddResource("https://dryfit.example/schema/check-1.json", bytes.NewReader(schema.OutputSchema())))
	published := c.MustCompile("https://dryfit.example/schema/check-1.json")
	for _, r := range []Report{examples(t), everyCeiling(t)} {
		var b bytes.Buffer
		require.NoError(t, Write(&b, r, JSON))
		var document any
		require.NoError(t, json.Unmarshal(b.Bytes(), &document))
		require.NoError(t, published.Validate(document))
	}
}

// All but the lines of verdict, of which each has all its totals.
func TestTextKeepsToEightyColumns(t *testing.T) {
	var b bytes.Buffer
	r := examples(t)
	r.Runs[0].Assessments = append(r.Runs[0].Assessments, everyCeiling(t).Runs[0].Assessments...)
	require.NoError(t, Write(&b, r, Text(false)))
	verdict := regexp.MustCompile(`^(PASS|PASS WITH NOTES|FAIL|COULD NOT CHECK): `)
	whole := regexp.MustCompile(`: (\d+ unreadable|.*\d+ held, (\d+ not computed, )?\d+ queried, .*\d+ referred, \d+ not checked( \([a-z, ]+\))?, \d+ assumed)$`)
	verdicts := 0
	for _, line := range strings.Split(b.String(), "\n") {
		assert.Equal(t, strings.TrimRight(line, " "), line)
		if verdict.MatchString(line) {
			verdicts++
			assert.Regexp(t, whole, line)
			continue
		}
		assert.LessOrEqual(t, uniseg.StringWidth(line), show.TextWidth, line)
	}
	assert.Equal(t, len(r.Runs[0].Assessments)+1, verdicts)
}

// What is assumed is counted by distinct keys, what is not checked by rules.
func TestCountsAreDistinct(t *testing.T) {
	for _, s := range examples(t).Runs[0].Assessments {
		keys, ids := map[string]bool{}, map[string]bool{}
		for _, a := range s.Assumed {
			keys[a.Key] = true
		}
		for _, n := range s.NotChecked {
			ids[n.Rule.ID] = true
		}
		assert.Equal(t, len(keys), s.Counts.Assumed, s.Path)
		assert.Equal(t, len(ids), s.Counts.NotChecked+s.Counts.Uncomputed, s.Path)
	}
}

func TestNumbersCarryNineDigits(t *testing.T) {
	b, err := json.Marshal(show.JSONNumber(1.0 / 3))
	require.NoError(t, err)
	assert.Equal(t, "0.333333333", string(b))
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"one two", "three", "a-word-that-is-wider", "four"}, show.Wrap("one two three a-word-that-is-wider four", 9))
	assert.Equal(t, []string{"漢字 漢", "字"}, show.Wrap("漢字 漢 字", 8), "wide letters take two columns")
	assert.Equal(t, []string{""}, show.Wrap("", 9))
}
