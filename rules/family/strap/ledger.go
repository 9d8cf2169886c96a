package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var ledger = engine.Rule{
	ID:       "strap.ledger",
	Title:    "a packed ledger reaches under the foot",
	Why:      "A ledger that ends in the gap beside the panel carries nothing, and packing on a narrow edge slips or splits off. The straps then carry its load.",
	Severity: engine.Query,
	Needs:    []string{"ledger.projection"},
	Limits: []engine.Limit{{
		Key: "bearing", Title: "length of the foot's bearing", Value: quantity.Length(0.020).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "p − ((W + τ − s + q + f·k)/2 − o) ≥ bearing;  o = 0 for a plumb foot, d·sin φ for a radial one, d/sin φ for a level one",
		Symbols: []engine.Symbol{
			{Name: "p", Means: "projection of the ledger", Unit: "m"},
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "τ", Means: "its tolerance", Unit: "m"},
			{Name: "s", Means: "span", Unit: "m"},
			{Name: "q", Means: "tolerance of a panel", Unit: "m"},
			{Name: "f", Means: "tolerance of its form, at the crown", Unit: "m"},
			{Name: "k", Means: "increase of the arch's width for a decrease of its rise", Unit: "1"},
			{Name: "o", Means: "distance outward from the springing to the edge of the rib's sole", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
			{Name: "φ", Means: "slope at the springing", Unit: "1"},
		},
		Valid:  "the narrowest arch, in the middle of the widest room; packing cut to the sole, or to the intrados behind a plumb foot",
		Source: cite.Derivation("geometry of the gap beside the panel"),
	},
	Check: checkLedger,
}

func checkLedger(p *engine.Pass) {
	c := p.Ceiling
	if !c.Ledger.Packed.Get() {
		return
	}
	reach, limit := c.LedgerReach(), p.Limit("bearing")
	f := engine.Finding{At: "ledger.projection", Related: []string{"room.width", "vault.span", "springing.cut"}}
	switch {
	case reach <= 0:
		f.Text = "the ledger projects {measured} from the wall and the foot may be {limit} from the wall, so the ledger carries nothing, even if packed"
		f.Measured, f.Bound = quantity.Length(c.Ledger.Projection.Get()).Value(), p.Stated("room.width", quantity.Length(c.WidestGap()).Value())
	case reach < limit.SI:
		f.Text = "the foot bears on {measured} of the ledger with the room at its widest; the minimum is {limit}"
		f.Measured, f.Bound = quantity.Length(reach).Value(), limit
	default:
		return
	}
	f.Offers = []engine.Offer{{Key: "ledger.projection", Value: p.Above(c.WidestGap() + limit.SI)}}
	p.Report(f)
}
