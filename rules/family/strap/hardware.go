package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var screws = engine.Rule{
	ID:       "strap.screws",
	Title:    "screws in withdrawal hold the strap's worst force, and go deep enough",
	Why:      "The screws are weaker than the strap. They can pull out of the wood, or be too short.",
	Severity: engine.Query,
	RefersTo: engine.ToEngineer, // screws in shear
	Needs:    []string{"strap.stations", "strap.screws", "strap.fixing"},
	Limits: []engine.Limit{
		{Key: "penetration", Title: "length of thread in the wood, in shank diameters", Value: quantity.Value{SI: 6, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 50, Source: cite.AWCScrews.At("6D including the tip, for wood screws in shear; for screws in withdrawal, common practice")},
		{Key: "duration", Title: "load duration factor of a permanent load", Value: quantity.Value{SI: 0.9, Unit: quantity.One}, Sense: engine.AtMost, Lowest: 0.1, Most: 2, Source: cite.NDS.At("2.3.2")},
	},
	Basis: engine.Basis{
		Formula: "W = 2850·G²·D·p·n·C_D",
		Symbols: []engine.Symbol{
			{Name: "W", Means: "allowable withdrawal of the screws at one end", Unit: "lb"},
			{Name: "G", Means: "specific gravity of the wood", Unit: "1"},
			{Name: "D", Means: "shank diameter", Unit: "in"},
			{Name: "p", Means: "length of thread in the wood", Unit: "in"},
			{Name: "n", Means: "number of screws at one end", Unit: "1"},
			{Name: "C_D", Means: "load duration factor", Unit: "1"},
		},
		Valid:  "wood screws in side grain, as figures for the engineer; screws in shear have no figure here and are referred",
		Source: cite.CivilFormulas.At("eq. 6.37"),
	},
	Check: checkScrews,
}

func checkScrews(p *engine.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	p.Unweighed()
	force, n, in := hanging.Worst(cases)
	st := p.Ceiling.Strap
	checkPenetration(p)
	for _, end := range []struct {
		key, on, face string
		out           bool
	}{
		{"strap.fixing.top", "framing", st.Fixing.Top.Get(), st.Fixing.Top.Get() == "underside"},
		{"strap.fixing.bottom", "rib", st.Fixing.Bottom.Get(), st.Fixing.Bottom.Get() == "back"},
	} {
		if !end.out {
			p.Report(engine.Finding{
				At: end.key, Severity: engine.Refer,
				Text: p.Textf("the screws in the %s are on its %s and carry strap %d's %v in shear. dryfit does not compute screws in shear; they are referred to the engineer", end.on, side(end.face), n, quantity.Force(force)),
			})
			continue
		}
		if wood, err := endWood(p, end.on); err != "" {
			p.NotChecked("room.framing.species", err)
		} else {
			checkWithdrawal(p, end.key, end.on, wood, force, n, in.Words())
		}
	}
}

// endWood is the wood that the screws of one end are in.
func endWood(p *engine.Pass, end string) (timber.Species, string) {
	if end == "rib" {
		return p.Ceiling.Rib.Species.Get(), ""
	}
	name := p.Ceiling.Room.Framing.Species.Get()
	if name == "" {
		return timber.Species{}, "the framing's species is not stated"
	}
	s, err := p.Standards.Species(name)
	if err != nil {
		return s, err.Error()
	}
	return s, ""
}
