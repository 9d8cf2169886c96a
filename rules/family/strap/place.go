package strap

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var place = engine.Rule{
	ID:       "strap.place",
	Title:    "the strap and its row of screws fit on the rib, and the row fits in the lap",
	Why:      "A screw near an edge, an end or another screw splits the wood. A strap wider than its half rib lies over the seam.",
	Severity: engine.Query,
	Needs:    []string{"strap.fixing", "strap.screws"},
	Limits: []engine.Limit{
		diameters("edge", "distance from a screw to the wood's edge, in diameters of the screw", 1.5),
		diameters("end", "distance from a screw to the wood's end, in diameters of the screw", 4),
		diameters("spacing", "distance between the screws of a row, in diameters of the screw", 4),
		{
			Key: "hole", Title: "distance from the middle of a hole to the strap's end, in diameters of the hole", Value: quantity.Value{SI: 1.5, Unit: quantity.One},
			Sense: engine.AtLeast, Lowest: 0, Most: 50, Source: cite.AISIS100.At("edge distance of fasteners").FromMemory(),
		},
	},
	Basis: engine.Basis{
		Formula: "lap ≥ (n − 1)·p + 2·hole·h",
		Symbols: []engine.Symbol{
			{Name: "lap", Means: "length of the strap on the wood", Unit: "m"},
			{Name: "n", Means: "number of screws at one end", Unit: "1"},
			{Name: "p", Means: "distance between adjacent screws: strap.screws.spacing, but at least the limit", Unit: "m"},
			{Name: "hole", Means: "least distance from a hole to the strap's end, in diameters of the hole", Unit: "1"},
			{Name: "h", Means: "diameter of the holes", Unit: "m"},
		},
		Valid:  "one row on the strap's centre line, along the arc on a rib's back and down a side; distances published for lag screws in withdrawal, used for wood screws by common practice. strap.framing checks screws in the framing's underside",
		Source: cite.Derivation("places along a strap"),
	},
	Check: checkPlace,
}

