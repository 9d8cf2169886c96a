package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// at is a finding of a length against a limit.
func at(length, limit float64) engine.Finding {
	return engine.Finding{
		Severity: engine.Hold, Measured: quantity.Length(length).Value(),
		Bound: engine.Bound{Value: quantity.Length(limit).Value(), Name: "a.limit"},
	}
}

func TestSince(t *testing.T) {
	with := func(f engine.Finding, change func(*engine.Finding)) engine.Finding {
		change(&f)
		return f
	}
	held := at(0.130, 0.100)
	accepted := func(f *engine.Finding) { f.Accepted = &layout.Acceptance{} }
	for _, c := range []struct {
		name         string
		now, earlier engine.Finding
		want         engine.Baseline
	}{
		{"the same", held, held, engine.AlreadyThere},
		{"nearer the limit", at(0.110, 0.100), held, engine.AlreadyThere},
		{"further by less than half a percent of the limit", at(0.1304, 0.100), held, engine.AlreadyThere},
		{"further by more", at(0.1306, 0.100), held, engine.New},
		{"under a least, nearer", at(0.095, 0.100), at(0.090, 0.100), engine.AlreadyThere},
		{"under a least, further", at(0.089, 0.100), at(0.090, 0.100), engine.New},
		{"its own limit came nearer", at(0.130, 0.100), at(0.130, 0.125), engine.New},
		{"of a limit of nothing, further", at(0.0102, 0), at(0.010, 0), engine.New},
		{"of a limit of nothing, not", at(0.01004, 0), at(0.010, 0), engine.AlreadyThere},
		{"without a figure", engine.Finding{Severity: engine.Hold}, engine.Finding{Severity: engine.Hold}, engine.AlreadyThere},
		{"a query became a hold", held, with(held, func(f *engine.Finding) { f.Severity = engine.Query }), engine.New},
		{"a hold became a query", with(held, func(f *engine.Finding) { f.Severity = engine.Query }), held, engine.AlreadyThere},
		{"it was accepted, and is not any more", held, with(held, accepted), engine.New},
		{"it is accepted now", with(held, accepted), held, engine.AlreadyThere},
	} {
		assert.Equal(t, c.want, c.now.Since(c.earlier), c.name)
	}
}

// What a baseline had fails nothing, and both counts are told.
func TestVerdictAgainstABaseline(t *testing.T) {
	for _, c := range []struct {
		counts        engine.Counts
		plain, strict engine.Verdict
		text          string
	}{
		{engine.Counts{Held: 2, Queried: 1, Before: engine.Before{true, 2, 1, 0}}, engine.PassedWithNotes, engine.PassedWithNotes, "2 held, 1 queried, 0 referred, 0 not checked, 0 assumed; 0 new, 3 already there"},
		{engine.Counts{Held: 2, Before: engine.Before{true, 1, 0, 0}}, engine.Failed, engine.Failed, "2 held, 0 queried, 0 referred, 0 not checked, 0 assumed; 1 new, 1 already there"},
		{engine.Counts{Queried: 2, Before: engine.Before{true, 0, 1, 0}}, engine.PassedWithNotes, engine.Failed, "0 held, 2 queried, 0 referred, 0 not checked, 0 assumed; 1 new, 1 already there"},
		{engine.Counts{Uncomputed: 1, Before: engine.Before{true, 0, 0, 1}}, engine.PassedWithNotes, engine.PassedWithNotes, "0 held, 1 not computed, 0 queried, 0 referred, 0 not checked, 0 assumed; 0 new, 1 already there"},
		{engine.Counts{Uncomputed: 2, Before: engine.Before{true, 0, 0, 1}}, engine.Failed, engine.Failed, "0 held, 2 not computed, 0 queried, 0 referred, 0 not checked, 0 assumed; 1 new, 1 already there"},
		{engine.Counts{Referred: 1, Before: engine.Before{Compared: true}}, engine.Passed, engine.Passed, "0 held, 0 queried, 1 referred, 0 not checked, 0 assumed; 0 new, 0 already there"},
		{engine.Counts{Unreadable: 1, Before: engine.Before{Compared: true}}, engine.CouldNotCheck, engine.CouldNotCheck, "1 unreadable"},
	} {
		assert.Equal(t, c.plain, c.counts.Judge(false), c.text)
		assert.Equal(t, c.strict, c.counts.Judge(true), c.text)
		assert.Equal(t, c.text, c.counts.String())
	}
	sum := engine.Counts{Held: 1, Before: engine.Before{true, 1, 0, 0}}.Plus(engine.Counts{Held: 1, Queried: 1, Before: engine.Before{true, 0, 1, 0}})
	assert.Equal(t, engine.Failed, sum.Judge(false), "one of the holds is new")
	fresh, before := sum.Since()
	assert.Equal(t, [2]int{1, 2}, [2]int{fresh, before})
}
