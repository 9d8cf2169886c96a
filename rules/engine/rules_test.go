package engine_test

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/spec/quantity"
)

var ceiling = &layout.Ceiling{Units: quantity.Metric}

// finds is a rule that reports 13 mm against a limit of 12 mm.
func finds(most engine.Severity, source cite.Source, own engine.Severity) *engine.Rule {
	return reports(0.013, most, source, own)
}

// reports is one that reports another length.
func reports(length float64, most engine.Severity, source cite.Source, own engine.Severity) *engine.Rule {
	return &engine.Rule{
		ID: "test.rule", Title: "t", Why: "w", Severity: most,
		Limits: []engine.Limit{{
			Key: "most", Title: "t", Value: quantity.Length(0.012).Value(), Sense: engine.AtMost,
			Lowest: 0, Most: 1, Source: source,
		}},
		Basis: engine.Basis{Source: source},
		Check: func(p *engine.Pass) {
			p.Report(engine.Finding{
				At: "a", Severity: own, Text: "it is {measured}, over {limit}",
				Measured: quantity.Length(length).Value(), Bound: p.Limit("most"),
			})
		},
	}
}

func TestSeverityIsCappedByWhatTheLimitRestsOn(t *testing.T) {
	read := cite.NDS.At("a page")
	for _, c := range []struct {
		name   string
		most   engine.Severity
		source cite.Source
		own    engine.Severity
		want   engine.Severity
	}{
		{"a published limit may hold", engine.Hold, read, 0, engine.Hold},
		{"a derived one may", engine.Hold, cite.Derivation("statics"), 0, engine.Hold},
		{"one from memory may not", engine.Hold, read.FromMemory(), 0, engine.Query},
		{"nor may common practice", engine.Hold, cite.CommonPractice(), 0, engine.Query},
		{"a finding may say less", engine.Hold, read, engine.Note, engine.Note},
		{"but not more", engine.Note, read, engine.Hold, engine.Note},
		{"what is referred stays referred", engine.Refer, cite.CommonPractice(), engine.Note, engine.Refer},
		{"and a finding may refer", engine.Query, cite.CommonPractice(), engine.Refer, engine.Refer},
	} {
		out := engine.Run([]*engine.Rule{finds(c.most, c.source, c.own)}, ceiling, standards.BuiltIn(), engine.Means{})
		require.Len(t, out.Findings, 1)
		assert.Equal(t, c.want, out.Findings[0].Severity, c.name)
		assert.Equal(t, "it is 13mm, over 12mm", out.Findings[0].Text)
	}
}

// The last bits of a figure differ between processors, and no finding follows
// them; what is referred is referred all the same.
func TestAFigureAtItsLimitPasses(t *testing.T) {
	for _, c := range []struct {
		length float64
		most   engine.Severity
		want   int
	}{
		{math.Nextafter(0.012, 1), engine.Hold, 0},
		{0.012 * (1 + 1e-8), engine.Hold, 1},
		{math.Nextafter(0.012, 1), engine.Refer, 1},
	} {
		out := engine.Run([]*engine.Rule{reports(c.length, c.most, cite.CommonPractice(), 0)}, ceiling, standards.BuiltIn(), engine.Means{})
		assert.Len(t, out.Findings, c.want, "%v %v", c.length, c.most)
	}
}

func TestARuleWithoutItsKeysIsNotChecked(t *testing.T) {
	r := finds(engine.Hold, cite.CommonPractice(), 0)
	r.Needs = []string{"strap.stations"}
	out := engine.Run([]*engine.Rule{r}, ceiling, standards.BuiltIn(), engine.Means{})
	assert.Empty(t, out.Findings)
	require.Len(t, out.NotChecked, 1)
	assert.Equal(t, "strap.stations", out.NotChecked[0].Key)
}

