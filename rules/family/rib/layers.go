package rib

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

var layers = engine.Rule{
	ID:       "rib.layers",
	Title:    "the layers of a sawn rib make up its width, and divide into two equal halves of whole layers at a seam",
	Why:      "Stock is planed before it is built up, so four layers of 4/4 are less than 4in. A seam can't run through a layer.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "sum", Title: "difference of the layers' sum from the width", Value: quantity.Length(0.0005).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Valid:  "hardwood surfaced on two sides; thicknesses from published dimension tables",
		Source: cite.HardwoodSizes.At("surfaced on two sides"),
	},
	Check: checkLayers,
}

func checkLayers(p *engine.Pass) {
	if !layered(p) {
		return
	}
	list := p.Ceiling.RibLayers.Get()
	checkSum(p, list)
	if n := len(list); n%2 != 0 || !mirrored(list) {
		p.Report(engine.Finding{
			At: "rib.layer", Related: []string{"rib.width"},
			Text: p.Textf("the %d layers do not divide into two equal halves at a seam. Use an even number, symmetrical about the middle", n),
		})
	}
	checkLayerDepths(p)
}

// layered reports whether the rib is sawn and the spec has its layers; of a sawn rib
// without, they are absent.
func layered(p *engine.Pass) bool {
	if p.Ceiling.Rib.Construction.Get() != "sawn" {
		return false
	}
	if p.Ceiling.Rib.Layers.Get() == 0 {
		p.Absent("rib.layer")
		return false
	}
	return true
}

func checkSum(p *engine.Pass, list []layout.Layer) {
	sum := 0.0
	for _, l := range list {
		sum += l.Width
	}
	if limit := p.Limit("sum"); math.Abs(sum-p.Ceiling.Rib.Width.Get()) > limit.SI {
		p.Report(engine.Finding{
			At: "rib.width", Related: []string{"rib.layer"},
			Text:     p.Textf("the layers' surfaced stock adds up to %v and the rib is %v wide, a difference of {measured}; the maximum is {limit}", quantity.Length(sum), quantity.Length(p.Ceiling.Rib.Width.Get())),
			Measured: quantity.Length(math.Abs(sum - p.Ceiling.Rib.Width.Get())).Value(), Bound: limit,
			Offers: []engine.Offer{{Key: "rib.width", Value: p.Exactly(sum)}},
		})
	}
}

// mirrored reports whether the layers are alike from the middle outward.
func mirrored(list []layout.Layer) bool {
	for i := range len(list) / 2 {
		if list[i] != list[len(list)-1-i] {
			return false
		}
	}
	return true
}

// checkLayerDepths compares each layer, and what set-back layers leave, with
// the rib's depth and the reveal.
func checkLayerDepths(p *engine.Pass) {
	c := p.Ceiling
	setback := 0.0
	for i, l := range c.RibLayers.Get() {
		setback = max(setback, l.From)
		if l.To > c.Rib.Depth.Get()+p.Limit("sum").SI {
			p.Report(engine.Finding{
				At: spec.Key("rib", "layer", i+1, "depth"), Related: []string{"rib.depth"},
				Text:     "the layer reaches {measured} from the intrados, and the rib is {limit} deep",
				Measured: quantity.Length(l.To).Value(), Bound: p.Stated("rib.depth", quantity.Length(c.Rib.Depth.Get()).Value()),
			})
		}
	}
	r := c.Grid.Reveal
	if r.At.Get() != "layers" || !r.Depth.Given() {
		return
	}
	if d := math.Abs(r.Depth.Get() - setback); d > p.Limit("sum").SI {
		p.Report(engine.Finding{
			At: "grid.reveal.depth", Related: []string{"rib.layer"},
			Text:     "the reveal is to be {limit} deep, and the layers are set back by {measured}",
			Measured: quantity.Length(setback).Value(), Bound: p.Stated("grid.reveal.depth", quantity.Length(r.Depth.Get()).Value()),
		})
	}
}
