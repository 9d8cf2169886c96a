package moisture

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var acclimatise = engine.Rule{
	ID:       "moisture.acclimatise",
	Title:    "the panels adapt to the room's air before they are hung",
	Why:      "Panels hung straight from the van swell or shrink in place, against each other.",
	Severity: engine.Note,
	Limits: []engine.Limit{
		{Key: "differs", Title: "difference in moisture content above which the panels need time", Value: quantity.Share(0.01).Value(), Sense: engine.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice()},
		{Key: "time", Title: "time in the room's air before hanging", Value: quantity.Value{SI: 72, Unit: quantity.Hour}, Sense: engine.AtLeast, Lowest: 0, Most: 10000, Source: cite.AWICare.At("3.2.5")},
	},
	Basis: engine.Basis{Valid: "the room's own air, with heating and ventilation running", Source: cite.AWICare.At("3.2.5")},
	Check: checkAcclimatise,
}

func checkAcclimatise(p *engine.Pass) {
	limit, time := p.Limit("differs"), p.Limit("time")
	by, _, known := apart(p)
	if by = math.Abs(by); known && by > limit.SI {
		p.Report(engine.Finding{
			At:       "climate.shop",
			Text:     p.Textf("the shop's moisture content is {measured} from the middle of the seasons; the limit is {limit}. Leave the panels in the room's air for %v before hanging", time.Value),
			Measured: quantity.Share(by).Value(), Bound: limit,
		})
	}
}
