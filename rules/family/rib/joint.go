package rib

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var joint = engine.Rule{
	ID:       "rib.joint",
	Title:    "where one layer of a sawn rib is jointed, others carry",
	Why:      "At a joint a layer carries nothing: half a rib of one layer hangs on the glue of two butted ends.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Formula: "A_h − max A_l > 0",
		Symbols: []engine.Symbol{
			{Name: "A_h", Means: "area of the half rib at a panel's edge, net of its reveal; what is left of a layer in it counts from 0.5mm", Unit: "m²"},
			{Name: "A_l", Means: "areas of the layers in it", Unit: "m²"},
		},
		Valid:  "sawn ribs of layers, of more than one segment in a panel; one layer jointed at a place",
		Source: cite.Derivation("area of the section without its largest layer"),
	},
	Check: checkJoint,
}

func checkJoint(p *engine.Pass) {
	c := p.Ceiling
	if c.Rib.Construction.Get() != "sawn" {
		return
	}
	if c.Rib.Layers.Get() == 0 {
		p.Absent("rib.layer")
		return
	}
	if hanging.Jointed(c) && !hanging.CarriesAtJoint(c) {
		p.Report(engine.Finding{
			At: "rib.layer", Related: []string{"rib.width", "rib.segments", "grid.reveal"},
			Text: p.Textf("where the thickest layer of the %v of half a rib at a panel's edge is jointed, nothing beside it is left to carry, so that the rib's stress can't be given: build each half of two layers or more",
				quantity.Length(c.Rib.Width.Get()/2)),
		})
	}
}
