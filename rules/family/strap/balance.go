package strap

import (
	"fmt"

	"dryfit/rules/engine"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var balance = engine.Rule{
	ID:       "strap.balance",
	Title:    "the mass centre lies well between the straps",
	Why:      "A sheet that is 15% heavier than stated, or one luminaire, moves the mass centre. A rib that is balanced on one strap then tips.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations"},
	Limits:   []engine.Limit{engine.TippingLimit()},
	Basis: engine.TippingBasis("support", "as first hung; each piece alone; with packed ledgers, also at their measured seats; and with one strap lost. "+
		"With a strap set long or short, or with moving framing, there is no tipping margin, because slack straps take load again. "+
		"A split arch has a margin for each piece before the pieces are joined, and one for the whole arch afterwards. "+
		"Joined pieces lean on each other through the hinges at the seams; strap.holds and strap.lost report an arch that folds there"),
	Check: checkBalance,
}

// checkBalance finds the least margin of the states that the rib is meant to
// hang in, and the least with a strap lost. A rib that tips is left to
// strap.holds and strap.lost.
func checkBalance(p *engine.Pass) {
	h := p.Results.Hanging()
	first, ok := engine.Hung(p, h.First)
	if !ok {
		return
	}
	p.Unweighed()
	cases := []*hanging.Case{&first.Case}
	for _, s := range []hanging.Solved[*hanging.Case]{h.Alone, h.Packed} {
		if c, ok := engine.Hung(p, s); ok && c != nil {
			cases = append(cases, c)
		}
	}
	if seated, ok := engine.Hung(p, h.Seated); ok {
		for i := range seated {
			cases = append(cases, &seated[i])
		}
	}
	reportMargin(p, cases)
	cases = nil
	for _, s := range []hanging.Solved[[]hanging.Case]{h.Lost, h.LostPack} {
		list, _ := engine.Hung(p, s)
		for i := range list {
			cases = append(cases, &list[i])
		}
	}
	reportMargin(p, cases)
}

// reportMargin reports the least margin of the cases in which the rib hangs.
func reportMargin(p *engine.Pass, cases []*hanging.Case) {
	limit := p.Limit("margin")
	var least *hanging.Case
	for _, c := range cases {
		if !c.Tips() && (least == nil || c.Margin < least.Margin*(1-hanging.Alike)) {
			least = c
		}
	}
	if least == nil || least.Margin >= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At:       "strap.stations",
		Text:     p.Textf("the tipping margin of the rib%s %s is {measured}; the minimum is {limit}", piece(least), least.Words()),
		Measured: quantity.Share(least.Margin).Value(), Bound: limit,
	})
}

func piece(c *hanging.Case) string {
	if c.Piece == 0 {
		return ""
	}
	return fmt.Sprintf(" of piece %d", c.Piece)
}

// checkTips finds a rib that hangs in the frame but not in truth: one strap
// carries it, and what the others carry can't be told from nothing.
func checkTips(p *engine.Pass) {
	first := p.Results.Hanging().First.Get().Is
	for _, c := range []*hanging.Case{p.Results.Hanging().Alone.Get().Is, &first.Case} {
		if c != nil && c.Tips() {
			p.Report(engine.Finding{
				At: "strap.stations",
				Text: p.Textf("%s the rib%s swings: its mass centre is not between two straps that each carry at least %v of its weight",
					c.Words(), piece(c), quantity.Share(hanging.Counts)),
			})
			return
		}
	}
}
