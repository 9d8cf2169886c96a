package strap

import (
	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var source = rules.Rule{
	ID:       "strap.source",
	Title:    "the strap's allowable load has a source",
	Why:      "A load that nobody stands behind is a guess, and the panel hangs on it.",
	Severity: rules.Query,
	Needs:    []string{"strap.allowable"},
	Basis: rules.Basis{
		Valid:  "any text counts as a source; whether it is a good one is for the reviewer",
		Source: cite.CommonPractice(),
	},
	Check: checkSource,
}

func checkSource(p *rules.Pass) {
	a := p.Ceiling.Strap.Allowable
	if a.Source.Get() != "" {
		return
	}
	p.Report(rules.Finding{
		At:   "strap.allowable",
		Text: p.Textf("the allowable load of %v names no source; state the test report or the calculation it comes from", quantity.Force(a.Load.Get())),
	})
}
