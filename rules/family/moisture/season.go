package moisture

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var season = engine.Rule{
	ID:       "moisture.season",
	Title:    "each season's air is in the range of the published moisture contents, and the dry season is drier than the wet season",
	Why:      "Outside that range, or with the seasons swapped, the movement of the wood has no figure. Rules that need it are not checked.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Valid:  "-1.2C to 132C and up to 95% relative humidity, the range of the table of moisture contents",
		Source: cite.WoodHandbook2021.At("table 4-2 and equation 4-5"),
	},
	Check: checkSeason,
}

func checkSeason(p *engine.Pass) {
	c := p.Ceiling.Climate
	for _, name := range []string{"dry", "wet"} {
		if fault := c.Fault(name); fault != nil {
			p.Report(engine.Finding{At: fault.Key, Text: p.Explain(fault.Cause) + "; the rules that need this season are not checked"})
		}
	}
	if c.Swapped() {
		p.Report(engine.Finding{
			At: "climate.dry", Related: []string{"climate.wet"},
			Text: p.Textf("the wood has %v of moisture in the dry season and %v in the wet season, so the two are swapped; rules that need the drier or the wetter season are not checked",
				quantity.Share(c.Dry.Get()), quantity.Share(c.Wet.Get())),
		})
	}
}

var air = engine.Rule{
	ID:       "moisture.air",
	Title:    "the room's air stays in the range for woodwork",
	Why:      "Woodwork outside that range for longer than a day moves more than its joints are made for.",
	Severity: engine.Note,
	Limits: []engine.Limit{
		{Key: "least", Title: "relative humidity", Value: quantity.Share(0.30).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.AWICare.At("zone 2, which covers most of the United States")},
		{Key: "most", Title: "relative humidity", Value: quantity.Share(0.55).Value(), Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.AWICare.At("zone 2, which covers most of the United States")},
		{Key: "time", Title: "time outside that range", Value: quantity.Value{SI: 24, Unit: quantity.Hour}, Sense: engine.AtMost, Lowest: 0, Most: 10000, Source: cite.AWICare.At("3.2.6")},
	},
	Basis: engine.Basis{Valid: "rooms with controlled air; a season lasts longer than the permitted time outside the range", Source: cite.AWICare.At("3.2.4 and 3.2.6")},
	Check: checkAir,
}

func checkAir(p *engine.Pass) {
	least, most, time := p.Limit("least"), p.Limit("most"), p.Limit("time")
	for _, s := range []struct {
		name string
		air  layout.Air
	}{{"dry", p.Ceiling.Climate.Air.Dry}, {"wet", p.Ceiling.Climate.Air.Wet}} {
		humidity := s.air.Humidity.Get()
		f := engine.Finding{At: "climate." + s.name, Measured: quantity.Share(humidity).Value()}
		switch {
		case humidity < least.SI:
			f.Bound, f.Text = least, "in the "+s.name+" season the room's air is at {measured}; the minimum is {limit}. Woodwork may be in drier air"
		case humidity > most.SI:
			f.Bound, f.Text = most, "in the "+s.name+" season the room's air is at {measured}; the maximum is {limit}. Woodwork may be in more humid air"
		default:
			continue
		}
		f.Text += p.Textf(" for at most %v at a time, and a season is longer", time.Value)
		p.Report(f)
	}
}
