package strap

import (
	"errors"
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

func swings(err error) bool {
	var m *frame.MechanismError
	return errors.As(err, &m)
}

var setting = engine.Rule{
	ID:       "strap.setting",
	Title:    "a small error in a strap's setting changes its force little",
	Why:      "Straps set by hand never share a stiff rib's weight as computed. One millimetre can double a strap's force or remove it.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"hanging.setting"},
	Limits: []engine.Limit{{
		Key: "share", Title: "change of a strap's force by setting, as a share of its force as first hung", Value: quantity.Share(0.5).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 10, Source: cite.CommonPractice(),
	}},
	Basis: frameBasis,
	Check: checkSetting,
}

func checkSetting(p *engine.Pass) {
	set, ok := engine.Hung(p, p.Results.Hanging().Set)
	if !ok {
		return
	}
	first, _ := engine.Hung(p, p.Results.Hanging().First)
	limit, by := p.Limit("share"), quantity.Length(p.Ceiling.Strap.Setting.Get())
	most, at := changeBySetting(first.Straps, set.Changes)
	f := engine.Finding{At: "strap.setting", Related: []string{p.Ceiling.Strap.Stations.Place(at), "strap.stations", "rib.depth"}}
	switch {
	case math.IsInf(most, 1): // the worst of all, and no figure
		f.Text = p.Textf("%v of setting makes strap %d carry %v; the strap carries nothing as first hung", by, at+1, quantity.Force(set.Changes[at].Most))
	case most > limit.SI:
		f.Text = p.Textf("%v of setting changes the force in strap %d by %v, {measured} of its %v; the limit is {limit}",
			by, at+1, quantity.Force(set.Changes[at].Most), quantity.Force(first.Straps[at]))
		f.Measured, f.Bound = quantity.Share(most).Value(), limit
	default:
		return
	}
	p.Report(f)
}

// changeBySetting is the greatest change of a strap's force by its setting, as
// solved and as a share of its force as first hung, and the strap's place. It is
// infinite of the first strap that carries nothing until it is set. One that is
// slack however it is set is left to strap.slack.
func changeBySetting(forces []float64, changes []hanging.Change) (most float64, at int) {
	for i, change := range changes {
		if forces[i] == 0 && change.Most != 0 {
			return math.Inf(1), i
		}
		if share := change.Most / forces[i]; forces[i] != 0 && share > most*(1+hanging.Alike) {
			most, at = share, i
		}
	}
	return most, at
}

var slack = engine.Rule{
	ID:       "strap.slack",
	Title:    "no strap goes slack",
	Why:      "A slack strap carries nothing, and its screws work loose.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations"},
	Basis:    envelopeBasis,
	Check:    checkSlack,
}

func checkSlack(p *engine.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	said := map[int]bool{}
	for _, c := range cases {
		if c.Kind == hanging.LiftDown {
			continue // a strap over a lift that is left waits for it to go
		}
		for i, slack := range c.Slack {
			if slack && !said[i] {
				said[i] = true
				p.Report(engine.Finding{
					At: p.Ceiling.Strap.Stations.Place(i), Related: []string{"strap.setting", "strap.hung"},
					Text: p.Textf("strap %d goes slack %s", i+1, c.Words()),
				})
			}
		}
	}
}

var sideways = engine.Rule{
	ID:       "strap.sideways",
	Title:    "what holds the ceiling sideways is referred to the engineer",
	Why:      "Straps hold a ceiling up but let it swing. The computation restrains the rib sideways at its crown, but nothing in the spec does.",
	Severity: engine.Refer,
	RefersTo: engine.ToEngineer,
	Basis:    engine.Basis{Valid: "always", Source: cite.CommonPractice()},
	Always:   true,
	Check: func(p *engine.Pass) {
		p.Report(engine.Finding{At: "strap", Text: "what holds the panels sideways, in use and in an earthquake, is referred to the engineer; the computation restrains each rib at its crown"})
	},
}
