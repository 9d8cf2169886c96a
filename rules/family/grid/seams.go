package grid

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

var seamsOnRibs = engine.Rule{
	ID:       "grid.seams-on-ribs",
	Title:    "every seam falls on a rib or a rail",
	Why:      "A seam between two members has nothing to join, because the panels would end in the middle of a coffer.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Formula: "grid.along mod panels.along = 0 and grid.around mod panels.around = 0",
		Symbols: []engine.Symbol{
			{Name: "mod", Means: "remainder of the division", Unit: "1"},
		},
		Source: cite.Derivation("equal panels end on grid lines only if the grid divides evenly"),
	},
	Check: checkSeamsOnRibs,
}

func checkSeamsOnRibs(p *engine.Pass) {
	c := p.Ceiling
	for _, d := range []struct {
		grid, panels      int
		key, other, where string
	}{
		{c.Grid.Along.Get(), c.Panel.Along.Get(), "panels.along", "along", "ribs"},
		{c.Grid.Around.Get(), c.Panel.Around.Get(), "panels.around", "around", "rails"},
	} {
		if d.grid%d.panels == 0 {
			continue
		}
		p.Report(engine.Finding{
			At:      d.key,
			Related: []string{"grid." + d.other},
			Text:    p.Textf("%d coffers %s do not divide into %d panels, so seams fall between the %s", d.grid, d.other, d.panels, d.where),
			Offers:  divisors(d.key, d.grid, d.panels),
		})
	}
}

// divisors offers the numbers of panels that divide the grid, the nearest
// first.
func divisors(key string, grid, panels int) []engine.Offer {
	var offers []engine.Offer
	for away := 1; away < grid; away++ {
		for _, n := range []int{panels + away, panels - away} {
			if n >= 1 && n <= grid && grid%n == 0 {
				offers = append(offers, engine.Offer{Key: key, Value: int64(n)})
			}
		}
	}
	return offers[:min(2, len(offers))]
}

var crown = engine.Rule{
	ID:       "grid.crown",
	Title:    "a fitting at the crown is clear of the rail there",
	Why:      "With an even number of coffers around, a rail lies at the crown, the usual place for a light.",
	Severity: engine.Query,
	Needs:    []string{"fitting"},
	Limits: []engine.Limit{{
		Key: "clear", Title: "distance from a fitting beside the crown to the rail at the crown",
		Value: quantity.Length(0.025).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "even numbers of coffers around; fittings in the two coffers beside the crown", Source: cite.CommonPractice()},
	Check: checkCrown,
}

func checkCrown(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("clear")
	if c.Grid.Around.Get()%2 != 0 {
		return // a coffer lies at the crown
	}
	for i, f := range c.Fitting.Get() {
		around := f.Coffer.Get()[0]
		if beside := c.Grid.Around.Get() / 2; around != beside && around != beside+1 {
			continue
		}
		centre := (float64(around)-0.5)*c.Grid.ModuleAround.Get() + f.At.Around.Get()
		clear := math.Abs(centre-c.Vault.Arc.Get()/2) - reach(f) - c.Rail.Width.Get()/2
		if clear >= limit.SI {
			continue
		}
		p.Report(engine.Finding{
			At:       spec.Key("fitting", i+1, "coffer"),
			Related:  []string{"grid.around"},
			Text:     p.Textf("a rail lies at the crown, {measured} from the %s; the minimum is {limit}", f.Name.Get()),
			Measured: quantity.Length(clear).Value(), Bound: limit,
		})
	}
}

// reach is half of a fitting's size around the arc.
func reach(f layout.Fitting) float64 {
	if f.Diameter.Given() {
		return f.Diameter.Get() / 2
	}
	return f.Width.Get() / 2
}
