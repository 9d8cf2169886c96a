package bend

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var skinGlue = engine.Rule{
	ID:       "bend.skin-glue",
	Title:    "the skin's glue is wide enough, and its clamps, staples or nails are close enough",
	Why:      "A bent sheet springs off the frame between clamps that are far apart. A narrow line of glue fails.",
	Severity: engine.Hold,
	Needs:    []string{"skin.glue"},
	Limits: []engine.Limit{
		{Key: "width", Title: "width of glue on a member", Value: quantity.Length(0.010).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "nails", Title: "distance between staples or nails that press the glue", Value: quantity.Length(3 * quantity.Inch).Value(), Sense: engine.AtMost, Lowest: 0.001, Most: 1, Source: cite.NavyBuilder.At("fabrication of trusses: plywood of 3/8 in or 1/2 in glued to members, nails 3 in apart, staples to press the glue until it is set")},
		{Key: "clamps", Title: "distance between clamps with a caul", Value: quantity.Length(0.150).Value(), Sense: engine.AtMost, Lowest: 0.001, Most: 10, Source: cite.CommonPractice()},
	},
	Basis: engine.Basis{
		Formula: "width ≤ g ≤ b; s ≤ nails or clamps",
		Symbols: []engine.Symbol{
			{Name: "g", Means: "width of glue on a member", Unit: "m"},
			{Name: "b", Means: "width of the half rail, or of the half rib if the skin lies behind it", Unit: "m"},
			{Name: "s", Means: "distance between clamps, staples or nails", Unit: "m"},
		},
		Valid:  "the glue's maker states the pressure; a vacuum bag presses evenly",
		Source: cite.FAA4313.At("1-10: uneven pressure makes strong and weak places in one joint"),
	},
	Check: checkSkinGlue,
}

func checkSkinGlue(p *engine.Pass) {
	g := p.Ceiling.Skin.Glue
	checkGlueWidth(p)
	press := g.Press.Get()
	if press == "bag" {
		return
	}
	limit := p.Limit("nails")
	if press == "clamps" {
		limit = p.Limit("clamps")
	}
	switch s := g.Spacing; {
	case !s.Given():
		p.Absent(s.Key())
	case s.Get() > limit.SI:
		p.Report(engine.Finding{
			At: s.Key(), Severity: engine.Query, Related: []string{"skin.glue.press"},
			Text:     p.Textf("the %s that press the skin to the frame are {measured} apart; the maximum is {limit}", press),
			Measured: quantity.Length(s.Get()).Value(), Bound: limit,
			Offers: []engine.Offer{{Key: s.Key(), Value: p.Below(limit.SI)}},
		})
	}
}

// checkGlueWidth compares the width of glue with the narrowest member and with
// the least.
func checkGlueWidth(p *engine.Pass) {
	c, g := p.Ceiling, p.Ceiling.Skin.Glue.Width
	if !g.Given() {
		p.Absent(g.Key())
		return
	}
	key, has := "rail.width", c.Rail.Width.Get()/2
	if rib := c.Rib.Width.Get() / 2; !c.Skin.Between.Get() && rib < has {
		key, has = "rib.width", rib
	}
	least := p.Limit("width")
	f := engine.Finding{At: g.Key(), Related: []string{key}, Measured: quantity.Length(g.Get()).Value()}
	switch {
	case g.Get() > has:
		f.Bound = p.Stated(key, quantity.Length(has).Value())
		f.Text = "the glue is {measured} wide; at its edge a panel has half a member, {limit} wide"
		f.Offers = []engine.Offer{{Key: g.Key(), Value: p.Below(has)}}
	case g.Get() < least.SI:
		f.Severity, f.Bound = engine.Query, least
		f.Text = "the skin is glued over {measured} of a member; the minimum is {limit}"
		f.Offers = []engine.Offer{{Key: g.Key(), Value: p.Above(least.SI)}}
	default:
		return
	}
	p.Report(f)
}
