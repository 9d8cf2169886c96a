package fitting

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// wood is the least distance of a recessed luminaire from wood, unless it is
// listed for contact.
var wood = cite.NEC.At("410.116(A)(1)").FromMemory()

var luminaireClear = engine.Rule{
	ID:       "fitting.luminaire-clear",
	Title:    "luminaires keep the code's clearance of recessed luminaires from ribs and rails",
	Why:      "Wood beside a hot lamp housing chars over years.",
	Severity: engine.Query,
	Needs:    []string{"fitting"},
	Limits: []engine.Limit{{
		Key: "clear", Title: "distance from a recessed luminaire to wood", Value: quantity.Length(0.0127).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: wood,
	}},
	Basis: engine.Basis{Valid: "luminaires that are not listed for contact with wood; the luminaire's listing decides whether it may be let into the skin", Source: wood},
	Check: func(p *engine.Pass) {
		checkNear(p, p.Limit("clear"), "luminaire", ", unless it is listed for contact with wood")
	},
}

var luminaire = engine.Rule{
	ID:       "fitting.luminaire",
	Title:    "luminaires are referred to the electrical code and the licensed trade",
	Why:      "Whether a luminaire may be let into a wood skin depends on its listing, its heat and what lies above it. A ceiling's spec states none of these.",
	Severity: engine.Refer,
	RefersTo: engine.ToElectrician,
	Needs:    []string{"fitting"},
	Basis:    engine.Basis{Source: wood},
	Check: func(p *engine.Pass) {
		refer(p, "luminaire", "is let into a skin of "+p.Ceiling.Skin.Material.Get().Name+". Its listing for that and the clear space above it are referred to the electrical code and the licensed trade")
	},
}

var sprinkler = engine.Rule{
	ID:       "fitting.sprinkler",
	Title:    "sprinklers are referred to the code and the licensed trade",
	Why:      "A coffer is a pocket that keeps heat from a sprinkler below it. A rib obstructs its spray.",
	Severity: engine.Refer,
	RefersTo: engine.ToFireProtection,
	Needs:    []string{"fitting"},
	Basis: engine.Basis{
		Valid:  "the code's clause on ceiling pockets has further conditions, and a wood finish may fail one",
		Source: cite.NFPA13.At("2010, 8.6.7: unprotected ceiling pockets up to 1000 ft3 in all and 36 in deep").FromMemory(),
	},
	Check: func(p *engine.Pass) {
		c := p.Ceiling
		pocket := (c.Grid.ModuleAround.Get() - c.Rail.Width.Get()) * c.Clear() * c.Skin.Setback.Get()
		n := c.Grid.Around.Get() * c.Grid.Along.Get()
		refer(p, "sprinkler", p.Textf("is in a ceiling of %d coffers %v deep, with a total volume of %v. Spacing, obstruction by the ribs and the limits of ceiling pockets are referred to the code and the licensed trade",
			n, quantity.Length(c.Skin.Setback.Get()), quantity.Value{SI: pocket * float64(n), Unit: quantity.CubicMetre}))
	},
}

// refer reports the fittings of a kind.
func refer(p *engine.Pass, kind string, why string) {
	for _, f := range places(p.Ceiling) {
		if f.Kind.Get() == kind {
			p.Report(engine.Finding{At: f.key("kind"), Text: p.Textf("the %s in %s ", f.Name.Get(), f.where()) + why})
		}
	}
}
