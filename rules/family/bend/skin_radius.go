package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var skinRadius = engine.Rule{
	ID:       "bend.skin-radius",
	Title:    "the skin's sheet bends to the vault's tightest radius",
	Why:      "A sheet bent below its least radius cracks on its outer face, or springs off the ribs.",
	Severity: engine.Hold,
	Figures:  []string{"skin.radius"},
	Basis: engine.Basis{
		Formula: "R = R_i + a ≥ R_min",
		Symbols: []engine.Symbol{
			{Name: "R_i", Means: "tightest radius of the intrados", Unit: "m"},
			{Name: "a", Means: "setback from the intrados to the skin's near face", Unit: "m"},
			{Name: "R_min", Means: "least radius of the material for the thickness of one layer and the edge that is bent", Unit: "m"},
		},
		Valid:  "thicknesses that the material's table has, dry sheets, one layer bent at a time",
		Source: cite.APAConcreteForm.At("curving plywood"),
	},
	Check: checkSkinRadius,
}

func checkSkinRadius(p *engine.Pass) {
	c := p.Ceiling
	radius := c.Vault.TightestRadius.Get() + c.Skin.Setback.Get()
	if math.IsInf(radius, 1) {
		return // nothing bends in a flat ceiling
	}
	if c.Skin.Around() {
		p.Report(engine.Finding{
			At: "skin.straight", Text: `the spec lays the sheet's straight edge around the arc, where the sheet must bend`,
			Offers: []engine.Offer{{Key: "skin.straight", Value: "along"}},
		})
		return
	}
	least, err := c.Skin.LeastRadius()
	if err != nil {
		p.NotChecked("skin.thickness", p.Explain(err))
		return
	}
	if radius >= least {
		return
	}
	p.Report(engine.Finding{
		At:       "skin.thickness",
		Related:  []string{"skin.material", "skin.sheet", "vault.rise"},
		Text:     p.Textf("the skin is bent to a radius of {measured}; the minimum for %s of %v with its %s edge bent is {limit}", c.Skin.Material.Get().Name, quantity.Length(c.Skin.Thickness.Get()), c.Skin.BentEdge()),
		Measured: quantity.Length(radius).Value(),
		Bound:    p.Published("skin.material", quantity.Length(least).Value(), c.Skin.Material.Get().BendFrom),
		Offers:   thinnerSkins(c.Skin.Thickness.Get(), c.Units),
	})
}

// stockThicknesses are those that sheets are sold in, thickest first.
var stockThicknesses = map[quantity.System][]string{
	quantity.Metric:   {"15mm", "12mm", "9mm", "8mm", "6.5mm", "5mm", "3.5mm"},
	quantity.Imperial: {"1/2in", "3/8in", "5/16in", "1/4in", "1/8in"},
}

// thinnerSkins are the stock thicknesses below t, the nearest first.
func thinnerSkins(t float64, units quantity.System) []engine.Offer {
	var offers []engine.Offer
	for _, s := range stockThicknesses[units] {
		if v, err := quantity.Parse(quantity.Metre, s); err == nil && v.SI < t {
			offers = append(offers, engine.Offer{Key: "skin.thickness", Value: s})
		}
	}
	return offers
}