func diameters(key, title string, v float64) engine.Limit {
	return engine.Limit{
		Key: key, Title: title, Value: quantity.Value{SI: v, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 0, Most: 50,
		Source: cite.NDS.At("chapter 12, lag screws in withdrawal; for wood screws, common practice").FromMemory(),
	}
}

func checkPlace(p *engine.Pass) {
	c := p.Ceiling
	back := c.Strap.Fixing.Bottom.Get() == "back"
	if wide := edgeRib(p); back && c.Strap.Width.Given() && c.Strap.Width.Get() > wide {
		p.Report(engine.Finding{
			At: "strap.width", Related: []string{"rib.width"}, Text: "the strap is {measured} wide, and the rib at a panel's edge {limit}",
			Measured: quantity.Length(c.Strap.Width.Get()).Value(), Bound: p.Stated("rib.width", quantity.Length(wide).Value()),
		})
	}
	checkSpacing(p)
	if !c.Strap.Lap.Given() {
		p.Absent("strap.lap")
		return
	}
	checkLap(p, back)
	checkEdges(p, back)
	checkEnds(p, back)
}

// least is a limit in diameters as a length.
func least(p *engine.Pass, key string, diameter float64) engine.Bound {
	b := p.Limit(key)
	b.Value = quantity.Length(b.SI * diameter).Value()
	return b
}

func checkSpacing(p *engine.Pass) {
	s := p.Ceiling.Strap.Screws
	if limit := least(p, "spacing", s.Diameter.Get()); s.Spacing.Given() && s.Count.Get() > 1 && s.Spacing.Get() < limit.SI {
		p.Report(engine.Finding{
			At: "strap.screws.spacing", Related: []string{"strap.screws.diameter"}, Text: "the screws are {measured} apart; the minimum is {limit}",
			Measured: quantity.Length(s.Spacing.Get()).Value(), Bound: limit,
			Offers: []engine.Offer{{Key: "strap.screws.spacing", Value: p.Above(limit.SI)}},
		})
	}
}

// checkLap compares the lap with what its screws need, and with the rib's side
// that it lies on.
func checkLap(p *engine.Pass, back bool) {
	c, r := p.Ceiling, rowOf(p)
	h := r.diameter
	if c.Strap.Hole.Given() {
		h = c.Strap.Hole.Get()
	}
	need := least(p, "spacing", r.diameter)
	if s := c.Strap.Screws.Spacing; s.Given() {
		need.SI = max(need.SI, s.Get())
	}
	need.SI = float64(r.count-1)*need.SI + 2*least(p, "hole", h).SI
	f := engine.Finding{At: "strap.lap", Related: []string{"strap.screws", "strap.hole"}, Measured: quantity.Length(r.lap).Value()}
	if r.lap < need.SI {
		f.Text, f.Bound = p.Textf("the lap is {measured}; %d screws and the ends of the strap need {limit}", r.count), need
		f.Offers = []engine.Offer{{Key: "strap.lap", Value: p.Above(need.SI)}}
		p.Report(f)
	}
	if depth := c.Rib.Depth.Get(); !back && r.lap > depth {
		f.Text, f.Bound = "the lap of {measured} is longer than the rib's side, which is {limit} deep", p.Stated("rib.depth", quantity.Length(depth).Value())
		f.Offers = nil
		p.Report(f)
	}
}

// checkEdges compares the screws' distance from the edges of the rib: on its
// back the sides, on a side the back and the intrados or the reveal.
func checkEdges(p *engine.Pass, back bool) {
	limit, _ := edgeLeast(p)
	r := rowOf(p)
	f := engine.Finding{At: "strap.lap", Related: []string{"strap.screws", "rib.depth"}, Bound: limit}
	left := r.first
	f.Text = "the outer screws are {measured} from the edge of the rib or the framing; the minimum is {limit}"
	if back {
		f.At, f.Related = "rib.width", []string{"strap.screws"}
		f.Text = "the screws in the back are {measured} from the edge of the rib; the minimum is {limit}"
		left = edgeRib(p) / 2
	} else if r.lap <= p.Ceiling.Rib.Depth.Get() {
		left = min(left, face(p)-r.first-r.length())
	}
	if f.Measured = quantity.Length(left).Value(); left < limit.SI {
		p.Report(f)
	}
}

// checkEnds compares the screws' distance from the ends of the rib in each piece
// of an arch, at the depth of the screw that is nearest to the back: a plumb foot
// ends sooner there than at the intrados.
func checkEnds(p *engine.Pass, back bool) {
	c, r := p.Ceiling, rowOf(p)
	limit := least(p, "end", r.diameter)
	half, foot := 0.0, c.Vault.FootAt(c.Rib.Depth.Get()-max(0, r.first))
	if back {
		half, foot = r.length()/2, c.Vault.FootAt(c.Rib.Depth.Get())
	}
	for i, s := range c.Strap.Stations.Get() {
		f := engine.Finding{
			At: c.Strap.Stations.Place(i), Related: []string{"strap.screws", "springing.cut"}, Bound: limit,
			Text: p.Textf("a screw of strap %d is {measured} from the end of the rib; the minimum is {limit}", i+1),
		}
		left := endOf(c, s*c.Vault.Arc.Get(), foot) - half
		if left < 0 {
			f.Text = p.Textf("a screw of strap %d is {measured} past the end of the rib; inside it the minimum is {limit}", i+1)
		}
		if f.Measured = quantity.Length(math.Abs(left)).Value(); left < limit.SI {
			p.Report(f)
		}
	}
}

// endOf is how far along the arc a place is from the nearer end of its piece of
// the arch, which at the springing ends at a foot.
func endOf(c *layout.Ceiling, at, foot float64) float64 {
	arc, piece := c.Vault.Arc.Get(), c.Panel.Arc.Get()
	before := math.Mod(at, piece)
	if at >= arc {
		before = piece
	}
	after := piece - before
	if at < piece {
		before -= foot
	}
	if at >= arc-piece {
		after -= foot
	}
	return min(before, after)
}

var shows = engine.Rule{
	ID:       "strap.shows",
	Title:    "straps and screws are out of sight behind the skin and in the seam",
	Why:      "A strap fixed below the back of the skin stands in the coffer. A strap that reaches the reveal is visible in it.",
	Severity: engine.Query,
	Needs:    []string{"strap.fixing", "strap.lap"},
	Basis: engine.Basis{
		Formula: "lap ≤ d − a − t on a side, lap ≤ d − g in a seam",
		Symbols: []engine.Symbol{
			{Name: "lap", Means: "length of the strap on the rib, from its back down", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
			{Name: "a", Means: "distance from the intrados to the skin", Unit: "m"},
			{Name: "t", Means: "thickness of the skin", Unit: "m"},
			{Name: "g", Means: "depth of the reveal at the seam", Unit: "m"},
		},
		Valid:  "straps that begin at the rib's back",
		Source: cite.Derivation("heights on the side of a rib"),
	},
	Check: checkShows,
}

// flush is how far, in m, a skin may lie below a rib's back by round-off alone.
const flush = 1e-6

func checkShows(p *engine.Pass) {
	c := p.Ceiling
	lap, hidden, where := c.Strap.Lap.Get(), c.Rib.Depth.Get()-groove(p), "above the reveal at the seam"
	switch c.Strap.Fixing.Bottom.Get() {
	case "back":
		return
	case "side":
		hidden, where = c.Rib.Depth.Get()-c.Skin.Setback.Get()-c.Skin.Total(), "behind the skin"
		if hidden < flush {
			hidden = 0
		}
	}
	if lap <= hidden {
		return
	}
	p.Report(engine.Finding{
		At: "strap.fixing.bottom", Related: []string{"strap.lap", "skin.setback", "grid.reveal"},
		Text:     p.Textf("the strap covers {measured} of the rib's %s; {limit} is hidden %s", c.Strap.Fixing.Bottom.Get(), where),
		Measured: quantity.Length(lap).Value(), Bound: p.Stated("rib.depth", quantity.Length(hidden).Value()),
		Offers: []engine.Offer{{Key: "strap.fixing.bottom", Value: "back"}},
	})
}