func TestVerdict(t *testing.T) {
	for _, c := range []struct {
		counts        engine.Counts
		plain, strict engine.Verdict
		text          string
	}{
		{engine.Counts{}, engine.Passed, engine.Passed, "0 held, 0 queried, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{Referred: 3, Assumed: 5}, engine.Passed, engine.Passed, "0 held, 0 queried, 3 referred, 0 not checked, 5 assumed"},
		{engine.Counts{Noted: 1}, engine.PassedWithNotes, engine.PassedWithNotes, "0 held, 0 queried, 1 noted, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{NotChecked: 2, Referred: 1}, engine.PassedWithNotes, engine.PassedWithNotes, "0 held, 0 queried, 1 referred, 2 not checked, 0 assumed"},
		{engine.Counts{Accepted: 1}, engine.PassedWithNotes, engine.PassedWithNotes, "0 held, 0 queried, 1 accepted, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{Queried: 1}, engine.PassedWithNotes, engine.Failed, "0 held, 1 queried, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{Held: 1, Queried: 1}, engine.Failed, engine.Failed, "1 held, 1 queried, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{Uncomputed: 1}, engine.Failed, engine.Failed, "0 held, 1 not computed, 0 queried, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{Unreadable: 1, Held: 1}, engine.CouldNotCheck, engine.CouldNotCheck, "1 unreadable, 1 held, 0 queried, 0 referred, 0 not checked, 0 assumed"},
		{engine.Counts{Unreadable: 2}, engine.CouldNotCheck, engine.CouldNotCheck, "2 unreadable"},
		{engine.Counts{Held: 1, Queried: 3, Referred: 5, NotChecked: 29, Assumed: 41}, engine.Failed, engine.Failed, "1 held, 3 queried, 5 referred, 29 not checked, 41 assumed"},
		{engine.Counts{Held: 120000, Queried: 300000, Referred: 50000, NotChecked: 2900000, Assumed: 4100000}, engine.Failed, engine.Failed, "120000 held, 300000 queried, 50000 referred, 2900000 not checked, 4100000 assumed"},
	} {
		assert.Equal(t, c.plain, c.counts.Judge(false), c.text)
		assert.Equal(t, c.strict, c.counts.Judge(true), c.text)
		assert.Equal(t, c.text, c.counts.String())
	}
}

// family has one rule that is well formed; spoil makes it not so.
func family(spoil func(*engine.Rule), cases string) []engine.Family {
	r := *finds(engine.Hold, cite.NDS.At("a page"), 0)
	spoil(&r)
	return []engine.Family{{
		Name: "test", Title: "t", Rules: []engine.Rule{r},
		Cases: fstest.MapFS{"testdata/rule.txtar": {Data: []byte(cases)}},
	}}
}

const both = "-- fails.ceiling.toml --\n-- passes.ceiling.toml --\n"

func TestValidateRefuses(t *testing.T) {
	require.NoError(t, engine.Validate(family(func(*engine.Rule) {}, both)))
	for _, c := range []struct {
		spoil func(*engine.Rule)
		cases string
		want  string
	}{
		{func(r *engine.Rule) { r.ID = "Test.Rule" }, both, "malformed id"},
		{func(r *engine.Rule) { r.ID = "other.rule" }, both, "not of the family"},
		{func(r *engine.Rule) { r.Why = "" }, both, "no why"},
		{func(r *engine.Rule) { r.Severity = 0 }, both, "no severity"},
		{func(r *engine.Rule) { r.Check = nil }, both, "no check"},
		{func(r *engine.Rule) { r.Basis = engine.Basis{} }, both, "no basis"},
		{func(r *engine.Rule) { r.Basis.Source = cite.Source{Standing: cite.Read} }, both, "names no source"},
		{func(r *engine.Rule) { r.Basis.Formula = "a = b" }, both, "a formula without symbols"},
		{func(r *engine.Rule) { r.Basis.Symbols = []engine.Symbol{{Name: "x", Means: "m", Unit: "m"}} }, both, "is not in the formula"},
		{func(r *engine.Rule) { r.Limits[0].Source = cite.Source{} }, both, "has no source"},
		{func(r *engine.Rule) { r.Limits[0].Most = 0.001 }, both, "outside its physical range"},
		{func(r *engine.Rule) { r.Limits = append(r.Limits, r.Limits[0]) }, both, "is listed twice"},
		{func(*engine.Rule) {}, "-- fails.ceiling.toml --\n", "failing and passing"},
		{func(*engine.Rule) {}, "-- passes.ceiling.toml --\n", "failing and passing"},
	} {
		assert.ErrorContains(t, engine.Validate(family(c.spoil, c.cases)), c.want)
	}
	twice := family(func(*engine.Rule) {}, both)
	assert.ErrorContains(t, engine.Validate(append(twice, twice...)), "listed twice")
}

func TestOffersAreOnTheSafeSide(t *testing.T) {
	for _, units := range []quantity.System{quantity.Metric, quantity.Imperial} {
		p := &engine.Pass{Ceiling: &layout.Ceiling{Units: units}}
		for _, m := range []float64{0.0061, 0.0254, 0.1234, 0.0505, 1.5, 4.19375} {
			below, err := quantity.Parse(quantity.Metre, p.Below(m))
			require.NoError(t, err)
			above, err := quantity.Parse(quantity.Metre, p.Above(m))
			require.NoError(t, err)
			slack := 1e-9
			assert.True(t, below.SI <= m+slack && above.SI >= m-slack, "%v: %v, %v", m, below, above)
			assert.True(t, math.Abs(below.SI-m) < 0.0017 && math.Abs(above.SI-m) < 0.0017)
			assert.False(t, strings.Contains(p.Below(m), "e"))
			if units == quantity.Metric && m > 0.1 {
				assert.NotContains(t, p.Below(m), ".", "no fractions of a millimetre of what is long")
			}
		}
	}
}
