package report

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
)

// against is a report on a spec that had some findings at main and has one hold
// and more besides now, and on a file that is none.
func against(t *testing.T) Report {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25", Strict: true}
	src := string(sample.Source(t, "reading-room"))
	now := review.Spec("specs/hall.ceiling.toml", []byte(strings.Replace(src, `depth        = "60mm"`, `depth = "20mm"`, 1)), o)
	solve := engine.NotChecked{Rule: o.Rules[0], Key: "strap.stations", Why: "no solution", Failed: true}
	now.NotChecked = append(now.NotChecked, solve, engine.NotChecked{Rule: o.Rules[1], Key: "rib.depth", Why: "no end", Failed: true})
	earlier := review.Spec("specs/hall.ceiling.toml", []byte(src), o)
	earlier.NotChecked = append(earlier.NotChecked, solve)
	now.Against(earlier, o)
	torn := review.Spec("specs/torn.ceiling.toml", []byte("dryfit = 1\nroom = 3\n"), o)
	torn.Against(nil, o)
	return Report{Version: "1.2.3", On: o.On, Strict: true, Against: "main", Rules: o.Rules, Runs: []Run{{Assessments: []*review.Assessment{now, torn}}}}
}

func outputSchema(t *testing.T, part string) *jsonschema.Schema {
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	const id = "https://dryfit.example/schema/check-1.json"
	require.NoError(t, c.AddResource(id, bytes.NewReader(schema.OutputSchema())))
	return c.MustCompile(id + part)
}

// Every format says of which revision the baseline is, of each finding whether it
// had it, and how many are new and how many not.
func TestBaselineInEveryFormat(t *testing.T) {
	r := against(t)
	fresh, before := r.Runs[0].Counts().Since()
	require.Positive(t, fresh)
	require.Positive(t, before)
	counts := r.Runs[0].Assessments[0].Counts.String()
	require.Contains(t, counts, " new, ")

	text := string(written(t, func(b *bytes.Buffer) error { return Write(b, r, Text(false)) }))
	assert.Contains(t, text, ", against the findings at main\n")
	assert.Contains(t, text, "FAIL: "+counts)
	assert.Regexp(t, `(?m)^query .*, already there$`, text)
	assert.Regexp(t, `(?m)^query .*, new$`, text)
	assert.Regexp(t, `(?m)^refer .*, already there$`, text, "what is referred is always printed")
	assert.Contains(t, text, "could not be computed, already there: no\n")

	markdown := string(written(t, func(b *bytes.Buffer) error { return Write(b, r, Markdown) }))
	assert.Contains(t, markdown, "against the findings at `main`: ")
	assert.Regexp(t, `(?m)^- line \d+, new, `, markdown)
	assert.Regexp(t, `(?m)^- line \d+, already there, `, markdown)

	notes := string(written(t, func(b *bytes.Buffer) error { return Write(b, r, Annotations) }))
	assert.Regexp(t, `(?m)^::warning .*title=query [a-z.-]+%2C new::`, notes)
	assert.Regexp(t, `(?m)^::notice .*title=query [a-z.-]+%2C already there::`, notes)
	assert.NotRegexp(t, `(?m)^::(warning|error) .*already there`, notes)
	assert.Regexp(t, `(?m)^::error .*title=hold file.shape%2C new::`, notes)
}

func TestBaselineInJSON(t *testing.T) {
	r := against(t)
	fresh, before := r.Runs[0].Counts().Since()
	out := written(t, func(b *bytes.Buffer) error { return Write(b, r, JSON) })
	var document any
	require.NoError(t, json.Unmarshal(out, &document))
	assert.NoError(t, outputSchema(t, "").Validate(document))
	var back struct {
		jsonReport
		Runs []struct {
			jsonRun
			Files []jsonFile `json:"files"`
		} `json:"runs"`
	}
	require.NoError(t, json.Unmarshal(out, &back))
	assert.Equal(t, "main", back.Against)
	assert.Equal(t, &jsonBaseline{fresh, before}, back.Runs[0].Baseline)
	told := map[string]int{}
	for _, f := range back.Runs[0].Files[0].Findings {
		if f.Severity == "hold" || f.Severity == "query" {
			told[f.Baseline]++
		}
		assert.NotEmpty(t, f.Baseline)
	}
	for _, n := range back.Runs[0].Files[0].NotChecked {
		if n.Failed {
			told[n.Baseline]++
		}
	}
	assert.Equal(t, map[string]int{"new": fresh, "already there": before}, told)
	line := outputSchema(t, "#/$defs/line")
	for text := range bytes.Lines(written(t, func(b *bytes.Buffer) error { return Write(b, r, JSONLines) })) {
		require.NoError(t, json.Unmarshal(text, &document))
		assert.NoError(t, line.Validate(document))
		assert.Contains(t, string(text), `"against":"main"`)
	}
	for _, without := range [][]byte{written(t, func(b *bytes.Buffer) error { return Write(b, full(t), JSON) }), sarifOf(t, full(t))} {
		assert.False(t, bytes.Contains(without, []byte(`"baseline`)) || bytes.Contains(without, []byte(`"against"`)))
	}
}

func TestBaselineInSARIF(t *testing.T) {
	r := against(t)
	var log any
	require.NoError(t, json.Unmarshal(sarifOf(t, r), &log))
	assert.NoError(t, oasis(t).Validate(log))
	states := map[string]int{}
	run := logOf(t, r)
	for _, result := range run.Results {
		states[result.Baseline]++
	}
	assert.Len(t, states, 2)
	assert.Positive(t, states["new"])
	assert.Positive(t, states["unchanged"])
	assert.Equal(t, "main", run.Properties["against"])
	fresh, before := r.Runs[0].Counts().Since()
	assert.EqualValues(t, fresh, run.Properties["new"])
	assert.EqualValues(t, before, run.Properties["alreadyThere"])
}

func TestBaselineInJUnit(t *testing.T) {
	r := against(t)
	var back junitReport
	require.NoError(t, xml.Unmarshal(written(t, func(b *bytes.Buffer) error { return Write(b, r, JUnit) }), &back))
	suite := back.Suites[0]
	assert.Contains(t, suite.Properties, junitProperty{"baseline", "main"})
	failing := map[string]bool{}
	for _, f := range r.Runs[0].Assessments[0].Findings {
		if f.Baseline == engine.New && (f.Severity == engine.Hold || f.Severity == engine.Query) {
			failing[f.Rule.ID] = true
		}
	}
	assert.Len(t, failing, suite.Failures)
	assert.Equal(t, 1, suite.Errors, "of two figures that could not be computed one is new")
	assert.Regexp(t, `(?m)^query .*, already there: `, suite.Out)
	for _, c := range suite.Cases {
		if c.Skipped != nil && strings.Contains(c.Skipped.Text, "already there") {
			return
		}
	}
	t.Error("the figure that could not be computed before either is skipped")
}
