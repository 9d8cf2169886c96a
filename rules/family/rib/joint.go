package rib

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var joint = engine.Rule{
	ID:       "rib.joint",
	Title:    "at each joint of a layer of a sawn rib, other layers carry the load",
	Why:      "A layer carries nothing at its joint. A half rib of one layer depends on the glue between two butted ends.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Formula: "A_h − max A_l > 0",
		Symbols: []engine.Symbol{
			{Name: "A_h", Means: "area of the half rib at a panel's edge, less its reveal; the rest of a layer counts if it is at least 0.5mm thick", Unit: "m²"},
			{Name: "A_l", Means: "areas of the layers in the half rib", Unit: "m²"},
		},
		Valid:  "sawn ribs of layers, with more than one segment in a panel; only one layer is jointed at any one place",
		Source: cite.Derivation("area of the section without its largest layer"),
	},
	Check: checkJoint,
}

func checkJoint(p *engine.Pass) {
	if !layered(p) {
		return
	}
	c := p.Ceiling
	if hanging.Jointed(c) && !hanging.CarriesAtJoint(c) {
		p.Report(engine.Finding{
			At: "rib.layer", Related: []string{"rib.width", "rib.segments", "grid.reveal"},
			Text: p.Textf("half a rib, %v wide, has no wood that carries at a joint of its thickest layer at a panel's edge, so its stress can't be computed. Build each half of two layers or more",
				quantity.Length(c.Rib.Width.Get()/2)),
		})
	}
}
