package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var access = engine.Rule{
	ID:       "strap.access",
	Title:    "someone can reach the end of each strap that is fixed last",
	Why:      "The crew fixes one end of each strap to the panel on the floor, and the other end when the panel is up. The panel is then between the crew and that end.",
	Severity: engine.Hold,
	Needs:    []string{"strap", "room.access"},
	Limits: []engine.Limit{
		{
			Key: "hand", Title: "gap at the near end wall that lets a hand with a driver through", Value: quantity.Length(0.1).Value(),
			Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
		},
		{
			Key: "opening", Title: "opening at the near end wall through which a person works", Value: quantity.Length(0.4).Value(),
			Sense: engine.AtLeast, Lowest: 0, Most: 5, Source: cite.CommonPractice(),
		},
		{
			Key: "reach", Title: "reach of an arm over a panel from its open side", Value: quantity.Length(0.7).Value(),
			Sense: engine.AtMost, Lowest: 0, Most: 10, Source: cite.CommonPractice(),
		},
	},
	Basis: engine.Basis{
		Formula: "g ≥ hand, g ≥ opening, l − w/2 ≤ reach",
		Symbols: []engine.Symbol{
			{Name: "g", Means: "gap at the near end wall, beside the last panel; if close.first_gap is absent, the room's length less the vault's", Unit: "m"},
			{Name: "l", Means: "length of a panel", Unit: "m"},
			{Name: "w", Means: "width of a rib; a panel's edge has half of it", Unit: "m"},
			{Name: "hand", Means: "least gap for a hand; if the gap is smaller, the last panel's straps can't be reached, and the finding is a hold", Unit: "m"},
			{Name: "opening", Means: "least opening for a person; if the gap is smaller, the finding is a query", Unit: "m"},
			{Name: "reach", Means: "greatest reach of an arm", Unit: "m"},
		},
		Valid:  "panels raised one by one from the far end, each open on the side of the next panel until that one is up; no access from above. The sizes for a hand, an arm and a body are common practice",
		Source: cite.Derivation("the order of the panels: none follows the last one, so it has no open side"),
	},
	Check: checkAccess,
}

func checkAccess(p *engine.Pass) {
	c := p.Ceiling
	if c.Room.Access.Get() == "above" {
		return
	}
	gap := max(0, c.Room.Length.Get()-c.BuiltLength()-c.Close.FirstGap.Get())
	related := []string{"strap.fixing", "close.first_gap", "room.length"}
	switch opening := p.Limit("opening"); {
	case gap < p.Limit("hand").SI:
		// No bound: that the last panel has no open side is derived, and holds
		// by itself.
		p.Report(engine.Finding{
			At: "room.access", Related: related,
			Text: p.Textf("nobody can get above the ceiling, and the only opening at the last panel is a gap of %v at the near end wall; a hand with a driver needs %v, so nobody can reach the strap ends that are fixed last", quantity.Length(gap), quantity.Length(p.Limit("hand").SI)),
		})
	case gap < opening.SI:
		p.Report(engine.Finding{
			At: "room.access", Related: related,
			Text:     "nobody can get above the ceiling, and the straps of the last panel are fixed through a gap of {measured} at the near end wall; the minimum is {limit}",
			Measured: quantity.Length(gap).Value(), Bound: opening,
		})
	}
	if reach, far := p.Limit("reach"), c.Panel.Length.Get()-c.Rib.Width.Get()/2; far > reach.SI {
		p.Report(engine.Finding{
			At: "room.access", Related: []string{"panels.along"}, Severity: engine.Query,
			Text:     "nobody can get above the ceiling, and the straps of a panel's far edge are {measured} from its open side; an arm reaches {limit}",
			Measured: quantity.Length(far).Value(), Bound: reach,
		})
	}
}
