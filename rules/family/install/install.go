// Package install holds the rules on raising the panels.
package install

import (
	"embed"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "install", Title: "raising the panels", Cases: cases,
		Rules: []engine.Rule{liftShare, liftApart, liftBalance, liftReach, liftStowed, saddle, pass, tilt, order},
	}
}

var liftShare = engine.Rule{
	ID:       "install.lift-share",
	Title:    "each lift's share of the panel is within its capacity",
	Why:      "Lifts away from the panel's quarter points share its weight unevenly, and one of them can tip.",
	Severity: engine.Hold,
	Needs:    []string{"lift.capacity", "lift.stations", "strap.stations"},
	Figures:  []string{"hanging.raised.lift.1"},
	Basis: engine.Basis{
		Valid:  "the panel level and at the lift's load centre, for which the maker's plate states the capacity; each piece of a split arch in the position in which it hangs",
		Source: cite.Derivation("plane frame on the lifts, both edge ribs together"),
	},
	Check: checkLiftShare,
}

func checkLiftShare(p *engine.Pass) {
	raised, ok := engine.Hung(p, p.Results.Hanging().Raised)
	if !ok {
		return
	}
	if raised == nil {
		return
	}
	p.Unweighed()
	each := len(p.Ceiling.Lift.Stations.Get())
	capacity := p.Stated("lift.capacity", quantity.Mass(p.Ceiling.Lift.Capacity.Get()).Value())
	for i, force := range raised.Lifts {
		mass, heavy := p.AtMost(quantity.Mass(2 * force / quantity.Gravity).Value())
		if mass.SI <= capacity.SI {
			continue
		}
		p.Report(engine.Finding{
			At: "lift.capacity", Related: []string{"lift.stations"},
			Text:     p.Textf("lift %d%s takes {measured}%s; its capacity is {limit}", i%each+1, under(raised.Over(i, each)), heavy),
			Measured: mass, Bound: capacity,
		})
	}
}
