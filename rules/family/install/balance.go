package install

import (
	"fmt"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/result/hanging"
	"dryfit/spec/quantity"
)

var liftBalance = rules.Rule{
	ID:       "install.lift-balance",
	Title:    "the mass centre lies well between the lifts",
	Why:      "A panel whose weight is over one lift tips off it as soon as it leaves the floor.",
	Severity: rules.Hold,
	Needs:    []string{"lift.stations", "strap.stations"},
	Limits: []rules.Limit{{
		Key: "margin", Title: "tipping margin", Value: quantity.Share(0.1).Value(),
		Sense: rules.AtLeast, Lowest: 0, Most: 0.5, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{
		Formula: "min(c − l, r − c)/(r − l)",
		Symbols: []rules.Symbol{
			{Name: "c", Means: "place of the panel's mass centre across the span", Unit: "m"},
			{Name: "l", Means: "place of the first lift that carries 0.5% of the weight or more", Unit: "m"},
			{Name: "r", Means: "place of the last such lift", Unit: "m"},
		},
		Valid:  "the panel level; each piece of a split arch as it hangs",
		Source: cite.Derivation("balance of moments about a lift"),
	},
	Check: checkLiftBalance,
}

func checkLiftBalance(p *rules.Pass) {
	raised, ok := rules.Hung(p, p.Results.Hanging().Raised)
	if !ok || raised == nil {
		return
	}
	limit := p.Limit("margin")
	if raised.Tips() {
		p.Report(rules.Finding{
			At: "lift.stations",
			Text: p.Textf("the panel tips off its lifts%s: its mass centre is not between two lifts that each carry %v of its weight or more",
				under(raised, raised.Piece), quantity.Share(hanging.Counts)),
		})
		return
	}
	if raised.Margin < limit.SI {
		p.Report(rules.Finding{
			At: "lift.stations", Severity: rules.Query,
			Text:     p.Textf("the tipping margin of the panel on its lifts%s is {measured}; the least is {limit}", under(raised, raised.Piece)),
			Measured: quantity.Share(raised.Margin).Value(), Bound: limit,
		})
	}
}

// under names the piece of a split arch that lies on the lifts.
func under(raised *hanging.Case, piece int) string {
	if raised.Piece == 0 {
		return ""
	}
	return fmt.Sprintf(" under piece %d", piece)
}
