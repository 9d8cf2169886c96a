package joint

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

func thickness(p *engine.Pass, m float64, step func(float64) string) []engine.Offer {
	if m <= 0 {
		return nil
	}
	return []engine.Offer{{Key: "seam.tenon.thickness", Value: step(m)}}
}

var width = engine.Rule{
	ID:       "joint.width",
	Title:    "the tenon is wider than it is thick",
	Why:      "The tenon's face aligns the panels and holds the glue. A square tenon acts as a dowel and lets the panels turn.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "ratio", Title: "ratio of the tenon's width to its thickness", Value: one(1.5), Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "w/t ≥ ratio",
		Symbols: []engine.Symbol{{Name: "w", Means: "width of the tenon, along the seam", Unit: "m"}, {Name: "t", Means: "thickness of the tenon", Unit: "m"}, {Name: "ratio", Means: "least ratio", Unit: "1"}},
		Source:  cite.CommonPractice(),
	},
	Check: func(p *engine.Pass) {
		t, limit := p.Ceiling.Seam.Tenon, p.Limit("ratio")
		if r := t.Width.Get() / t.Thickness.Get(); len(stocks(p.Ceiling)) > 0 && r < limit.SI {
			p.Report(engine.Finding{
				At: "seam.tenon.width", Related: []string{"seam.tenon.thickness"},
				Text:     p.Textf("the tenon is %v wide and %v thick, a ratio of {measured}; the minimum is {limit}", quantity.Length(t.Width.Get()), quantity.Length(t.Thickness.Get())),
				Measured: one(r), Bound: limit,
				Offers: []engine.Offer{{Key: "seam.tenon.width", Value: p.Above(limit.SI * t.Thickness.Get())}},
			})
		}
	},
}

var embedment = engine.Rule{
	ID:       "joint.embedment",
	Title:    "the tenon is let in deep enough on both sides",
	Why:      "A shallow mortise gives the glue little area and does not guide the panel.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "least", Title: "half of the tenon's length", Value: quantity.Length(0.020).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Source: cite.CommonPractice()},
	Check: func(p *engine.Pass) {
		t, limit := p.Ceiling.Seam.Tenon, p.Limit("least")
		if in := t.Length.Get() / 2; len(stocks(p.Ceiling)) > 0 && in < limit.SI {
			p.Report(engine.Finding{
				At:       "seam.tenon.length",
				Text:     p.Textf("half of the tenon's %v, {measured}, is let into each panel; the minimum is {limit}", quantity.Length(t.Length.Get())),
				Measured: quantity.Length(in).Value(), Bound: limit,
				Offers: []engine.Offer{{Key: "seam.tenon.length", Value: p.Above(2 * limit.SI)}},
			})
		}
	},
}
