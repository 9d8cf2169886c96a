package strap

import (
	"errors"
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

// nan marks a limit that only standards give.
var nan = math.NaN()

// frameBasis is what the frame's figures rest on.
var frameBasis = engine.Basis{
	Valid: "one edge rib as a plane frame with bending, axial and shear strain, half the panel's weight on it, straps that carry only tension; " +
		"restrained sideways at the crown in the computation only; moduli that are averages for clear wood",
	Source: cite.Derivation("plane frame of at least 72 elements, checked against closed forms and a general-purpose finite element program"),
}

// envelopeBasis is what the worst of all cases rests on.
var envelopeBasis = engine.Basis{
	Valid: frameBasis.Valid + "; if the spec gives lifts, each lift lowered alone and all lifts lowered, with the straps fixed unloaded in the panel's shape on the lifts, each case also with one strap set long or short; each season, from the state of the wood when hung, also with one strap set long or short; " +
		"the effects of a season and of moving framing are not combined",
	Source: frameBasis.Source,
}

var holds = engine.Rule{
	ID:       "strap.holds",
	Title:    "the ribs hang on their straps without swinging, each piece by itself before it is joined",
	Why:      "A rib on one strap, or a piece whose mass centre is not between its straps, tips when the lifts let go.",
	Severity: engine.Hold,
	Needs:    []string{"strap.stations"},
	Basis:    frameBasis,
	Check:    checkHolds,
}

func checkHolds(p *engine.Pass) {
	err := p.Results.Hanging().Err()
	var needs *hanging.NeedsError
	var unstable *hanging.UnstableError
	switch {
	case err == nil:
		checkTips(p)
	case errors.As(err, &needs):
		p.Absent(needs.Key)
	case errors.As(err, &unstable):
		p.Report(engine.Finding{At: "strap.stations", Related: []string{"panels.around"}, Text: unstable.Error()})
	case swings(err):
		p.Report(engine.Finding{At: "strap.stations", Text: "the rib swings on its straps, which do not hold it in place"})
	default:
		p.Failed("strap.stations", err)
	}
}

var load = engine.Rule{
	ID:       "strap.load",
	Title:    "the greatest force of each strap is within its allowable load",
	Why:      "A panel hangs on its straps over people's heads. A stiff curved rib loads them unevenly.",
	Severity: engine.Hold,
	Needs:    []string{"strap.stations", "strap.allowable"},
	Figures:  []string{"strap.even-share", "hanging.worst"},
	Limits: []engine.Limit{{
		Key: "share", Title: "greatest force that a firm allows on one strap, whatever its allowable load",
		Value: quantity.Value{SI: nan, Unit: quantity.Newton}, Sense: engine.AtMost, Lowest: 0, Most: 1e5,
	}},
	Basis: envelopeBasis,
	Check: checkLoad,
}

func checkLoad(p *engine.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	p.Unweighed()
	force, n, in := hanging.Worst(cases)
	worst, heavy := p.AtMost(quantity.Force(force).Value())
	f := engine.Finding{
		At: "strap.allowable.load", Related: []string{p.Ceiling.Strap.Stations.Place(n - 1), "strap.stations", "strap.setting", "strap.hung"}, Measured: worst,
		Bound: p.Stated("strap.allowable.load", quantity.Force(p.Ceiling.Strap.Allowable.Load.Get()).Value()),
		Text:  p.Textf("strap %d carries {measured} %s%s; its allowable is {limit}", n, in.Words(), heavy),
	}
	if worst.SI > f.Bound.SI {
		p.Report(f)
	}
	if f.Bound = p.Limit("share"); f.Bound.Known() && worst.SI > f.Bound.SI {
		f.At, f.Text = "strap.stations", p.Textf("strap %d carries {measured} %s%s; the standards allow {limit}", n, in.Words(), heavy)
		p.Report(f)
	}
}
