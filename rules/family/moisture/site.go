package moisture

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var shop = engine.Rule{
	ID:       "moisture.shop",
	Title:    "the shop's moisture content is near the middle of that in service",
	Why:      "Wood made up too wet or too dry moves all one way once it is hung.",
	Severity: engine.Query,
	Figures:  []string{"climate.shop.moisture", "climate.dry.moisture", "climate.wet.moisture"},
	Limits: []engine.Limit{{
		Key: "apart", Title: "shop from the middle of the seasons, in moisture content", Value: quantity.Share(0.02).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.3, Source: cite.WoodHandbook2010.At("table 13-1: 8% on average, single pieces 6% to 10%").FromMemory(),
	}},
	Basis: engine.Basis{
		Formula: "|M_s − (M_d + M_w)/2|",
		Symbols: []engine.Symbol{
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
// content; not known where a season is at fault.
func apart(p *engine.Pass) (by, middle float64, known bool) {
	m := p.Ceiling.Climate
	for _, season := range []string{"dry", "wet"} {
		if fault := m.Fault(season); fault != nil {
			p.Lacks("climate."+season, fault)
			return 0, 0, false
		}
	}
	middle = (m.Dry.Get() + m.Wet.Get()) / 2
	return m.Shop.Get() - middle, middle, true
}

func checkShop(p *engine.Pass) {
	limit := p.Limit("apart")
	by, middle, known := apart(p)
	if !known || math.Abs(by) <= limit.SI {
		return
	}
	how := "wetter"
	if by < 0 {
		how = "drier"
	}
	p.Report(engine.Finding{
		At: "climate.shop", Related: []string{"climate.dry", "climate.wet"},
		Text: p.Textf("the shop's wood is {measured} of moisture "+how+" than the middle of the seasons, %v; the most is {limit}",
			quantity.Share(middle)) + shopAir(p, middle-limit.SI, middle+limit.SI),
		Measured: quantity.Share(math.Abs(by)).Value(), Bound: limit,
	})
}

// shopAir is in which air, as warm as the shop's, the wood lies within a range
// of moisture contents: "" where it is outside the equation's range.
func shopAir(p *engine.Pass, from, to float64) string {
	t := p.Ceiling.Climate.ShopAir.Temperature.Get()
	low, errLow := timber.HumidityFor(t, from)
	high, errHigh := timber.HumidityFor(t, to)
	if errLow != nil || errHigh != nil {
		return ""
	}
	return p.Textf(", which at %v is air of %v to %v", quantity.Temperature(t), quantity.Share(rounded(low)), quantity.Share(rounded(high)))
}

// rounded is a humidity as people say it, in whole percent.
func rounded(humidity float64) float64 { return math.Round(100*humidity) / 100 }

var acclimatise = engine.Rule{
	ID:       "moisture.acclimatise",
	Title:    "the panels come to the room's air before they are hung",
	Why:      "Panels hung straight from the van do their moving in place, against each other.",
	Severity: engine.Note,
	Limits: []engine.Limit{
		{Key: "differs", Title: "difference of moisture content that needs time", Value: quantity.Share(0.01).Value(), Sense: engine.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice()},
		{Key: "time", Title: "in the room's air before hanging", Value: quantity.Value{SI: 72, Unit: quantity.Hour}, Sense: engine.AtLeast, Lowest: 0, Most: 10000, Source: cite.AWICare.At("3.2.5")},
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
			Text:     p.Textf("the shop's wood is {measured} of moisture from the middle of the seasons, over {limit}: leave the panels in the room's air for %v before hanging", time.Value),
			Measured: quantity.Share(by).Value(), Bound: limit,
		})
	}
}

var cupping = engine.Rule{
	ID:       "moisture.cupping",
	Title:    "both faces of the panels are in like air, or sealed alike",
	Why:      "A panel that is dry on one face and damp on the other, or sealed on one only, cups.",
	Severity: engine.Note,
	Limits: []engine.Limit{{
		Key: "apart", Title: "roof space from room, in moisture content", Value: quantity.Share(0.02).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.3, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "reasons to expect cupping; how much has no honest figure", Source: cite.CommonPractice()},
	Check: checkCupping,
}

func checkCupping(p *engine.Pass) {
	c := p.Ceiling
	if c.Finish.Sides.Get() == "seen" {
		p.Report(engine.Finding{At: "finish.sides", Text: "only the seen faces are sealed, so that the backs take up moisture faster and the panels cup; seal all faces alike"})
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
			Text:     "in the " + season + " season the backs come to {measured} of moisture other than the faces; past {limit} the panels cup",
			Measured: quantity.Share(by).Value(), Bound: limit,
		})
	}
}
