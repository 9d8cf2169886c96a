package install

import (
	"fmt"

	"dryfit/rules/engine"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var liftBalance = engine.Rule{
	ID:       "install.lift-balance",
	Title:    "the mass centre lies well between the lifts",
	Why:      "A panel whose mass centre is over one lift tips off it as soon as it leaves the floor.",
	Severity: engine.Hold,
	Needs:    []string{"lift.stations", "strap.stations"},
	Limits:   []engine.Limit{engine.TippingLimit()},
	Basis:    engine.TippingBasis("lift", "the panel level; each piece of a split arch in the position in which it hangs"),
	Check:    checkLiftBalance,
}

func checkLiftBalance(p *engine.Pass) {
	raised, ok := engine.Hung(p, p.Results.Hanging().Raised)
	if !ok || raised == nil {
		return
	}
	p.Unweighed()
	limit := p.Limit("margin")
	if raised.Tips() {
		p.Report(engine.Finding{
			At: "lift.stations",
			Text: p.Textf("the panel tips off its lifts%s: its mass centre is not between two lifts that each carry %v of its weight or more",
				under(raised.Piece), quantity.Share(hanging.Counts)),
		})
		return
	}
	if raised.Margin < limit.SI {
		p.Report(engine.Finding{
			At: "lift.stations", Severity: engine.Query,
			Text:     p.Textf("the tipping margin of the panel on its lifts%s is {measured}; the minimum is {limit}", under(raised.Piece)),
			Measured: quantity.Share(raised.Margin).Value(), Bound: limit,
		})
	}
}

// under names the piece of a split arch that lies on the lifts, from 1; 0 stands
// for a whole arch.
func under(piece int) string {
	if piece == 0 {
		return ""
	}
	return fmt.Sprintf(" under piece %d", piece)
}
