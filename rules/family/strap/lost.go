package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var lost = engine.Rule{
	ID:       "strap.lost",
	Title:    "the remaining straps carry the panel when one strap fails",
	Why:      "A screw may not be driven fully, and its strap may fail later. The next strap must then hold.",
	Severity: engine.Query,
	RefersTo: engine.ToEngineer, // whether the panels must stay up at all
	Needs:    []string{"strap.stations", "strap.allowable"},
	Figures:  []string{"hanging.worst-lost"},
	Basis:    frameBasis,
	Check:    checkLost,
}

func checkLost(p *engine.Pass) {
	lost, ok := engine.Hung(p, p.Results.Hanging().Lost)
	if !ok {
		return
	}
	p.Unweighed()
	allowable := p.Stated("strap.allowable.load", quantity.Force(p.Ceiling.Strap.Allowable.Load.Get()).Value())
	cases, found := []*hanging.Case(nil), false
	for i := range lost {
		if lost[i].Straps == nil || lost[i].Tips() {
			found = true
			p.Report(engine.Finding{At: p.Ceiling.Strap.Stations.Place(i), Text: p.Textf("with strap %d lost the rib swings on the others", i+1)})
			continue
		}
		cases = append(cases, &lost[i])
	}
	force, n, in := hanging.Worst(cases)
	if most, heavy := p.AtMost(quantity.Force(force).Value()); in != nil && most.SI > allowable.SI {
		found = true
		p.Report(engine.Finding{
			At: "strap.allowable.load", Related: []string{p.Ceiling.Strap.Stations.Place(n - 1), "strap.stations"}, Measured: most, Bound: allowable,
			Text: p.Textf("%s strap %d carries {measured}%s; its allowable is {limit}", in.Words(), n, heavy),
		})
	}
	if found {
		p.Report(mustStay)
	}
}

// mustStay is referred where a lost strap brings the panels down, or nearly.
var mustStay = engine.Finding{
	At: "strap.stations", Severity: engine.Refer,
	Text: "whether the panels must stay up when one strap fails is referred to the engineer; the spec does not state it",
}
