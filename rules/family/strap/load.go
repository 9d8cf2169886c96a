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
	Valid: "one edge rib as a plane frame with bending, axial and shear strain, half the panel's weight on it, straps that only pull; " +
		"held sideways at the crown by the computation alone; moduli are averages of clear wood",
	Source: cite.Derivation("plane frame of at least 72 elements, held to closed forms and to a general-purpose finite element program"),
}

// envelopeBasis is what the worst of all cases rests on.
var envelopeBasis = engine.Basis{
	Valid: frameBasis.Valid + "; where there are lifts, each lift down alone and all down, from straps fixed unloaded in the shape on the lifts, each also with one strap set long or short; each season alone and with one strap set long or short, from the state of the wood when hung; " +
		"a season and framing that moves are not added to each other",
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
		p.Report(engine.Finding{At: "strap.stations", Text: "the rib swings on its straps: " + err.Error()})
	default:
		p.Failed("strap.stations", err)
	}
}

var load = engine.Rule{
	ID:       "strap.load",
	Title:    "each strap's force at its worst is within its allowable load",
	Why:      "A panel hangs on its straps over people's heads. A stiff curved rib loads them unevenly.",
	Severity: engine.Hold,
	Needs:    []string{"strap.stations", "strap.allowable"},
	Figures:  []string{"strap.even-share", "hanging.worst"},
	Limits: []engine.Limit{{
		Key: "share", Title: "greatest force that a firm allows on one strap, whatever its allowable",
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
