package strap

import (
	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var load = rules.Rule{
	ID:       "strap.load",
	Title:    "each strap's share of the panel is within its allowable load",
	Why:      "A panel hangs on its straps over people's heads.",
	Severity: rules.Hold,
	Needs:    []string{"strap.stations", "strap.allowable"},
	Reads: []string{
		"vault.profile", "vault.span", "vault.rise", "vault.length", "grid.around", "grid.along", "panels.along",
		"rib.species", "rib.width", "rib.depth", "rail.species", "rail.width", "rail.depth",
		"skin.material", "skin.thickness", "skin.layers", "climate.shop",
	},
	Figures: []string{"strap.even-share"},
	Limits: []rules.Limit{{
		Key: "share", Title: "greatest share that a firm allows on one strap, whatever its allowable",
		Value: quantity.Value{SI: nan, Unit: quantity.Newton}, Sense: rules.AtMost, Lowest: 0, Most: 1e5,
	}},
	Basis: rules.Basis{
		Formula: "F = m·g / (2·n)",
		Symbols: []rules.Symbol{
			{Name: "F", Means: "even share of one strap", Unit: "N"},
			{Name: "m", Means: "mass of the panel", Unit: "kg"},
			{Name: "g", Means: "standard gravity, 9.80665", Unit: "m/s²"},
			{Name: "n", Means: "straps on each of the panel's two edge ribs", Unit: "1"},
		},
		Valid:  "an even share: a stiff rib on several straps loads them unevenly, so the true force on one of them is higher",
		Source: cite.Derivation("statics"),
	},
	Check: checkLoad,
}

func checkLoad(p *rules.Pass) {
	c := p.Ceiling
	share := quantity.Force(c.EvenShare()).Value()
	allowable := p.Stated("strap.allowable.load", c.Spec.Strap.Allowable.Load.Value())
	if share.SI > allowable.SI {
		p.Report(rules.Finding{
			At:       "strap.allowable.load",
			Related:  []string{"strap.stations", "grid.along"},
			Text:     p.Textf("each strap carries {measured} of the panel's %v, shared evenly; its allowable is {limit}", quantity.Mass(c.Panel.Mass)),
			Measured: share,
			Bound:    allowable,
		})
	}
	if house := p.Limit("share"); house.Known() && share.SI > house.SI {
		p.Report(rules.Finding{
			At:       "strap.stations",
			Text:     p.Textf("each strap carries {measured} of the panel's %v, shared evenly; the standards allow {limit}", quantity.Mass(c.Panel.Mass)),
			Measured: share,
			Bound:    house,
		})
	}
}
