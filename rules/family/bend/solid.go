package bend

import (
	"math"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

var solid = engine.Rule{
	ID:       "bend.solid",
	Title:    "a rib of one piece can be bent to its radius, for its species and bending method",
	Why:      "A thick piece bent too tightly breaks on its outer face. A dry piece breaks first, a piece steamed with a strap last.",
	Severity: engine.Query,
	Basis: engine.Basis{
		Formula: "R / d ≥ ratio",
		Symbols: []engine.Symbol{
			{Name: "R", Means: "tightest radius of the intrados", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
			{Name: "ratio", Means: "least ratio of the species: steamed with a strap, steamed without, or E/(2·MOR) dry", Unit: "1"},
		},
		Valid:  "clear, straight-grained wood; a steamed rib heated through, and of a species that the bending handbook lists",
		Source: cite.BendingHandbook.At("limiting radii").FromMemory(),
	},
	Check: checkSolid,
}

// bent is the least radius by depth of one piece, where it comes from, and what
// is done, in words.
func bent(how string, s timber.Species) (ratio float64, from cite.Source, done string) {
	switch how {
	case "strap":
		return s.Bends.Strap, s.Bends.From, "steamed, with a strap,"
	case "dry":
		return s.BreakingRatio(), s.Strength, "dry,"
	default:
		return s.Bends.Free, s.Bends.From, "steamed, without a strap,"
	}
}

func checkSolid(p *engine.Pass) {
	c := p.Ceiling
	if c.Rib.Construction.Get() != "solid" || math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return
	}
	species := c.Rib.Species.Get()
	least, from, done := bent(c.Rib.Bending.Get(), species)
	if least == 0 {
		p.NotChecked("rib.species", "dryfit has no least radius for "+species.Name+" bent in one piece "+strings.TrimSuffix(done, ","))
		return
	}
	ratio := c.Vault.TightestRadius.Get() / c.Rib.Depth.Get()
	if ratio >= least {
		return
	}
	p.Report(engine.Finding{
		At: "rib.construction", Related: []string{"rib.bending", "rib.species", "rib.depth", "vault.rise"},
		Text: p.Textf("one piece %v deep bent to a radius of %v has a ratio of {measured}; "+done+"; the minimum for %s is {limit}",
			quantity.Length(c.Rib.Depth.Get()), quantity.Length(c.Vault.TightestRadius.Get()), species.Name),
		Measured: quantity.Value{SI: ratio, Unit: quantity.One}, Bound: p.Published("rib.species", quantity.Value{SI: least, Unit: quantity.One}, from),
		Offers: []engine.Offer{{Key: "rib.bending", Value: "strap"}, {Key: "rib.construction", Value: "laminated"}},
	})
}
