package grid

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var moduleRatio = engine.Rule{
	ID:       "grid.module-ratio",
	Title:    "the coffers are nearly square",
	Why:      "A coffer much longer than wide reads as a slot, and the grid as stripes.",
	Severity: engine.Query,
	Figures:  []string{"grid.module-ratio"},
	Limits: []engine.Limit{{
		Key: "most", Title: "ratio of the module's longer side to its shorter side",
		Value: number(1.67), Sense: engine.AtMost, Lowest: 1, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "k = max(m_r, m_l) / min(m_r, m_l)",
		Symbols: []engine.Symbol{
			{Name: "m_r", Means: "module around, on the intrados", Unit: "m"},
			{Name: "m_l", Means: "module along, between rib centre lines", Unit: "m"},
		},
		Valid:  "a question of proportion; 1.67 is slightly above the golden section",
		Source: cite.CommonPractice(),
	},
	Check: checkModuleRatio,
}

func checkModuleRatio(p *engine.Pass) {
	g, limit := p.Ceiling.Grid, p.Limit("most")
	if g.Ratio() <= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At:      "grid.along",
		Related: []string{"grid.around", "vault.length"},
		Text: p.Textf("the module is %v around by %v along, {measured} to 1; the maximum is {limit}",
			quantity.Length(g.ModuleAround.Get()), quantity.Length(g.ModuleAlong.Get())),
		Measured: number(g.Ratio()), Bound: limit,
		Offers: []engine.Offer{{Key: "grid.along", Value: int64(g.Along.Get() + 1)}, {Key: "grid.along", Value: int64(g.Along.Get() - 1)}},
	})
}

var moduleSize = engine.Rule{
	ID:       "grid.module-size",
	Title:    "the coffers are neither too small to make nor too large to stiffen the skin",
	Why:      "Small coffers need many joints. Large coffers leave the skin without a rib behind it.",
	Severity: engine.Query,
	Figures:  []string{"grid.module-around", "grid.module-along"},
	Limits: []engine.Limit{
		{Key: "least", Title: "side of a module", Value: quantity.Length(0.3).Value(), Sense: engine.AtLeast, Lowest: 0.01, Most: 10, Source: cite.CommonPractice()},
		{Key: "most", Title: "side of a module", Value: quantity.Length(1.5).Value(), Sense: engine.AtMost, Lowest: 0.01, Most: 100, Source: cite.CommonPractice()},
	},
	Basis: engine.Basis{Valid: "both sides of the module, between centre lines", Source: cite.CommonPractice()},
	Check: checkModuleSize,
}

func checkModuleSize(p *engine.Pass) {
	g := p.Ceiling.Grid
	for _, side := range []struct {
		key, name string
		size      float64
	}{{"grid.around", "around", g.ModuleAround.Get()}, {"grid.along", "along", g.ModuleAlong.Get()}} {
		f := engine.Finding{At: side.key, Measured: quantity.Length(side.size).Value()}
		switch least, most := p.Limit("least"), p.Limit("most"); {
		case side.size < least.SI:
			f.Bound, f.Text = least, "the module is {measured} "+side.name+"; the minimum is {limit}"
		case side.size > most.SI:
			f.Bound, f.Text = most, "the module is {measured} "+side.name+"; the maximum is {limit}"
		default:
			continue
		}
		p.Report(f)
	}
}

var count = engine.Rule{
	ID:       "grid.count",
	Title:    "there are not too many coffers to see each as a coffer",
	Why:      "Very many coffers read as a texture, and each adds joints, fittings and cost.",
	Severity: engine.Note,
	Figures:  []string{"grid.count"},
	Limits: []engine.Limit{{
		Key: "most", Title: "number of coffers", Value: number(48), Sense: engine.AtMost, Lowest: 1, Most: 1e9, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "a question of taste; the limit is a usual one", Source: cite.CommonPractice()},
	Check: checkCount,
}

func checkCount(p *engine.Pass) {
	g, limit := p.Ceiling.Grid, p.Limit("most")
	n := float64(g.Around.Get() * g.Along.Get())
	if n <= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At: "grid", Text: "the ceiling has {measured} coffers; {limit} is the usual limit, above which they read as a texture",
		Measured: number(n), Bound: limit,
	})
}
