package moisture

import (
	"math"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/layout"
	"dryfit/spec/quantity"
)

var shop = rules.Rule{
	ID:       "moisture.shop",
	Title:    "the shop's moisture content is near the middle of that in service",
	Why:      "Wood made up too wet or too dry moves all one way once it is hung.",
	Severity: rules.Query,
	Figures:  []string{"climate.shop.moisture", "climate.dry.moisture", "climate.wet.moisture"},
	Limits: []rules.Limit{{
		Key: "apart", Title: "shop from the middle of the seasons, in moisture content", Value: quantity.Share(0.02).Value(),
		Sense: rules.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{
		Formula: "|M_s − (M_d + M_w)/2|",
		Symbols: []rules.Symbol{
			{Name: "M_s", Means: "equilibrium moisture content in the shop", Unit: "1"},
			{Name: "M_d", Means: "in the dry season", Unit: "1"},
			{Name: "M_w", Means: "in the wet season", Unit: "1"},
		},
		Valid:  "equilibrium moisture contents midway between wetting and drying",
		Source: cite.WoodHandbook2021.At("equation 4-5"),
	},
	Check: checkShop,
}

// apart is how far the shop is from the middle of the seasons, in moisture
// content.
func apart(p *rules.Pass) float64 {
	m := p.Ceiling.Climate
	return m.Shop.Get() - (m.Dry.Get()+m.Wet.Get())/2
}

func checkShop(p *rules.Pass) {
	limit := p.Limit("apart")
	if by := apart(p); math.Abs(by) > limit.SI {
		how := "wetter"
		if by < 0 {
			how = "drier"
		}
		p.Report(rules.Finding{
			At: "climate.shop", Related: []string{"climate.dry", "climate.wet"},
			Text:     "the shop's wood is {measured} of moisture " + how + " than the middle of the seasons; the most is {limit}",
			Measured: quantity.Share(math.Abs(by)).Value(), Bound: limit,
		})
	}
}

var acclimatise = rules.Rule{
	ID:       "moisture.acclimatise",
	Title:    "the panels come to the room's air before they are hung",
	Why:      "Panels hung straight from the van do their moving in place, against each other.",
	Severity: rules.Note,
	Limits: []rules.Limit{
		{Key: "differs", Title: "difference of moisture content that needs time", Value: quantity.Share(0.01).Value(), Sense: rules.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice()},
		{Key: "time", Title: "in the room's air before hanging", Value: quantity.Value{SI: 72, Unit: quantity.Hour}, Sense: rules.AtLeast, Lowest: 0, Most: 10000, Source: cite.AWICare.At("3.2.5")},
	},
	Basis: rules.Basis{Valid: "the room's own air, with heating and ventilation running", Source: cite.AWICare.At("3.2.5")},
	Check: checkAcclimatise,
}

func checkAcclimatise(p *rules.Pass) {
	limit, time := p.Limit("differs"), p.Limit("time")
	if by := math.Abs(apart(p)); by > limit.SI {
		p.Report(rules.Finding{
			At:       "climate.shop",
			Text:     p.Textf("the shop's wood is {measured} of moisture from the middle of the seasons, over {limit}: leave the panels in the room's air for %v before hanging", time.Value),
			Measured: quantity.Share(by).Value(), Bound: limit,
		})
	}
}

var cupping = rules.Rule{
	ID:       "moisture.cupping",
	Title:    "both faces of the panels are in like air, or sealed alike",
	Why:      "A panel that is dry on one face and damp on the other, or sealed on one only, cups.",
	Severity: rules.Note,
	Limits: []rules.Limit{{
		Key: "apart", Title: "roof space from room, in moisture content", Value: quantity.Share(0.02).Value(),
		Sense: rules.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{Valid: "reasons to expect cupping; how much has no honest figure", Source: cite.CommonPractice()},
	Check: checkCupping,
}

func checkCupping(p *rules.Pass) {
	c, limit := p.Ceiling, p.Limit("apart")
	if c.Finish.Sides.Get() == "seen" {
		p.Report(rules.Finding{At: "finish.sides", Text: "only the seen faces are sealed, so that the backs take up moisture faster and the panels cup; seal all faces alike"})
	}
	above := c.Climate.Above
	if !above.Given() {
		return
	}
	for _, s := range []struct {
		name string
		room layout.Number
		air  layout.Air
	}{{"dry", c.Climate.Dry, above.Dry}, {"wet", c.Climate.Wet, above.Wet}} {
		m, err := s.air.Moisture()
		if err != nil {
			p.NotChecked("climate.above."+s.name, err.Error())
			continue
		}
		if by := math.Abs(m - s.room.Get()); by > limit.SI {
			p.Report(rules.Finding{
				At:       "climate.above." + s.name,
				Text:     "in the " + s.name + " season the backs come to {measured} of moisture other than the faces; past {limit} the panels cup",
				Measured: quantity.Share(by).Value(), Bound: limit,
			})
		}
	}
}
