package rib

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var depthToSpan = engine.Rule{
	ID:       "rib.depth-to-span",
	Title:    "the rib is deep enough for its clear runs between straps",
	Why:      "A slender rib sags between its straps, and its seams step.",
	Severity: engine.Hold,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"strap.run-ratio"},
	Limits: []engine.Limit{{
		Key: "ratio", Title: "ratio of clear run to depth of rib",
		Value: quantity.Value{SI: 24, Unit: quantity.One}, Sense: engine.AtMost, Lowest: 1, Most: 1000,
		Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "run / d ≤ ratio",
		Symbols: []engine.Symbol{
			{Name: "run", Means: "length of arc between adjacent straps, or twice the overhang past an end strap", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
			{Name: "ratio", Means: "greatest ratio", Unit: "1"},
		},
		Valid:  "a rough check; rib.sag computes the sag of the frame",
		Source: cite.CommonPractice(),
	},
	Check: checkDepthToSpan,
}

func checkDepthToSpan(p *engine.Pass) {
	c := p.Ceiling
	limit := p.Limit("ratio")
	run, name := c.LongestRun()
	ratio := run / c.Rib.Depth.Get()
	if ratio <= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At:       "rib.depth",
		Related:  []string{"strap.stations"},
		Text:     p.Textf("%s is %v, {measured} times the rib's depth of %v; the maximum is {limit}", name, quantity.Length(run), quantity.Length(c.Rib.Depth.Get())),
		Measured: quantity.Value{SI: ratio, Unit: quantity.One},
		Bound:    limit,
		Offers:   []engine.Offer{{Key: "rib.depth", Value: deepened(p, ratio/limit.SI)}},
	})
}
