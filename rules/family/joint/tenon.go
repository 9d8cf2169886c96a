package joint

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

func one(v float64) quantity.Value { return quantity.Value{SI: v, Unit: quantity.One} }

var tenon = engine.Rule{
	ID:       "joint.tenon",
	Title:    "the tenon's thickness is in proportion to the member that it enters",
	Why:      "A tenon that is too thick leaves cheeks that split. A tenon that is too thin bends before it aligns the panels.",
	Severity: engine.Query,
	Limits: []engine.Limit{
		{Key: "least", Title: "ratio of the tenon's thickness to that of the stock", Value: one(0.2), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "most", Title: "ratio of the tenon's thickness to that of the stock", Value: one(0.4), Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
	},
	Basis: engine.Basis{
		Formula: "least ≤ t/T ≤ most",
		Symbols: []engine.Symbol{
			{Name: "t", Means: "thickness of the tenon", Unit: "m"},
			{Name: "T", Means: "smaller side of the half rib's or half rail's section at the seam, clear of the reveal", Unit: "m"},
			{Name: "least", Means: "least ratio", Unit: "1"},
			{Name: "most", Means: "greatest ratio", Unit: "1"},
		},
		Valid:  "about one third is the rule of the trade; the range allows for the cutters that a shop has",
		Source: cite.TenonPreview.At("tenon about one third of the stock"),
	},
	Check: checkTenon,
}

func checkTenon(p *engine.Pass) {
	c, least, most := p.Ceiling, p.Limit("least"), p.Limit("most")
	t := c.Seam.Tenon.Thickness.Get()
	for _, s := range stocks(c) {
		f := engine.Finding{At: "seam.tenon.thickness", Related: []string{s.key}}
		if s.lesser() <= 0 {
			f.Text = p.Textf("the reveal leaves no wood in the %s for a tenon of %v", s.name, quantity.Length(t))
			p.Report(f)
			continue
		}
		r := t / s.lesser()
		f.Measured = one(r)
		switch {
		case r > most.SI:
			f.Bound, f.Offers = most, thickness(p, most.SI*s.lesser(), p.Below)
		case r < least.SI:
			f.Bound, f.Offers = least, thickness(p, least.SI*s.lesser(), p.Above)
		default:
			continue
		}
		word := "maximum"
		if f.Bound.Name == least.Name {
			word = "minimum"
		}
		f.Text = p.Textf("the tenon of %v is {measured} of the %v that the %s has clear of the reveal; the %s is {limit}", quantity.Length(t), quantity.Length(s.lesser()), s.name, word)
		p.Report(f)
	}
}

var wall = engine.Rule{
	ID:       "joint.wall",
	Title:    "each mortise leaves enough wood around it",
	Why:      "A thin wall between the mortise and the reveal, the back or the coffer's side breaks out when the tenon is driven.",
	Severity: engine.Hold,
	Limits: []engine.Limit{{
		Key: "tenons", Title: "wall, in thicknesses of the tenon", Value: one(1), Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "min((d − t)/2, b − l/2 − a/2) ≥ tenons·t",
		Symbols: []engine.Symbol{
			{Name: "d", Means: "depth of plain wood at the seam, clear of the reveal", Unit: "m"},
			{Name: "t", Means: "thickness of the tenon", Unit: "m"},
			{Name: "b", Means: "width of the half rib or half rail", Unit: "m"},
			{Name: "l", Means: "length of the tenon", Unit: "m"},
			{Name: "a", Means: "depth of both mortises less the length of the tenon, 1/16 in for glue and air", Unit: "m"},
			{Name: "tenons", Means: "least wall, in thicknesses", Unit: "1"},
		},
		Valid:  "mortises in the middle of the plain wood; rib.section checks the wood behind a mortise in a half rib",
		Source: cite.LooseTenons.At("a loose tenon is 1/16 in shorter than its two mortises"),
	},
	Check: checkWall,
}

func checkWall(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("tenons")
	t := c.Seam.Tenon
	least := limit
	least.Value = quantity.Length(limit.SI * t.Thickness.Get()).Value()
	for _, s := range stocks(c) {
		beside, behind := (s.depth.Get()-t.Thickness.Get())/2, s.width.Get()-t.Length.Get()/2-layout.MortiseAir/2
		f := engine.Finding{At: "seam.tenon.thickness", Related: []string{s.key, "grid.reveal"}, Measured: quantity.Length(beside).Value()}
		where := "beside"
		if behind < beside && s.key != "rib.width" || behind <= 0 { // of a half rib rib.section says what is left
			where = "behind"
			f.At, f.Measured = "seam.tenon.length", quantity.Length(behind).Value()
		}
		left := f.Measured.SI
		switch {
		case left <= 0:
			f.Text = p.Textf("the mortise breaks out of the %s: its wood is %v deep clear of the reveal and %v wide", s.name, quantity.Length(math.Max(0, s.depth.Get())), quantity.Length(s.width.Get()))
			f.Measured = quantity.Value{}
		case left < least.SI:
			f.Text = p.Textf("{measured} of wood is left %s the mortise in the %s; the minimum is the tenon's thickness %s{limit}", where, s.name, times(limit.SI))
			f.Bound, f.Severity = least, engine.Query
		default:
			continue
		}
		p.Report(f)
	}
}

// times is a factor in a sentence; one is not said.
func times(n float64) string {
	if n == 1 {
		return "of "
	}
	return "times " + quantity.Metric.Format(one(n)) + ", "
}
