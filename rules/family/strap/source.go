package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var source = engine.Rule{
	ID:       "strap.source",
	Title:    "the strap's allowable load has a source",
	Why:      "The panel hangs on the allowable load. A load without a source can't be checked.",
	Severity: engine.Query,
	Needs:    []string{"strap.allowable"},
	Basis: engine.Basis{
		Valid:  "any text counts as a source; whether it is a good one is for the reviewer",
		Source: cite.CommonPractice(),
	},
	Check: checkSource,
}

func checkSource(p *engine.Pass) {
	a := p.Ceiling.Strap.Allowable
	if a.Source.Get() != "" {
		return
	}
	p.Report(engine.Finding{
		At:   "strap.allowable",
		Text: p.Textf("the allowable load of %v has no source. State its test report or calculation", quantity.Force(a.Load.Get())),
	})
}
