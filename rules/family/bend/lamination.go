package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

var lamination = engine.Rule{
	ID:       "bend.lamination",
	Title:    "the rib's laminations bend dry to the vault's tightest radius",
	Why:      "A strip too thick for its radius breaks on the form, or keeps a bending stress that adds to the stress from the rib's load.",
	Severity: engine.Query,
	Figures:  []string{"rib.lamination-ratio", "rib.breaking-ratio"},
	Limits: []engine.Limit{
		{
			Key: "ratio", Title: "ratio of radius to strip thickness, hardwood",
			Value: quantity.Value{SI: 100, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 10000,
			Source: cite.CivilFormulas.At("p. 167: t/R not over 1/100, hardwoods and southern pine"),
		},
		{
			Key: "ratio-softwood", Title: "ratio of radius to strip thickness, softwood",
			Value: quantity.Value{SI: 125, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 10000,
			Source: cite.CivilFormulas.At("p. 167: t/R not over 1/125, other softwoods"),
		},
	},
	Basis: engine.Basis{
		Formula: "R / t ≥ ratio; R / t ≥ E/(2·MOR)",
		Symbols: []engine.Symbol{
			{Name: "R", Means: "tightest radius of the intrados, the face of the innermost strip", Unit: "m"},
			{Name: "t", Means: "thickness of one strip", Unit: "m"},
			{Name: "ratio", Means: "least ratio for hardwood or softwood, from the practice of structural glulam", Unit: "1"},
			{Name: "E", Means: "modulus of elasticity at 12% moisture", Unit: "Pa"},
			{Name: "MOR", Means: "modulus of rupture at 12% moisture", Unit: "Pa"},
		},
		Valid:  "strips bent dry and glued on the form; wood yields before it breaks, so it can be bent to a somewhat smaller R/t than E/(2·MOR)",
		Source: cite.CivilFormulas.At("p. 167"),
	},
	Check: checkLamination,
}

func checkLamination(p *engine.Pass) {
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
	species := c.Rib.Species.Get()
	f := engine.Finding{
		At:       "rib.lamination",
		Related:  []string{"vault.rise", "rib.species"},
		Text:     p.Textf("strips of %v are bent to a radius of %v, {measured} times their thickness; the minimum for %s in structural glulam is {limit}", quantity.Length(t), quantity.Length(radius), species.Name),
		Measured: quantity.Value{SI: ratio, Unit: quantity.One},
		Bound:    limit,
		Offers:   strips(p, c.Rib.Depth.Get()*limit.SI/radius),
	}
	if breaks := species.BreakingRatio(); ratio < breaks {
		f.Text = p.Textf("strips of %v are bent to a radius of %v, {measured} times their thickness; at {limit} the stress by beam theory equals the strength of %s. Strips are likely to break on the form: bend test strips first, or use thinner ones",
			quantity.Length(t), quantity.Length(radius), species.Name)
		f.Bound = p.Published("rib.species", quantity.Value{SI: breaks, Unit: quantity.One}, species.Strength)
	}
	p.Report(f)
}
