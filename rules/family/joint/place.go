package joint

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var spacing = engine.Rule{
	ID:       "joint.spacing",
	Title:    "the tenons are close enough to draw the seam into line",
	Why:      "Two bent edges step past each other between tenons that are far apart. Mortises that are too close run into each other.",
	Severity: engine.Hold,
	Limits: []engine.Limit{{
		Key: "most", Title: "distance between the tenons of a seam, middle to middle", Value: quantity.Length(0.3).Value(), Sense: engine.AtMost, Lowest: 0.01, Most: 10, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "w + a < (A − 2·e)/(n − 1) ≤ most",
		Symbols: []engine.Symbol{{Name: "w", Means: "width of the tenon", Unit: "m"}, {Name: "a", Means: "extra width of a wide mortise, 1/16 in; 0 if all are snug", Unit: "m"}, {Name: "most", Means: "greatest distance between tenons, middle to middle", Unit: "m"}, {Name: "A", Means: "length of the seam in one piece of the arch", Unit: "m"}, {Name: "e", Means: "distance of the first tenon from the seam's end", Unit: "m"}, {Name: "n", Means: "number of tenons in the seam", Unit: "1"}},
		Source:  cite.CommonPractice(),
	},
	Check: checkSpacing,
}

func checkSpacing(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("most")
	w := c.Seam.Tenon.Width.Get()
	mortise := w
	if c.Seam.Mortise.Get() != "all snug" {
		mortise += layout.MortiseAir
	}
	for _, s := range stocks(c) {
		at := c.TenonStations(s.seam.Get())
		if len(at) < 2 {
			continue
		}
		pitch := at[1] - at[0]
		f := engine.Finding{At: "seam.spacing", Measured: quantity.Length(pitch).Value()}
		switch {
		case pitch <= mortise:
			f.Related = []string{"seam.tenon.width", "seam.edge"}
			f.Text = p.Textf("the tenons in the seam of the %s are {measured} apart, middle to middle, and their mortises %v wide: they run into each other", s.name, quantity.Length(mortise))
			f.Offers = []engine.Offer{{Key: "seam.spacing", Value: p.Above(2 * w)}, {Key: "seam.edge", Value: p.Below((s.seam.Get() - 2*w) / 2)}}
		case pitch > limit.SI:
			f.Severity, f.Bound = engine.Query, limit
			f.Text = p.Textf("the tenons in the seam of the %s are {measured} apart; the maximum is {limit}", s.name)
			f.Offers = []engine.Offer{{Key: "seam.spacing", Value: p.Below(limit.SI)}}
		default:
			continue
		}
		p.Report(f)
	}
}

var edge = engine.Rule{
	ID:       "joint.edge",
	Title:    "the first tenon is far enough from the rib's end",
	Why:      "A mortise near the end of the rib splits the grain, and panels are often knocked at their feet.",
	Severity: engine.Hold,
	Limits: []engine.Limit{{
		Key: "widths", Title: "distance from the end to the middle of the first tenon, in widths of the tenon", Value: one(2), Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "e ≥ widths·w",
		Symbols: []engine.Symbol{{Name: "e", Means: "distance from the seam's end to the middle of the first tenon", Unit: "m"}, {Name: "w", Means: "width of the tenon", Unit: "m"}, {Name: "widths", Means: "least distance, in widths of the tenon", Unit: "1"}},
		Source:  cite.CommonPractice(),
	},
	Check: checkEdge,
}

func checkEdge(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("widths")
	w := c.Seam.Tenon.Width.Get()
	for _, s := range stocks(c) {
		first := c.TenonStations(s.seam.Get())[0]
		f := engine.Finding{At: "seam.edge", Related: []string{"seam.tenon.width"}, Measured: quantity.Length(first).Value()}
		switch {
		case first < w/2:
			f.Text = p.Textf("the middle of the first tenon is {measured} from the end of the %s, and its mortise of %v breaks out of it", s.name, quantity.Length(w))
		case first < limit.SI*w:
			f.Text, f.Severity = p.Textf("the middle of the first tenon is {measured} from the end of the %s; the minimum is {limit}, %v widths of the tenon", s.name, limit.Value), engine.Query
			f.Bound = limit
			f.Bound.Value = quantity.Length(limit.SI * w).Value()
			f.Offers = []engine.Offer{{Key: "seam.edge", Value: p.Above(limit.SI * w)}}
		default:
			continue
		}
		p.Report(f)
		return // the edge is one key for all seams
	}
}

var registration = engine.Rule{
	ID:       "joint.registration",
	Title:    "two tenons or more register each seam, mirrored from both ends",
	Why:      "A panel can turn about a single tenon. Two tenons at equal distances from both ends fit either panel's edge from one template.",
	Severity: engine.Query,
	Basis: engine.Basis{
		Valid:  "tenons set out alike from both ends of a seam, at equal spacing",
		Source: cite.Derivation("a plane body is held by two points"),
	},
	Check: func(p *engine.Pass) {
		for _, s := range stocks(p.Ceiling) {
			if at := p.Ceiling.TenonStations(s.seam.Get()); len(at) < 2 {
				p.Report(engine.Finding{
					At: "seam.edge", Related: []string{"seam.spacing"},
					Text:   p.Textf("the seam of the %s is %v long and has one tenon, about which the panel can turn", s.name, quantity.Length(s.seam.Get())),
					Offers: []engine.Offer{{Key: "seam.edge", Value: p.Below(s.seam.Get() / 4)}},
				})
			}
		}
	},
}

var mortise = engine.Rule{
	ID:       "joint.mortise",
	Title:    "the mortises locate the panel and do not bind",
	Why:      "Mortises that are all snug need more accuracy than a shop has, and the panel binds before the seam is closed. If all are wide, nothing locates the panel.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "wide", Title: "excess of a wide mortise's width over its tenon's width", Value: quantity.Length(layout.MortiseAir).Value(), Sense: engine.AtMost, Lowest: 0, Most: 0.05,
		Source: cite.LooseTenons.At("a loose tenon is 1/16 in narrower than its two mortises"),
	}},
	Basis: engine.Basis{
		Formula: "2·u ≤ wide",
		Symbols: []engine.Symbol{{Name: "u", Means: "tolerance of a mortise's place on each of the two panels, seam.tolerance", Unit: "m"}, {Name: "wide", Means: "play of a tenon in its wide mortises; 0 in snug ones", Unit: "m"}},
		Valid:   "seams of two tenons or more",
		Source:  cite.Derivation("two tenons on one panel, and the places of their mortises in the other"),
	},
	Check: checkMortise,
}

