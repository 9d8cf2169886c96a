package moisture

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/seasons"
	"dryfit/spec/quantity"
)

var movement = engine.Basis{
	Formula: "ΔD = D·C·(M_f − M_i)",
	Symbols: []engine.Symbol{
		{Name: "ΔD", Means: "change of the member's width, positive for growth", Unit: "m"},
		{Name: "D", Means: "width in the shop", Unit: "m"},
		{Name: "C", Means: "dimensional change coefficient across the width, for the cut of the boards", Unit: "1/%"},
		{Name: "M_f", Means: "moisture content in the season", Unit: "%"},
		{Name: "M_i", Means: "moisture content in the shop", Unit: "%"},
	},
	Valid:  "moisture contents of 6% to 14%; outside this range by the handbook's second equation, ΔD = D·(M_f − M_i)/(3000/S − 30 + M_i)",
	Source: cite.WoodHandbook2010.At("equation 13-2; the formula of its second equation, 13-3, from memory"),
}

var revealCloses = engine.Rule{
	ID:       "moisture.reveal-closes",
	Title:    "the reveal is still open in the wet season",
	Why:      "A groove that closes shows as a ragged line, and its members push on each other.",
	Severity: engine.Query,
	Needs:    []string{"grid.reveal.width", "grid.reveal.depth"},
	Figures:  []string{"season.wet.reveal"},
	Limits: []engine.Limit{
		{Key: "least", Title: "width of a reveal", Value: quantity.Length(0.006).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "share", Title: "remaining share of the design width, used if it gives less than moisture.reveal-closes.least", Value: share(0.75), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
	},
	Basis: movement,
	Check: checkRevealCloses,
}

var revealOpens = engine.Rule{
	ID:       "moisture.reveal-opens",
	Title:    "the reveal opens only slightly beyond its design width in the dry season",
	Why:      "Reveals that open in winter show the tenons and make the panels look separated.",
	Severity: engine.Query,
	Needs:    []string{"grid.reveal.width", "grid.reveal.depth"},
	Figures:  []string{"season.dry.reveal"},
	Limits: []engine.Limit{
		{Key: "over", Title: "opening of a reveal beyond its design width", Value: quantity.Length(0.002).Value(), Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "share", Title: "opening as a share of the design width, used if it gives more than moisture.reveal-opens.over", Value: share(0.25), Sense: engine.AtMost, Lowest: 0, Most: 10, Source: cite.CommonPractice()},
	},
	Basis: movement,
	Check: checkRevealOpens,
}

func share(v float64) quantity.Value { return quantity.Value{SI: v, Unit: quantity.Fraction} }

func checkRevealCloses(p *engine.Pass) {
	design, _ := seasons.SeamReveal(p.Ceiling)
	least, of, text := p.Limit("least"), p.Limit("share"), "the reveal closes to {measured} in the wet season; the minimum is {limit}"
	if part := of.SI * design; part < least.SI {
		text += p.Textf(", %v of its width", of.Value)
		least = of
		least.Value = quantity.Length(part).Value()
	}
	checkReveal(p, p.Results.Seasons().Wet, least, text, func(width float64) bool { return width >= least.SI },
		engine.Offer{Key: "seam.gap", Value: p.Below(design - least.SI)})
}

func checkRevealOpens(p *engine.Pass) {
	design, _ := seasons.SeamReveal(p.Ceiling)
	over, of, text := p.Limit("over"), p.Limit("share"), "the reveal opens to {measured} in the dry season; the maximum is {limit}"
	if part := of.SI * design; part > over.SI {
		text += p.Textf(", %v over its width", of.Value)
		over = of
		over.Value = quantity.Length(part).Value()
	}
	over.SI += design
	checkReveal(p, p.Results.Seasons().Dry, over, text, func(width float64) bool { return width <= over.SI })
}

// checkReveal compares the width of the reveal at a seam in a season.
func checkReveal(p *engine.Pass, s seasons.Season, limit engine.Bound, text string, fits func(float64) bool, offers ...engine.Offer) {
	if _, ok := seasons.SeamReveal(p.Ceiling); !ok {
		return
	}
	reveal := s.Reveal.Get()
	if reveal.Err != nil {
		p.Lacks("rib.species", reveal.Err)
		return
	}
	if !p.Ordered() || fits(reveal.Value) {
		return
	}
	p.Report(engine.Finding{
		At: "grid.reveal.width", Related: []string{"rib.cut", "seam.gap", "climate." + s.Name, "climate.shop"}, Text: text,
		Measured: quantity.Length(reveal.Value).Value(), Bound: limit,
		Offers: append([]engine.Offer{{Key: "rib.cut", Value: "vertical"}}, offers...),
	})
}
