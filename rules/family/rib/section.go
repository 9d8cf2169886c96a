package rib

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var section = engine.Rule{
	ID:       "rib.section",
	Title:    "enough wood is left beside the reveal and the tenons of a rib",
	Why:      "A thin wall beside a groove or a mortise splits when the tenon is driven or the panel is knocked.",
	Severity: engine.Hold,
	Limits: []engine.Limit{{
		Key: "left", Title: "wood left", Value: quantity.Length(0.010).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "w/2 − p − g, (d − t)/2 − r",
		Symbols: []engine.Symbol{
			{Name: "w", Means: "width of the rib; at a seam each panel has half of it", Unit: "m"},
			{Name: "p", Means: "projection of the tenon, half its length", Unit: "m"},
			{Name: "g", Means: "width of the reveal at the face toward the coffer", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
			{Name: "t", Means: "thickness of the tenon", Unit: "m"},
			{Name: "r", Means: "depth of the reveal at the seam", Unit: "m"},
		},
		Valid:  "tenons at mid-depth; ribs at seams",
		Source: cite.CommonPractice(),
	},
	Check: checkSection,
}

func checkSection(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("left")
	if c.Seam.Count.Get() == 0 {
		return // no tenon is let into a rib
	}
	tenon := c.Seam.Tenon
	behind, below, reveal := c.Rib.Width.Get()/2-tenon.Length.Get()/2, (c.Rib.Depth.Get()-tenon.Thickness.Get())/2, ""
	if r := c.Grid.Reveal; r.Given() && r.At.Get() == "sides" {
		behind -= r.Width.Get()
		reveal = " and the reveal"
	} else if r.Given() && r.At.Get() == "seam" {
		below -= r.Depth.Get()
		reveal = " and the reveal"
	}
	for _, w := range []struct {
		key, text string
		left      float64
	}{
		{"seam.tenon.length", "behind the tenon" + reveal + " the half rib has {measured} of wood left; the minimum is {limit}", behind},
		{"seam.tenon.thickness", "below the tenon" + reveal + " the rib has {measured} of wood left; the minimum is {limit}", below},
	} {
		if w.left < limit.SI {
			p.Report(engine.Finding{
				At: w.key, Related: []string{"rib.width", "rib.depth", "grid.reveal"}, Text: w.text,
				Measured: quantity.Length(w.left).Value(), Bound: limit,
			})
		}
	}
}
