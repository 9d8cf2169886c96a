package closure

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var probability = engine.Rule{
	ID:       "close.probability",
	Title:    "the probability that the last panel goes in is high",
	Why:      "The worst case is rare where lengths deviate independently, and not rare where all panels come from one form. The probability shows how far the worst case overstates the risk.",
	Severity: engine.Note,
	Needs:    []string{"close.first_gap"},
	Figures:  []string{"close.chance", "close.chance-alike"},
	Limits: []engine.Limit{{
		Key: "least", Title: "probability that the last panel goes in", Value: quantity.Share(0.95).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Valid:  "lengths normally distributed about their nominal values, with tolerances of three standard deviations; the last panel needs the projection of the tenons, without clearance; state of the wood as in close.slide",
		Source: cite.Scholz1995.At("statistical tolerancing, and its failure with a shared bias"),
	},
	Check: checkProbability,
}

func checkProbability(p *engine.Pass) {
	ends, _ := p.Results.Closing().Ends()
	odds, limit := ends.Odds.Get(), p.Limit("least")
	lesser := min(odds.ByChance.Share, odds.Alike.Share)
	if lesser >= limit.SI {
		return
	}
	state := hungIn(p, ends)
	text := "the last panel does not go in, even with every length at the better end of its tolerance" + state + "; the probability that it goes in is {measured}; the minimum is {limit}"
	if !odds.Decided {
		text = p.Textf("the probability that the last panel goes in is %v ± %v if panels deviate independently, or %v ± %v if all deviate alike, as from one form%s; the minimum is {limit}",
			quantity.Share(odds.ByChance.Share), quantity.Share(odds.ByChance.Error), quantity.Share(odds.Alike.Share), quantity.Share(odds.Alike.Error), state)
	}
	p.Report(engine.Finding{
		At: "close.first_gap", Related: []string{"panels.tolerance", "room.tolerance", "seam.tolerance", "strap.hung"},
		Text: text, Measured: quantity.Share(lesser).Value(), Bound: limit,
	})
}

var twoWay = engine.Rule{
	ID:       "close.two-way",
	Title:    "no panel has to slide in two directions at once",
	Why:      "A piece of a split arch has tenons on its end and on its edge. It can slide onto only one set.",
	Severity: engine.Hold,
	Basis:    engine.Basis{Valid: "arches of two pieces or more, in rows of two panels or more", Source: cite.Derivation("tenons that project from two edges at an angle")},
	Check: func(p *engine.Pass) {
		c := p.Ceiling
		if c.Panel.Around.Get() < 2 || c.Panel.Along.Get() < 2 || c.Close.Last.Get() != "slide" {
			return
		}
		p.Report(engine.Finding{
			At: "close.last", Related: []string{"panels.around"},
			Text:   p.Textf("each of the %d panels has tenons toward its neighbour along the axis and toward the other piece of its arch, and cannot slide onto both. Withdraw the tenons into one side, or drop the panels onto them", c.Panel.Count.Get()),
			Offers: []engine.Offer{{Key: "close.last", Value: "drop"}, {Key: "panels.around", Value: int64(1)}},
		})
	},
}
