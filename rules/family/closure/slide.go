package closure

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/closing"
	"dryfit/spec/quantity"
)

var slide = engine.Rule{
	ID:       "close.slide",
	Title:    "the last panel has the free length to stand off and slide home",
	Why:      "A panel with its neighbour's tenons in the way stands off by their projection before it slides on to them; without that much room beyond its place the last one does not go in.",
	Severity: engine.Hold,
	Needs:    []string{"close.first_gap"},
	Figures:  []string{"close.last-gap", "close.last-gap.least", "close.projection"},
	Limits:   []engine.Limit{engine.StandOffLimit()},
	Basis: engine.Basis{
		Formula: "G − g_f − L − n·g − ΔL − (τ + P·p + n·u) ≥ t/2 + clearance",
		Symbols: []engine.Symbol{
			{Name: "G", Means: "length of the room", Unit: "m"},
			{Name: "g_f", Means: "first gap, set with a spacer and taken as exact", Unit: "m"},
			{Name: "L", Means: "length of all panels", Unit: "m"},
			{Name: "n", Means: "seams", Unit: "1"},
			{Name: "g", Means: "gap of one seam", Unit: "m"},
			{Name: "ΔL", Means: "growth of all rib widths since the shop, in the state of the wood when hung in which they are widest", Unit: "m"},
			{Name: "τ", Means: "tolerance of the room", Unit: "m"},
			{Name: "P", Means: "panels along", Unit: "1"},
			{Name: "p", Means: "tolerance of a panel", Unit: "m"},
			{Name: "u", Means: "tolerance of a seam", Unit: "m"},
			{Name: "t", Means: "length of a tenon, half of which projects", Unit: "m"},
			{Name: "clearance", Means: "left over", Unit: "m"},
		},
		Valid:  "panels that are hung as the shop made them, or in the room's air in either season, as strap.hung says, all of these where it is not given; every length at the worse end of its tolerance",
		Source: cite.Scholz1995.At("arithmetic tolerancing: the sum of the absolute tolerances"),
	},
	Check: checkSlide,
}

func checkSlide(p *engine.Pass) {
	k, clearance := p.Results.Closing(), p.Limit("clearance")
	ends, _ := k.Ends()
	if err := ends.Growth.Get().Err; err != nil {
		p.NotChecked("rib.species", p.Explain(err))
	}
	least, projection := ends.Least.Get(), k.Projection.Get()
	f := engine.Finding{
		At: "close.first_gap", Related: []string{"room.length", "vault.length", "seam.tenon", "close.last", "strap.hung"},
		Measured: quantity.Length(least).Value(), Offers: p.Shorten(projection + clearance.SI - least),
	}
	state := hungIn(p, ends)
	switch {
	case least < 0:
		f.Text = p.Textf("at its worst the row of panels is {measured} longer than the room with a first gap of %v%s", quantity.Length(ends.First.Get()), state)
		f.Measured = quantity.Length(-least).Value()
	case least < projection:
		f.Text = "the last gap comes to {measured} at its least" + state + ", and the last panel has to stand off by {limit}, the projection of its neighbour's tenons, before it slides home"
		f.Bound = p.Stated("seam.tenon", quantity.Length(projection).Value())
	case least < projection+clearance.SI:
		f.Text = "the last gap comes to {measured} at its least" + state + "; to go in the last panel needs {limit}" + share(p, projection, clearance)
		f.Bound, f.Severity = clearance, engine.Query
		f.Bound.Value = quantity.Length(projection + clearance.SI).Value()
	default:
		return
	}
	p.Report(drawn(p, f, "survey.end"))
}

// share says which part of a length is clearance, where not all is.
func share(p *engine.Pass, projection float64, clearance engine.Bound) string {
	if projection == 0 {
		return " of clearance"
	}
	return p.Textf(", %v of it clearance", clearance.Value)
}

// hungIn says what the ribs have grown by when the panels are hung.
func hungIn(p *engine.Pass, ends *closing.Ends) string {
	if by := ends.Growth.Get().Value; by > 0 {
		return p.Textf(", the ribs grown by %v in the room's air", quantity.Length(by))
	}
	return ""
}

var probability = engine.Rule{
	ID:       "close.probability",
	Title:    "by chance the last panel goes in more often than not by far",
	Why:      "The worst case is rare where the lengths deviate each for itself, and not rare at all where all panels come off one form: the chances say how much the worst case exaggerates.",
	Severity: engine.Note,
	Needs:    []string{"close.first_gap"},
	Figures:  []string{"close.chance", "close.chance-alike"},
	Limits: []engine.Limit{{
		Key: "least", Title: "chance that the last panel goes in", Value: quantity.Share(0.95).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Valid:  "lengths normal about their nominal size, the tolerance three standard deviations; the free length that the tenons' projection takes, without clearance; the wood as in close.slide",
		Source: cite.Scholz1995.At("statistical tolerancing, and its failure with a shared bias"),
	},
	Check: checkProbability,
}

func checkProbability(p *engine.Pass) {
	ends, _ := p.Results.Closing().Ends()
	odds, limit := ends.Odds.Get(), p.Limit("least")
	lesser := min(odds.ByChance.Share, odds.Alike.Share)
	if lesser >= limit.SI {
		return
	}
	state := hungIn(p, ends)
	text := "the last panel does not go in even with every length at the better end of its tolerance" + state + ": its chance is {measured}, and the least is {limit}"
	if !odds.Decided {
		text = p.Textf("the last panel goes in with a chance of %v ± %v if each panel deviates for itself, and of %v ± %v if all deviate alike, as off one form%s; the least is {limit}",
			quantity.Share(odds.ByChance.Share), quantity.Share(odds.ByChance.Error), quantity.Share(odds.Alike.Share), quantity.Share(odds.Alike.Error), state)
	}
	p.Report(engine.Finding{
		At: "close.first_gap", Related: []string{"panels.tolerance", "room.tolerance", "seam.tolerance", "strap.hung"},
		Text: text, Measured: quantity.Share(lesser).Value(), Bound: limit,
	})
}

var twoWay = engine.Rule{
	ID:       "close.two-way",
	Title:    "no panel has to slide two ways at once",
	Why:      "A piece of a split arch has tenons on its end and on its edge: it can slide on to the one or the other, never on to both.",
	Severity: engine.Hold,
	Basis:    engine.Basis{Valid: "arches of two pieces or more, in rows of two panels or more", Source: cite.Derivation("tenons that project from two edges at an angle")},
	Check: func(p *engine.Pass) {
		c := p.Ceiling
		if c.Panel.Around.Get() < 2 || c.Panel.Along.Get() < 2 || c.Close.Last.Get() != "slide" {
			return
		}
		p.Report(engine.Finding{
			At: "close.last", Related: []string{"panels.around"},
			Text:   p.Textf("each of the %d panels has tenons toward its neighbour along the axis and toward the other piece of its arch, and cannot slide on to both; withdraw the tenons into one side, or drop the panels on to them", c.Panel.Count.Get()),
			Offers: []engine.Offer{{Key: "close.last", Value: "drop"}, {Key: "panels.around", Value: int64(1)}},
		})
	},
}
