package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

// Design withdrawal of a wood screw in side grain: 2850·G²·D in pounds by inch
// of thread, D in inches. In N by m of thread, D in m: pounds by inch twice over
// is 4.4482216/0.0254².
const withdrawalFactor = 2850 * 4.4482216152605 / (0.0254 * 0.0254)

var screws = engine.Rule{
	ID:       "strap.screws",
	Title:    "the screws hold the strap's worst force where they are pulled out, and go deep enough",
	Why:      "Screws, not the strap, govern: they pull out of the wood, or were too short to begin with.",
	Severity: engine.Query,
	RefersTo: engine.ToEngineer, // screws in shear
	Needs:    []string{"strap.stations", "strap.screws", "strap.fixing"},
	Limits: []engine.Limit{
		{Key: "penetration", Title: "thread in the wood, by shank diameter", Value: quantity.Value{SI: 6, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 50, Source: cite.AWCScrews.At("6D including the tip, of wood screws in shear; of those pulled out, common practice")},
		{Key: "duration", Title: "load duration factor of a load that stays", Value: quantity.Value{SI: 0.9, Unit: quantity.One}, Sense: engine.AtMost, Lowest: 0.1, Most: 2, Source: cite.NDS.At("2.3.2")},
	},
	Basis: engine.Basis{
		Formula: "W = 2850·G²·D·p·n·C_D",
		Symbols: []engine.Symbol{
			{Name: "W", Means: "allowable withdrawal of the screws at one end", Unit: "lb"},
			{Name: "G", Means: "specific gravity of the wood", Unit: "1"},
			{Name: "D", Means: "shank diameter", Unit: "in"},
			{Name: "p", Means: "thread in the wood", Unit: "in"},
			{Name: "n", Means: "screws at one end", Unit: "1"},
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
				Text: p.Textf("the screws in the %s are on its %s and take strap %d's %v in shear, for which no figure is given: referred to the engineer", end.on, end.face, n, quantity.Force(force)),
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

func checkWithdrawal(p *engine.Pass, key, on string, wood timber.Species, force float64, n int, words string) {
	s := p.Ceiling.Strap.Screws
	if !s.Penetration.Given() {
		p.Absent("strap.screws.penetration")
		return
	}
	duration := p.Limit("duration")
	allowed := withdrawalFactor * wood.SG12 * wood.SG12 * s.Diameter.Get() * s.Penetration.Get() * float64(s.Count.Get()) * duration.SI
	most, heavy := p.AtMost(quantity.Force(force).Value())
	if most.SI <= allowed {
		return
	}
	p.Report(engine.Finding{
		At: key, Related: []string{"strap.screws"},
		Text:     p.Textf("strap %d pulls at the %d screws in the %s with {measured} %s%s; in %s they allow {limit} in withdrawal", n, s.Count.Get(), on, words, heavy, wood.Name),
		Measured: most, Bound: p.Published("strap.screws", quantity.Force(allowed).Value(), cite.CivilFormulas.At("eq. 6.37")),
	})
}

func checkPenetration(p *engine.Pass) {
	s, limit := p.Ceiling.Strap.Screws, p.Limit("penetration")
	if !s.Penetration.Given() {
		return
	}
	if by := float64(quantity.Length(s.Penetration.Get()) / quantity.Length(s.Diameter.Get())); by < limit.SI {
		p.Report(engine.Finding{
			At:       "strap.screws.penetration",
			Text:     p.Textf("the screws go %v into the wood, {measured} of their diameter; the least is {limit}", quantity.Length(s.Penetration.Get())),
			Measured: quantity.Value{SI: by, Unit: quantity.One}, Bound: limit,
			Offers: []engine.Offer{{Key: "strap.screws.penetration", Value: p.Above(limit.SI * s.Diameter.Get())}},
		})
	}
}

var section = engine.Rule{
	ID:       "strap.section",
	Title:    "the strap's metal carries its worst force, net of a hole",
	Why:      "A thin strap with a large hole tears at the hole.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations", "strap.hole"},
	Limits: []engine.Limit{
		{Key: "yield", Title: "yield strength", Value: quantity.Stress(228e6).Value(), Sense: engine.AtMost, Lowest: 1e6, Most: 2e9, Source: cite.ASTMA653.At("grade 33").FromMemory()},
		{Key: "ultimate", Title: "tensile strength", Value: quantity.Stress(310e6).Value(), Sense: engine.AtMost, Lowest: 1e6, Most: 2e9, Source: cite.ASTMA653.At("grade 33").FromMemory()},
		{Key: "yield-factor", Title: "safety factor on yield", Value: quantity.Value{SI: 1.67, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 20, Source: cite.AISIS100.At("tension").FromMemory()},
		{Key: "rupture-factor", Title: "safety factor on rupture", Value: quantity.Value{SI: 2, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 1, Most: 20, Source: cite.AISIS100.At("tension").FromMemory()},
	},
	Basis: engine.Basis{
		Formula: "min(F_y·b·t/Ω_y, F_u·(b − h)·t/Ω_u)",
		Symbols: []engine.Symbol{
			{Name: "F_y", Means: "yield strength", Unit: "Pa"},
			{Name: "F_u", Means: "tensile strength", Unit: "Pa"},
			{Name: "b", Means: "width of the strap", Unit: "m"},
			{Name: "t", Means: "its thickness", Unit: "m"},
			{Name: "h", Means: "diameter of the hole", Unit: "m"},
			{Name: "Ω_y", Means: "safety factor on yield", Unit: "1"},
			{Name: "Ω_u", Means: "safety factor on rupture", Unit: "1"},
		},
		Valid: "one hole in line; the steel's own certificate wins", Source: cite.AISIS100.At("tension members").FromMemory(),
	},
	Check: checkSection,
}

func checkSection(p *engine.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	p.Unweighed()
	st := p.Ceiling.Strap
	force, n, in := hanging.Worst(cases)
	yield := p.Limit("yield").SI * st.Width.Get() * st.Thickness.Get() / p.Limit("yield-factor").SI
	rupture := p.Limit("ultimate").SI * (st.Width.Get() - st.Hole.Get()) * st.Thickness.Get() / p.Limit("rupture-factor").SI
	allowed := p.Limit("ultimate")
	allowed.Value = quantity.Force(max(0, min(yield, rupture))).Value()
	if most, heavy := p.AtMost(quantity.Force(force).Value()); most.SI > allowed.SI {
		p.Report(engine.Finding{
			At: "strap.thickness", Related: []string{"strap.width", "strap.hole"},
			Text:     p.Textf("strap %d carries {measured} %s%s; its metal allows {limit} beside the hole", n, in.Words(), heavy),
			Measured: most, Bound: allowed,
		})
	}
}
