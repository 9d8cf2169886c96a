package closure

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var probability = engine.Rule{
	ID:       "close.probability",
	Title:    "by chance the last panel goes in more often than not by far",
	Why:      "The worst case is rare where the lengths deviate each for itself, and not rare at all where all panels come off one form: the chances say how much the worst case exaggerates.",
	Severity: engine.Note,
	Needs:    []string{"close.first_gap"},
	Figures:  []string{"close.chance", "close.chance-alike"},
	Limits: []engine.Limit{{
		Key: "least", Title: "chance that the last panel goes in", Value: quantity.Share(0.95).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Valid:  "lengths normal about their nominal size, the tolerance three standard deviations; the free length that the tenons' projection takes, without clearance; the wood as in close.slide",
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
	text := "the last panel does not go in even with every length at the better end of its tolerance" + state + ": its chance is {measured}, and the least is {limit}"
	if !odds.Decided {
		text = p.Textf("the last panel goes in with a chance of %v ± %v if each panel deviates for itself, and of %v ± %v if all deviate alike, as off one form%s; the least is {limit}",
			quantity.Share(odds.ByChance.Share), quantity.Share(odds.ByChance.Error), quantity.Share(odds.Alike.Share), quantity.Share(odds.Alike.Error), state)
	}
	p.Report(engine.Finding{
		At: "close.first_gap", Related: []string{"panels.tolerance", "room.tolerance", "seam.tolerance", "strap.hung"},
		Text: text, Measured: quantity.Share(lesser).Value(), Bound: limit,
	})
}

var twoWay = engine.Rule{
	ID:       "close.two-way",
	Title:    "no panel has to slide two ways at once",
	Why:      "A piece of a split arch has tenons on its end and on its edge: it can slide on to the one or the other, never on to both.",
	Severity: engine.Hold,
	Basis:    engine.Basis{Valid: "arches of two pieces or more, in rows of two panels or more", Source: cite.Derivation("tenons that project from two edges at an angle")},
	Check: func(p *engine.Pass) {
		c := p.Ceiling
		if c.Panel.Around.Get() < 2 || c.Panel.Along.Get() < 2 || c.Close.Last.Get() != "slide" {
			return
		}
		p.Report(engine.Finding{
			At: "close.last", Related: []string{"panels.around"},
			Text:   p.Textf("each of the %d panels has tenons toward its neighbour along the axis and toward the other piece of its arch, and cannot slide on to both; withdraw the tenons into one side, or drop the panels on to them", c.Panel.Count.Get()),
			Offers: []engine.Offer{{Key: "close.last", Value: "drop"}, {Key: "panels.around", Value: int64(1)}},
		})
	},
}
