package strap

import (
	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var ledger = rules.Rule{
	ID:       "strap.ledger",
	Title:    "a ledger that is packed to bear reaches under the foot",
	Why:      "A ledger that ends in the gap beside the panel bears nothing, and the straps carry what it was meant to.",
	Severity: rules.Query,
	Needs:    []string{"ledger.projection"},
	Basis: rules.Basis{
		Valid:  "the panel in the middle of the room at its widest, feet cut plumb",
		Source: cite.Derivation("geometry of the gap beside the panel"),
	},
	Check: func(p *rules.Pass) {
		l := p.Ceiling.Ledger
		if !l.Packed.Get() || p.Ceiling.LedgerReaches() {
			return
		}
		p.Report(rules.Finding{
			At: "ledger.projection", Related: []string{"room.width", "vault.span"},
			Text:     p.Textf("the ledger comes {measured} from the wall, and the gap beside the panel may be {limit}: packed or not, it bears nothing"),
			Measured: quantity.Length(l.Projection.Get()).Value(),
			Bound:    p.Stated("room.width", quantity.Length(p.Ceiling.WidestGap()).Value()),
		})
	},
}
