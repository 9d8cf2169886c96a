package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var stripSum = engine.Rule{
	ID:       "bend.strips",
	Title:    "whole strips make up the rib's depth",
	Why:      "A rib is glued up from whole strips. Eight strips of 7mm make 56mm and nine make 63mm; neither makes a rib of 60mm.",
	Severity: engine.Hold,
	Figures:  []string{"rib.laminations"},
	Limits: []engine.Limit{{
		Key: "sum", Title: "difference of the strips' sum from the depth", Value: quantity.Length(layout.StripSlack).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.01, Source: cite.Derivation("planing takes half a millimetre, by common practice"),
	}},
	Basis: engine.Basis{
		Formula: "|n·t − d| ≤ sum",
		Symbols: []engine.Symbol{
			{Name: "n", Means: "nearest whole number of strips", Unit: "1"},
			{Name: "t", Means: "thickness of one strip", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
			{Name: "sum", Means: "greatest permitted difference", Unit: "m"},
		},
		Valid:  "laminated ribs whose strips are all of one thickness",
		Source: cite.Derivation("arithmetic"),
	},
	Check: checkStrips,
}

func checkStrips(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("sum")
	t, d := c.Rib.Lamination.Get(), c.Rib.Depth.Get()
	if t == 0 {
		return
	}
	n := math.Max(1, math.Round(d/t))
	off := math.Abs(n*t - d)
	if off <= limit.SI+1e-9 {
		return
	}
	offers := strips(p, math.Ceil(d/t))
	for _, whole := range []float64{n, n + 1, n - 1} {
		if whole >= 1 {
			offers = append(offers, engine.Offer{Key: "rib.depth", Value: p.Exactly(whole * t)})
		}
	}
	p.Report(engine.Finding{
		At: "rib.lamination", Related: []string{"rib.depth"},
		Text: p.Textf("the depth of %v is %.4g strips of %v; %.0f strips, the nearest whole number, make %v, a difference of {measured}; the maximum is {limit}",
			quantity.Length(d), d/t, quantity.Length(t), n, quantity.Length(n*t)),
		Measured: quantity.Length(off).Value(), Bound: limit, Offers: offers,
	})
}

// strips offers to divide the rib's depth into whole strips, so many at least,
// of a thickness that a shop planes to: the depth stays their sum.
func strips(p *engine.Pass, least float64) []engine.Offer {
	depth := p.Ceiling.Rib.Depth.Get()
	var offers []engine.Offer
	for n, first := math.Ceil(least-1e-9), math.Ceil(least-1e-9); n < first+24 && len(offers) < 12; n++ {
		text := p.Exactly(depth / n)
		if t, err := quantity.Parse(quantity.Metre, text); err == nil && math.Abs(n*t.SI-depth) <= layout.StripSlack+1e-9 {
			offers = append(offers, engine.Offer{Key: "rib.lamination", Value: text})
		}
	}
	return offers
}
