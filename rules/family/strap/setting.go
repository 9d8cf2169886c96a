package strap

import (
	"errors"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/result/hanging"
	"dryfit/spec/quantity"
)

func swings(err error) bool {
	var m *frame.MechanismError
	return errors.As(err, &m)
}

var setting = rules.Rule{
	ID:       "strap.setting",
	Title:    "a strap set a little long or short does not change its share much",
	Why:      "A stiff rib on hand-set straps never shares as computed: a millimetre can double one strap's force or take it away.",
	Severity: rules.Query,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"hanging.setting"},
	Limits: []rules.Limit{{
		Key: "share", Title: "change of a strap's force by setting, as a share of its force as first hung", Value: quantity.Share(0.5).Value(),
		Sense: rules.AtMost, Lowest: 0, Most: 10, Source: cite.CommonPractice(),
	}},
	Basis: frameBasis,
	Check: checkSetting,
}

func checkSetting(p *rules.Pass) {
	set, ok := rules.Hung(p, p.Results.Hanging().Set)
	if !ok {
		return
	}
	first, _ := rules.Hung(p, p.Results.Hanging().First)
	limit, by := p.Limit("share"), quantity.Length(p.Ceiling.Strap.Setting.Get())
	most, at := 0.0, 0
	for i, perMM := range set.PerMM {
		if first.Straps[i] == 0 && perMM == 0 {
			continue // slack however it is set, which strap.slack finds
		}
		if first.Straps[i] == 0 { // the worst of all, and no figure
			p.Report(rules.Finding{
				At: "strap.setting", Related: []string{"strap.stations", "rib.depth"},
				Text: p.Textf("strap %d carries nothing as first hung, and takes %v for each mm of its setting", i+1, quantity.Force(perMM)),
			})
			return
		}
		if share := perMM * 1000 * float64(by) / first.Straps[i]; share > most*(1+hanging.Alike) {
			most, at = share, i
		}
	}
	if most <= limit.SI {
		return
	}
	p.Report(rules.Finding{
		At: "strap.setting", Related: []string{"strap.stations", "rib.depth"},
		Text: p.Textf("strap %d, set %v long or short, changes by {measured} of its %v, %v for each mm; the most is {limit}",
			at+1, by, quantity.Force(first.Straps[at]), quantity.Force(set.PerMM[at])),
		Measured: quantity.Share(most).Value(), Bound: limit,
	})
}

var slack = rules.Rule{
	ID:       "strap.slack",
	Title:    "no strap goes slack",
	Why:      "A strap that hangs loose carries nothing, and its screws work out.",
	Severity: rules.Query,
	Needs:    []string{"strap.stations"},
	Basis:    frameBasis,
	Check:    checkSlack,
}

func checkSlack(p *rules.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	said := map[int]bool{}
	for _, c := range cases {
		for i, slack := range c.Slack {
			if slack && !said[i] {
				said[i] = true
				p.Report(rules.Finding{
					At: p.Ceiling.Strap.Stations.Place(i), Related: []string{"strap.setting"},
					Text: p.Textf("strap %d goes slack %s", i+1, c.Words()),
				})
			}
		}
	}
}

var sideways = rules.Rule{
	ID:       "strap.sideways",
	Title:    "what holds the ceiling sideways is referred to the engineer",
	Why:      "Straps hold a ceiling up and let it swing; the computation holds the rib at its crown, which nothing in the spec does.",
	Severity: rules.Refer,
	RefersTo: rules.ToEngineer,
	Basis:    rules.Basis{Valid: "always", Source: cite.CommonPractice()},
	Always:   true,
	Check: func(p *rules.Pass) {
		p.Report(rules.Finding{At: "strap", Text: "what holds the panels sideways, in use and in an earthquake, is referred to the engineer; the figures hold each rib at its crown"})
	},
}
