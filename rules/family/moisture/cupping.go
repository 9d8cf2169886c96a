package moisture

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var cupping = engine.Rule{
	ID:       "moisture.cupping",
	Title:    "both faces of the panels have similar air and the same sealing",
	Why:      "A panel cups when one face is drier than the other, or only one face is sealed.",
	Severity: engine.Note,
	Limits: []engine.Limit{{
		Key: "apart", Title: "difference in equilibrium moisture content between the air of the roof space and that of the room", Value: quantity.Share(0.02).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "states causes of cupping; its amount can't be computed reliably", Source: cite.CommonPractice()},
	Check: checkCupping,
}

func checkCupping(p *engine.Pass) {
	c := p.Ceiling
	if c.Finish.Sides.Get() == "seen" {
		p.Report(engine.Finding{At: "finish.sides", Text: "only the visible faces are sealed, so the backs take up moisture faster and the panels cup. Seal all faces alike"})
	}
	if above := c.Climate.Above; above.Given() {
		cups(p, "dry", c.Climate.Dry, above.Dry)
		cups(p, "wet", c.Climate.Wet, above.Wet)
	}
}

// cups compares the wood in the air above with that in the room's, of a season.
func cups(p *engine.Pass, season string, room layout.Number, above layout.Air) {
	limit := p.Limit("apart")
	m, err := above.Moisture()
	if err != nil {
		p.NotChecked("climate.above."+season, err.Error())
		return
	}
	if fault := p.Ceiling.Climate.Fault(season); fault != nil {
		p.Lacks("climate."+season, fault)
		return
	}
	if by := math.Abs(m - room.Get()); by > limit.SI {
		p.Report(engine.Finding{
			At:       "climate.above." + season,
			Text:     "in the " + season + " season the moisture contents of the backs and the faces differ by {measured}; the maximum is {limit}, above which the panels cup",
			Measured: quantity.Share(by).Value(), Bound: limit,
		})
	}
}
