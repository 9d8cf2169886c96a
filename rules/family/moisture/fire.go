package moisture

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

// Flame spread and emissions stand with the wood's other properties; what is
// allowed is the authority's to say.
var fire = engine.Rule{
	ID:       "moisture.fire",
	Title:    "the flame spread of the ceiling is referred to the authority",
	Why:      "The permitted material of a ceiling, and its treatment, depend on the building's use, sprinklers and exits.",
	Severity: engine.Refer,
	RefersTo: engine.ToAuthority,
	Basis: engine.Basis{
		Valid:  "bare wood 19mm thick; finish, thickness and backing change it. Class A is up to 25, B up to 75, C up to 200, with smoke up to 450, by the test of ASTM E84",
		Source: cite.IBC.At("803"),
	},
	Always: true,
	Check:  checkFire,
}

func checkFire(p *engine.Pass) {
	c := p.Ceiling
	refer := func(key string, s timber.Species) {
		figure := "dryfit has no flame spread index for " + s.Name
		if s.FlameSpread != "" {
			figure = "bare " + s.Name + " has a flame spread index of about " + s.FlameSpread + " (" + s.FlameFrom.String() + "), which is " + s.FlameClass
		}
		p.Report(engine.Finding{
			At:   key,
			Text: figure + "; the class that the ceiling needs, with its finish, is referred to the authority having jurisdiction",
		})
	}
	p.Report(engine.Finding{
		At: "skin.material", Related: []string{"skin.thickness"},
		Text: "dryfit has no flame spread or smoke index for " + c.Skin.Material.Get().Name + "; the class of the skin, with its finish, is referred to the authority having jurisdiction",
	})
	refer("rib.species", c.Rib.Species.Get())
	if c.Rail.Species.Get().Name != c.Rib.Species.Get().Name {
		refer("rail.species", c.Rail.Species.Get())
	}
}

var emission = engine.Rule{
	ID:       "moisture.emission",
	Title:    "the sheet needs no certificate of its formaldehyde emission",
	Why:      "Composite sheets are sold to an emission limit, and a certificate is usually asked for at the end of the job.",
	Severity: engine.Note,
	Basis: engine.Basis{
		Valid: "parts per million in the test of ASTM E1333; sheets made or sold in the United States", Source: cite.TSCATitleVI.At("hardwood plywood, MDF, particleboard"),
	},
	Check: checkEmission,
}

func checkEmission(p *engine.Pass) {
	m := p.Ceiling.Skin.Material.Get()
	limit, known := m.MostEmission(p.Ceiling.Skin.Thickness.Get())
	if !known {
		return
	}
	p.Report(engine.Finding{
		At: "skin.material",
		Text: p.Textf("%s may give off at most %vppm of formaldehyde (%s); ask for the maker's certificate",
			m.Name, quantity.Value{SI: limit.Most, Unit: quantity.One}, limit.From),
	})
}
