package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

// Design withdrawal of a wood screw in side grain: 2850·G²·D in pounds by inch
// of thread, D in inches. In N by m of thread, D in m: pounds by inch twice over
// is 4.4482216/0.0254².
const withdrawalFactor = 2850 * quantity.PoundForce / (quantity.Inch * quantity.Inch)

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
		Text:     p.Textf("strap %d pulls on its %s in the %s with {measured} %s%s; the limit for withdrawal from %s is {limit}", n, amount(int(s.Count.Get()), "screw", "screws"), on, words, heavy, wood.Name),
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
			Text:     p.Textf("the screws go %v into the wood, {measured} of their diameter; the minimum is {limit}", quantity.Length(s.Penetration.Get())),
			Measured: quantity.Value{SI: by, Unit: quantity.One}, Bound: limit,
			Offers: []engine.Offer{{Key: "strap.screws.penetration", Value: p.Above(limit.SI * s.Diameter.Get())}},
		})
	}
}
