package bend

import (
	"math"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

var lamination = rules.Rule{
	ID:       "bend.lamination",
	Title:    "the rib's laminations bend dry to the vault's tightest radius",
	Why:      "A strip too thick for its radius breaks on the form, or is left with a stress that the rib's own load adds to.",
	Severity: rules.Hold,
	Figures:  []string{"rib.lamination-ratio"},
	Limits: []rules.Limit{
		{
			Key: "ratio", Title: "radius by strip thickness, hardwood",
			Value: quantity.Value{SI: 100, Unit: quantity.One}, Sense: rules.AtLeast, Lowest: 1, Most: 10000,
			Source: cite.CivilFormulas.At("p. 167: t/R not over 1/100, hardwoods and southern pine"),
		},
		{
			Key: "ratio-softwood", Title: "radius by strip thickness, softwood",
			Value: quantity.Value{SI: 125, Unit: quantity.One}, Sense: rules.AtLeast, Lowest: 1, Most: 10000,
			Source: cite.CivilFormulas.At("p. 167: t/R not over 1/125, other softwoods"),
		},
	},
	Basis: rules.Basis{
		Formula: "R / t ≥ ratio",
		Symbols: []rules.Symbol{
			{Name: "R", Means: "tightest radius of the intrados, the face of the innermost strip", Unit: "m"},
			{Name: "t", Means: "thickness of one strip", Unit: "m"},
			{Name: "ratio", Means: "least ratio for the group of the species", Unit: "1"},
		},
		Valid:  "strips bent dry, and glued on the form",
		Source: cite.CivilFormulas.At("p. 167"),
	},
	Check: checkLamination,
}

func checkLamination(p *rules.Pass) {
	c := p.Ceiling
	t, radius := c.Rib.Lamination.Get(), c.Vault.TightestRadius.Get()
	if t == 0 || math.IsInf(radius, 1) {
		return // not laminated, or not bent
	}
	limit := p.Limit("ratio")
	if c.Rib.Species.Get().Group == timber.Softwood {
		limit = p.Limit("ratio-softwood")
	}
	ratio := radius / t
	if ratio >= limit.SI {
		return
	}
	p.Report(rules.Finding{
		At:       "rib.lamination",
		Related:  []string{"vault.rise", "rib.species"},
		Text:     p.Textf("strips of %v bent to %v have a ratio of {measured}; the least for %s is {limit}", quantity.Length(t), quantity.Length(radius), c.Rib.Species.Get().Name),
		Measured: quantity.Value{SI: ratio, Unit: quantity.One},
		Bound:    limit,
		Offers:   strips(p, c.Rib.Depth.Get()*limit.SI/radius),
	})
}
