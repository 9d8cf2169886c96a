package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var engineer = engine.Rule{
	ID:       "strap.engineer",
	Title:    "the hanging is referred to a licensed engineer",
	Why:      "This tool approves nothing that hangs overhead. Straps, screws, framing and bracing need a licensed engineer.",
	Severity: engine.Refer,
	RefersTo: engine.ToEngineer,
	Basis: engine.Basis{
		Valid:  "always",
		Source: cite.CommonPractice(),
	},
	Always: true,
	Check:  checkEngineer,
}

func checkEngineer(p *engine.Pass) {
	c := p.Ceiling
	to, at := "a licensed engineer; the spec names none", "project"
	if name := c.Project.Engineer.Get(); name != "" {
		to, at = "the engineer of record, "+name, "project.engineer"
	}
	p.Report(engine.Finding{
		At: at,
		Text: p.Textf("the hanging of %s of %v each, with straps, screws and the framing above, is referred to %s",
			amount(int(c.Panel.Count.Get()), "panel", "panels"), quantity.Mass(c.Panel.Mass.Get()), to),
	})
}
