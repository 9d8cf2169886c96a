// Package raise holds the rules on the raising plan: where the lifts stand, the
// hands that it takes, and whether a panel is ever secure without its lifts.
package raise

import (
	"embed"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/raising"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "raise", Title: "the raising plan", Cases: cases,
		Rules: []engine.Rule{mast, hands, secure},
	}
}

var hands = engine.Rule{
	ID:       "raise.hands",
	Title:    "the crew is large enough to lift the panel",
	Why:      "Dollies roll a panel. People lift it by hand to put it down on its feet, on blocks or on forks.",
	Severity: engine.Query,
	Figures:  []string{"panel.mass.most"},
	Basis: engine.Basis{
		Formula: "m ≤ n·k·m_1",
		Symbols: []engine.Symbol{
			{Name: "m", Means: "mass of the panel, at the upper end of the spread of its densities", Unit: "kg"},
			{Name: "n", Means: "people", Unit: "1"},
			{Name: "k", Means: "share of the sum of its members' masses that a team lifts, as in transit.weight", Unit: "1"},
			{Name: "m_1", Means: "mass that one person lifts, transit.weight.person", Unit: "kg"},
		},
		Valid: "level ground, good grip, hands below 1.75m, the upper limit of the equation in the " + cite.NIOSH94110.Title + "; crews with dollies; transit.weight makes this comparison for crews without", Source: cite.HSEL23.At("paragraph 120"),
	},
	Check: checkHands,
}

func checkHands(p *engine.Pass) {
	c := p.Ceiling
	if c.Crew.Aids.Get() == "none" {
		return // transit.weight asks for the same hands
	}
	p.Unweighed()
	one := p.Of("transit.weight", engine.PersonLimit())
	people, most := c.Crew.People.Get(), c.Panel.Most.Get()
	takes, limit := raising.Lifters(most, one.SI), one
	limit.Value = count(people)
	if takes <= people {
		return
	}
	p.Report(engine.Finding{
		At: "crew.people", Related: []string{"panels.along"},
		Text: p.Textf("the panel weighs %v at most and takes %d people to lift; the crew of %d lifts %v together; %s only roll a panel",
			quantity.Mass(most), takes, people, quantity.Mass(raising.Together(people, one.SI)), c.Crew.Aids.Get()),
		Measured: count(takes), Bound: limit,
	})
}

func count(people int) quantity.Value {
	return quantity.Value{SI: float64(people), Unit: quantity.One}
}