func checkMortise(p *engine.Pass) {
	c, wide := p.Ceiling, p.Limit("wide")
	most := 0
	for _, s := range stocks(c) {
		most = max(most, len(c.TenonStations(s.seam.Get())))
	}
	if most < 2 {
		return
	}
	off := 2 * c.Seam.Tolerance.Get()
	f := engine.Finding{At: "seam.mortise", Related: []string{"seam.tolerance"}, Measured: quantity.Length(off).Value()}
	switch fit := c.Seam.Mortise.Get(); {
	case fit == "all snug" && off > 0:
		f.Text = "all mortises are snug, and the mortises of two panels may be {measured} out of line, so the tenons bind"
		f.Offers = []engine.Offer{{Key: "seam.mortise", Value: "one snug, rest wide"}}
	case fit == "all wide":
		f.Text = p.Textf("all mortises are wide by %v, so none locates the panel", wide.Value)
		f.Measured = quantity.Value{}
		f.Offers = []engine.Offer{{Key: "seam.mortise", Value: "one snug, rest wide"}}
	case fit == "one snug, rest wide" && off > wide.SI:
		f.Text = "the wide mortises of two panels may be {measured} out of line; the tenons have a play of {limit}"
		f.At, f.Bound = "seam.tolerance", wide
		f.Offers = []engine.Offer{{Key: "seam.tolerance", Value: p.Exactly(wide.SI / 2)}}
	default:
		return
	}
	p.Report(f)
}

var strapClear = engine.Rule{
	ID:       "joint.strap",
	Title:    "no strap is let into a seam where a tenon is",
	Why:      "A strap on the seam's side is let into the half rib. A mortise at the same place meets its screws.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations", "strap.width", "strap.fixing"},
	Basis: engine.Basis{
		Formula: "|station − tenon| ≥ (strap + w)/2",
		Symbols: []engine.Symbol{
			{Name: "station", Means: "middle of the strap along the arc", Unit: "m"},
			{Name: "tenon", Means: "middle of the tenon", Unit: "m"},
			{Name: "strap", Means: "width of the strap", Unit: "m"},
			{Name: "w", Means: "width of the tenon", Unit: "m"},
		},
		Valid: "straps fixed on the seam's side", Source: cite.Derivation("two widths along one edge"),
	},
	Check: checkStrapClear,
}

func checkStrapClear(p *engine.Pass) {
	c := p.Ceiling
	if c.Seam.Count.Get() == 0 || c.Strap.Fixing.Bottom.Get() != "seam" {
		return
	}
	need := (c.Strap.Width.Get() + c.Seam.Tenon.Width.Get()) / 2
	tenons := c.TenonStations(c.Panel.Arc.Get())
	for i, s := range c.Strap.Stations.Get() {
		at := math.Mod(float64(s)*c.Vault.Arc.Get(), c.Panel.Arc.Get())
		for k, tenon := range tenons {
			if off := math.Abs(at - tenon); off < need {
				p.Report(engine.Finding{
					At: c.Strap.Stations.Place(i), Related: []string{"seam.spacing", "seam.edge"},
					Text:     p.Textf("strap %d is {measured} from the middle of tenon %d; they need %v to lie side by side", i+1, k+1, quantity.Length(need)),
					Measured: quantity.Length(off).Value(),
				})
			}
		}
	}
}
