package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules"
	"dryfit/rules/layout"
	"dryfit/spec/quantity"
)

// at is a finding of a length against a limit.
func at(length, limit float64) rules.Finding {
	return rules.Finding{
		Severity: rules.Hold, Measured: quantity.Length(length).Value(),
		Bound: rules.Bound{Value: quantity.Length(limit).Value(), Name: "a.limit"},
	}
}

func TestSince(t *testing.T) {
	with := func(f rules.Finding, change func(*rules.Finding)) rules.Finding {
		change(&f)
		return f
	}
	held := at(0.130, 0.100)
	accepted := func(f *rules.Finding) { f.Accepted = &layout.Acceptance{} }
	for _, c := range []struct {
		name         string
		now, earlier rules.Finding
		want         rules.Baseline
	}{
		{"the same", held, held, rules.AlreadyThere},
		{"nearer the limit", at(0.110, 0.100), held, rules.AlreadyThere},
		{"further by less than half a percent of the limit", at(0.1304, 0.100), held, rules.AlreadyThere},
		{"further by more", at(0.1306, 0.100), held, rules.New},
		{"under a least, nearer", at(0.095, 0.100), at(0.090, 0.100), rules.AlreadyThere},
		{"under a least, further", at(0.089, 0.100), at(0.090, 0.100), rules.New},
		{"its own limit came nearer", at(0.130, 0.100), at(0.130, 0.125), rules.New},
		{"of a limit of nothing, further", at(0.0102, 0), at(0.010, 0), rules.New},
		{"of a limit of nothing, not", at(0.01004, 0), at(0.010, 0), rules.AlreadyThere},
		{"without a figure", rules.Finding{Severity: rules.Hold}, rules.Finding{Severity: rules.Hold}, rules.AlreadyThere},
		{"a query became a hold", held, with(held, func(f *rules.Finding) { f.Severity = rules.Query }), rules.New},
		{"a hold became a query", with(held, func(f *rules.Finding) { f.Severity = rules.Query }), held, rules.AlreadyThere},
		{"it was accepted, and is not any more", held, with(held, accepted), rules.New},
		{"it is accepted now", with(held, accepted), held, rules.AlreadyThere},
	} {
		assert.Equal(t, c.want, c.now.Since(c.earlier), c.name)
	}
}

// What a baseline had fails nothing, and both counts are told.
func TestVerdictAgainstABaseline(t *testing.T) {
	for _, c := range []struct {
		counts        rules.Counts
		plain, strict rules.Verdict
		text          string
	}{
		{rules.Counts{Held: 2, Queried: 1, Before: rules.Before{true, 2, 1, 0}}, rules.PassedWithNotes, rules.PassedWithNotes, "2 held, 1 queried, 0 referred, 0 not checked, 0 assumed; 0 new, 3 already there"},
		{rules.Counts{Held: 2, Before: rules.Before{true, 1, 0, 0}}, rules.Failed, rules.Failed, "2 held, 0 queried, 0 referred, 0 not checked, 0 assumed; 1 new, 1 already there"},
		{rules.Counts{Queried: 2, Before: rules.Before{true, 0, 1, 0}}, rules.PassedWithNotes, rules.Failed, "0 held, 2 queried, 0 referred, 0 not checked, 0 assumed; 1 new, 1 already there"},
		{rules.Counts{Uncomputed: 1, Before: rules.Before{true, 0, 0, 1}}, rules.PassedWithNotes, rules.PassedWithNotes, "0 held, 1 not computed, 0 queried, 0 referred, 0 not checked, 0 assumed; 0 new, 1 already there"},
		{rules.Counts{Uncomputed: 2, Before: rules.Before{true, 0, 0, 1}}, rules.Failed, rules.Failed, "0 held, 2 not computed, 0 queried, 0 referred, 0 not checked, 0 assumed; 1 new, 1 already there"},
		{rules.Counts{Referred: 1, Before: rules.Before{Compared: true}}, rules.Passed, rules.Passed, "0 held, 0 queried, 1 referred, 0 not checked, 0 assumed; 0 new, 0 already there"},
		{rules.Counts{Unreadable: 1, Before: rules.Before{Compared: true}}, rules.CouldNotCheck, rules.CouldNotCheck, "1 unreadable"},
	} {
		assert.Equal(t, c.plain, c.counts.Judge(false), c.text)
		assert.Equal(t, c.strict, c.counts.Judge(true), c.text)
		assert.Equal(t, c.text, c.counts.String())
	}
	sum := rules.Counts{Held: 1, Before: rules.Before{true, 1, 0, 0}}.Plus(rules.Counts{Held: 1, Queried: 1, Before: rules.Before{true, 0, 1, 0}})
	assert.Equal(t, rules.Failed, sum.Judge(false), "one of the holds is new")
	fresh, before := sum.Since()
	assert.Equal(t, [2]int{1, 2}, [2]int{fresh, before})
}
