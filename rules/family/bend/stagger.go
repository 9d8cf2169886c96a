package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var stagger = engine.Rule{
	ID:       "bend.stagger",
	Title:    "the joints of one layer of a sawn rib are staggered against the next",
	Why:      "A joint carries nothing. Two joints at one place cut the rib through.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "least", Title: "share of a segment", Value: quantity.Share(0.25).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 0.5, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "segments of equal length; a stagger above 50% counts as 100% less the stagger, the distance to the next joint", Source: cite.CommonPractice()},
	Check: checkStagger,
}

func checkStagger(p *engine.Pass) {
	rib, limit := p.Ceiling.Rib, p.Limit("least")
	if rib.Construction.Get() != "sawn" || rib.Segments.Given() && rib.Segments.Get() == 1 {
		return
	}
	if !rib.Stagger.Given() {
		p.Absent("rib.stagger")
		return
	}
	share := math.Mod(rib.Stagger.Get(), 1)
	if share = min(share, 1-share); share < limit.SI {
		p.Report(engine.Finding{
			At: "rib.stagger", Related: []string{"rib.segments"},
			Text:     "the joints of neighbouring layers are {measured} of a segment apart; the minimum is {limit}",
			Measured: quantity.Share(share).Value(), Bound: limit,
			Offers: []engine.Offer{{Key: "rib.stagger", Value: "50%"}},
		})
	}
}
