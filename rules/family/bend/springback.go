package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var laminationThin = engine.Rule{
	ID:       "bend.lamination-thin",
	Title:    "the laminations are not thinner than necessary",
	Why:      "Each extra strip adds a glue line, two planed faces and a saw kerf. Very thin strips waste wood and press time.",
	Severity: engine.Note,
	Figures:  []string{"rib.lamination-ratio"},
	Limits: []engine.Limit{{
		Key: "ratio", Title: "ratio of radius to strip thickness", Value: quantity.Value{SI: 600, Unit: quantity.One},
		Sense: engine.AtMost, Lowest: 1, Most: 1e6, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "R / t ≤ ratio",
		Symbols: []engine.Symbol{
			{Name: "R", Means: "tightest radius of the intrados", Unit: "m"},
			{Name: "t", Means: "thickness of one strip", Unit: "m"},
			{Name: "ratio", Means: "ratio above which strips are thinner than necessary", Unit: "1"},
		},
		Source: cite.CommonPractice(),
	},
	Check: checkLaminationThin,
}

func checkLaminationThin(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("ratio")
	t, radius := c.Rib.Lamination.Get(), c.Vault.TightestRadius.Get()
	if t == 0 || math.IsInf(radius, 1) || radius/t <= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At: "rib.lamination", Related: []string{"vault.rise"},
		Text:     p.Textf("strips of %v are bent to a radius of %v, {measured} times their thickness; above {limit} they are thinner than necessary", quantity.Length(t), quantity.Length(radius)),
		Measured: quantity.Value{SI: radius / t, Unit: quantity.One}, Bound: limit,
	})
}

var springback = engine.Rule{
	ID:       "bend.springback",
	Title:    "the uncertainty of the springback, after the form is corrected for it, is within the form's tolerance",
	Why:      "The form is made tighter by the expected springback. The actual springback differs, and changes the rise.",
	Severity: engine.Query,
	Figures:  []string{"rib.laminations", "rib.form-radius", "rib.springback-left"},
	Limits: []engine.Limit{{
		Key: "uncertainty", Title: "uncertainty of springback, as a share of the expected value", Value: quantity.Share(timber.SpringbackUncertainty).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.BentStrips.At("4 strips of 3/32in on a 20in form came to 22in, where 1/n² gives 21.33in"),
	}},
	Basis: engine.Basis{
		Formula: "±u/n² of the curvature, as a change of rise",
		Symbols: []engine.Symbol{
			{Name: "u", Means: "uncertainty of the springback", Unit: "1"},
			{Name: "n", Means: "strips in the rib's depth", Unit: "1"},
		},
		Valid:  "dry strips of equal thickness, a rigid glue line; practitioners consider no formula reliable, so make a test piece",
		Source: cite.Derivation("the glued stack is n³ times as stiff as one strip, the loose stack n times"),
	},
	Check: checkSpringback,
}

func checkSpringback(p *engine.Pass) {
	c := p.Ceiling
	n := c.Laminations()
	if n == 0 || math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return
	}
	if n <= 1 {
		p.Report(engine.Finding{At: "rib.lamination", Text: "one strip springs back straight; use at least two"})
		return
	}
	uncertain := p.Limit("uncertainty")
	off := func(strips float64) float64 { return math.Abs(c.RiseBy(uncertain.SI * timber.Springback(strips))) }
	left := off(n)
	form := p.Stated("panels.form", quantity.Length(c.Panel.Form.Get()).Value())
	if left <= form.SI {
		return
	}
	least := n + 1
	for least < layout.MostAlike && off(least) > form.SI {
		least++
	}
	p.Report(engine.Finding{
		At: "rib.lamination", Related: []string{"panels.form", "rib.depth"},
		Text: p.Textf("a rib of %.4g strips is glued on a form corrected to a radius of %v; springback that varies by ±%v changes its rise by up to {measured}; the form's tolerance is {limit}",
			n, quantity.Length(timber.FormRadius(c.Vault.Radius.Get(), n)), uncertain.Value),
		Measured: quantity.Length(left).Value(), Bound: form,
		Offers: strips(p, least),
	})
}
