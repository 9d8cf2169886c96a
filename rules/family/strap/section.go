package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var section = engine.Rule{
	ID:       "strap.section",
	Title:    "the strap's metal, less a hole, carries its worst force",
	Why:      "A thin strap with a large hole tears at the hole.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations", "strap.hole"},
	Limits: []engine.Limit{
		{Key: "yield", Title: "yield strength", Value: quantity.Stress(228e6).Value(), Sense: engine.AtMost, Lowest: 1e6, Most: 2e9, Source: cite.ASTMA653.At("grade 33").FromMemory()},
		{Key: "ultimate", Title: "tensile strength", Value: quantity.Stress(310e6).Value(), Sense: engine.AtMost, Lowest: 1e6, Most: 2e9, Source: cite.ASTMA653.At("grade 33").FromMemory()},
		{Key: "yield-factor", Title: "safety factor on yield", Value: quantity.Value{SI: 1.67, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 20, Source: cite.AISIS100.At("tension").FromMemory()},
		{Key: "rupture-factor", Title: "safety factor on rupture", Value: quantity.Value{SI: 2, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 20, Source: cite.AISIS100.At("tension").FromMemory()},
	},
	Basis: engine.Basis{
		Formula: "min(F_y·b·t/Ω_y, F_u·(b − h)·t/Ω_u)",
		Symbols: []engine.Symbol{
			{Name: "F_y", Means: "yield strength", Unit: "Pa"},
			{Name: "F_u", Means: "tensile strength", Unit: "Pa"},
			{Name: "b", Means: "width of the strap", Unit: "m"},
			{Name: "t", Means: "thickness of the strap", Unit: "m"},
			{Name: "h", Means: "diameter of the hole", Unit: "m"},
			{Name: "Ω_y", Means: "safety factor on yield", Unit: "1"},
			{Name: "Ω_u", Means: "safety factor on rupture", Unit: "1"},
		},
		Valid: "one hole across the width; if the steel has a certificate, its strengths apply instead", Source: cite.AISIS100.At("tension members").FromMemory(),
	},
	Check: checkSection,
}

func checkSection(p *engine.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	p.Unweighed()
	st := p.Ceiling.Strap
	force, n, in := hanging.Worst(cases)
	yield := p.Limit("yield").SI * st.Width.Get() * st.Thickness.Get() / p.Limit("yield-factor").SI
	rupture := p.Limit("ultimate").SI * (st.Width.Get() - st.Hole.Get()) * st.Thickness.Get() / p.Limit("rupture-factor").SI
	allowed := p.Limit("ultimate")
	allowed.Value = quantity.Force(max(0, min(yield, rupture))).Value()
	if most, heavy := p.AtMost(quantity.Force(force).Value()); most.SI > allowed.SI {
		p.Report(engine.Finding{
			At: "strap.thickness", Related: []string{"strap.width", "strap.hole"},
			Text:     p.Textf("strap %d carries {measured} %s%s; its metal allows {limit} beside the hole", n, in.Words(), heavy),
			Measured: most, Bound: allowed,
		})
	}
}
