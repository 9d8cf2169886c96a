package moisture

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

var shop = engine.Rule{
	ID:       "moisture.shop",
	Title:    "the wood's moisture content in the shop is near the middle of its range in service",
	Why:      "Wood that is too wet or too dry in the shop moves one way only after it is hung.",
	Severity: engine.Query,
	Figures:  []string{"climate.shop.moisture", "climate.dry.moisture", "climate.wet.moisture"},
	Limits: []engine.Limit{{
		Key: "apart", Title: "difference in moisture content between the shop and the middle of the seasons", Value: quantity.Share(0.02).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.3, Source: cite.WoodHandbook2010.At("table 13-1: 8% on average, single pieces 6% to 10%").FromMemory(),
	}},
	Basis: engine.Basis{
		Formula: "|M_s − (M_d + M_w)/2|",
		Symbols: []engine.Symbol{
			{Name: "M_s", Means: "equilibrium moisture content in the shop", Unit: "1"},
			{Name: "M_d", Means: "equilibrium moisture content in the dry season", Unit: "1"},
			{Name: "M_w", Means: "equilibrium moisture content in the wet season", Unit: "1"},
		},
		Valid:  "equilibrium moisture contents, midway between those of wetting and drying",
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
	how := "above"
	if by < 0 {
		how = "below"
	}
	p.Report(engine.Finding{
		At: "climate.shop", Related: []string{"climate.dry", "climate.wet"},
		Text: p.Textf("the wood's moisture content in the shop is {measured} "+how+" the middle of the seasons, %v; the maximum is {limit}",
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
	return p.Textf(". At %v, air of %v to %v relative humidity is within the limit", quantity.Temperature(t), quantity.Share(rounded(low)), quantity.Share(rounded(high)))
}

// rounded is a humidity as people say it, in whole percent.
func rounded(humidity float64) float64 { return math.Round(100*humidity) / 100 }
