package transit

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/raising"
	"dryfit/spec/quantity"
)

var weight = engine.Rule{
	ID:       "transit.weight",
	Title:    "the panel is light enough for the people who carry it",
	Why:      "People who carry too much drop the load.",
	Severity: engine.Query,
	Figures:  []string{"panel.mass.most"},
	Limits:   []engine.Limit{engine.PersonLimit()},
	Basis: engine.Basis{
		Formula: "m ≤ n·k·m_1",
		Symbols: []engine.Symbol{
			{Name: "m", Means: "mass of the panel, at the upper end of the spread of its densities", Unit: "kg"},
			{Name: "n", Means: "people", Unit: "1"},
			{Name: "k", Means: "share of the sum of its members' masses that a team lifts: 2/3 for two people, 1/2 for three; 1/2 for more, for which the source gives no share", Unit: "1"},
			{Name: "m_1", Means: "mass that one person lifts", Unit: "kg"},
		},
		Valid: "level ground, good grip; not overhead, not on stairs", Source: cite.HSEL23.At("paragraph 120"),
	},
	Check: checkWeight,
}

func checkWeight(p *engine.Pass) {
	p.Unweighed()
	c, limit := p.Ceiling, p.Limit("person")
	people := c.Crew.People.Get()
	together := limit
	together.Value = quantity.Mass(raising.Together(people, limit.SI)).Value()
	if people > 1 {
		together.Source += "; what a team manages: " + cite.HSEL23.At("paragraph 120").String()
	}
	most := c.Panel.Most.Get()
	if most <= together.SI {
		return
	}
	severity, aids := engine.Query, ""
	if c.Crew.Aids.Get() != "none" {
		severity, aids = engine.Note, " without their "+c.Crew.Aids.Get()
	}
	p.Report(engine.Finding{
		At: "crew.people", Related: []string{"crew.aids", "panels.along"}, Severity: severity,
		Text:     p.Textf("the panel weighs {measured} at most (nominally %v); %d people carry {limit} together%s", quantity.Mass(c.Panel.Mass.Get()), people, aids),
		Measured: quantity.Mass(most).Value(), Bound: together,
	})
}
