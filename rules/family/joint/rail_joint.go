package joint

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

func checkRailTenon(p *engine.Pass, j layout.RailJoint) {
	c := p.Ceiling
	if j.Width.Get() >= c.Rail.Width.Get() {
		p.Report(engine.Finding{
			At: j.Width.Key(), Related: []string{"rail.width"}, Measured: quantity.Length(j.Width.Get()).Value(),
			Text: p.Textf("the tenon is {measured} wide and its rail is %v wide, which leaves no shoulders", quantity.Length(c.Rail.Width.Get())),
		})
	}
	inProportion(p, j.Thickness, "tenon", p.Limit("tenon"))
	deepEnough(p, "tenon is let into the half rib", p.Limit("embedment"))
}

func checkRailDowels(p *engine.Pass, j layout.RailJoint) {
	c := p.Ceiling
	room := math.Max(c.Rail.Width.Get(), c.Rail.Depth.Get())
	if row := float64(j.Count.Get()) * j.Diameter.Get(); row >= room {
		p.Report(engine.Finding{
			At: j.Count.Key(), Related: []string{j.Diameter.Key(), "rail.width", "rail.depth"}, Measured: quantity.Length(row).Value(),
			Text: p.Textf("%d dowels side by side take {measured}; the rail's end is %v", j.Count.Get(), quantity.Length(room)),
		})
	}
	inProportion(p, j.Diameter, "dowel", p.Limit("dowel"))
	deepEnough(p, "dowel is let into the half rib", diameters(p.Limit("diameters"), j))
}

// diameters is a limit in diameters, as a length.
func diameters(b engine.Bound, j layout.RailJoint) engine.Bound {
	b.Value = quantity.Length(b.SI * j.Diameter.Get()).Value()
	return b
}

// inProportion compares a thickness with the rail's.
func inProportion(p *engine.Pass, t layout.Number, what string, most engine.Bound) {
	least, stock := p.Limit("least"), lesser(p.Ceiling)
	f := engine.Finding{At: t.Key(), Severity: engine.Query, Related: []string{"rail.width", "rail.depth"}, Measured: one(t.Get() / stock)}
	word := "maximum"
	switch {
	case t.Get() > most.SI*stock:
		f.Bound, f.Offers = most, []engine.Offer{{Key: t.Key(), Value: p.Below(most.SI * stock)}}
	case t.Get() < least.SI*stock:
		word, f.Bound, f.Offers = "minimum", least, []engine.Offer{{Key: t.Key(), Value: p.Above(least.SI * stock)}}
	default:
		return
	}
	f.Text = p.Textf("the %s of %v is {measured} of the rail's %v; the %s is {limit}", what, quantity.Length(t.Get()), quantity.Length(stock), word)
	p.Report(f)
}

// deepEnough compares how deep the joint goes in with the least.
func deepEnough(p *engine.Pass, how string, least engine.Bound) {
	e := p.Ceiling.RailJoint.Embedment
	if e.Get() >= least.SI {
		return
	}
	p.Report(engine.Finding{
		At: e.Key(), Severity: engine.Query, Measured: quantity.Length(e.Get()).Value(), Bound: least,
		Text:   "the " + how + " {measured}; the minimum is {limit}",
		Offers: []engine.Offer{{Key: e.Key(), Value: p.Above(least.SI)}},
	})
}
