package joint

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var count = engine.Rule{
	ID:       "joint.count",
	Title:    "there are not too many field joints to align on the lift",
	Why:      "The crew fits every loose tenon overhead, with the panel on the lift. Each extra tenon can bind.",
	Severity: engine.Note,
	Figures:  []string{"joint.count"},
	Limits: []engine.Limit{{
		Key: "most", Title: "number of loose tenons in all seams",
		Value: quantity.Value{SI: 60, Unit: quantity.One}, Sense: engine.AtMost, Lowest: 0, Most: 1e6,
		Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "n = ceil((arc − 2·edge) / spacing) + 1 for a seam",
		Symbols: []engine.Symbol{
			{Name: "arc", Means: "length of the seam on the intrados", Unit: "m"},
			{Name: "edge", Means: "distance of the first tenon from the seam's end", Unit: "m"},
			{Name: "spacing", Means: "greatest distance between tenons", Unit: "m"},
		},
		Source: cite.CommonPractice(),
	},
	Check: checkCount,
}

func checkCount(p *engine.Pass) {
	seam := p.Ceiling.Seam
	limit := p.Limit("most")
	if float64(seam.Tenons.Get()) <= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At:       "panels",
		Related:  []string{"seam.spacing"},
		Text:     p.Textf("the %d seams have {measured} loose tenons; {limit} is the usual limit", seam.Count.Get()+seam.EdgeSeams.Get()),
		Measured: quantity.Value{SI: float64(seam.Tenons.Get()), Unit: quantity.One},
		Bound:    limit,
	})
}
