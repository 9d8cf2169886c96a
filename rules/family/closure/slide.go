package closure

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/closing"
	"dryfit/spec/quantity"
)

var slide = engine.Rule{
	ID:       "close.slide",
	Title:    "the last gap has room for the last panel to stand off and slide into place",
	Why:      "Each panel is placed clear of its neighbour's tenons and then slides onto them. The last panel needs room for this slide beyond its final place.",
	Severity: engine.Hold,
	Needs:    []string{"close.first_gap"},
	Figures:  []string{"close.last-gap", "close.last-gap.least", "close.projection"},
	Limits:   []engine.Limit{engine.StandOffLimit()},
	Basis: engine.Basis{
		Formula: "G − g_f − L − n·g − ΔL − (τ + P·p + n·u) ≥ t/2 + clearance",
		Symbols: []engine.Symbol{
			{Name: "G", Means: "length of the room", Unit: "m"},
			{Name: "g_f", Means: "first gap, set with a spacer and treated as exact", Unit: "m"},
			{Name: "L", Means: "length of all panels", Unit: "m"},
			{Name: "n", Means: "seams", Unit: "1"},
			{Name: "g", Means: "gap of one seam", Unit: "m"},
			{Name: "ΔL", Means: "sum of the growth of all rib widths since the shop, for the state of the wood when hung that makes them widest", Unit: "m"},
			{Name: "τ", Means: "tolerance of the room", Unit: "m"},
			{Name: "P", Means: "panels along", Unit: "1"},
			{Name: "p", Means: "tolerance of a panel", Unit: "m"},
			{Name: "u", Means: "tolerance of a seam", Unit: "m"},
			{Name: "t", Means: "length of a tenon, half of which projects", Unit: "m"},
			{Name: "clearance", Means: "least clearance", Unit: "m"},
		},
		Valid:  "wood when hung as it left the shop, or adapted to the room's air in either season, as strap.hung states; if strap.hung is absent, all of these states; every length at the worse end of its tolerance",
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
		f.Text = p.Textf("the row of panels at its longest is {measured} longer than the room less a first gap of %v%s", quantity.Length(ends.First.Get()), state)
		f.Measured = quantity.Length(-least).Value()
	case least < projection:
		f.Text = "the last gap may be as small as {measured}" + state + "; the last panel must stand off by {limit}, the projection of its neighbour's tenons, before it slides into place"
		f.Bound = p.Stated("seam.tenon", quantity.Length(projection).Value())
	case least < projection+clearance.SI:
		f.Text = "the last gap may be as small as {measured}" + state + "; the last panel needs {limit} to go in" + share(p, projection, clearance)
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
		return ", all of it clearance"
	}
	return p.Textf(", which includes %v of clearance", clearance.Value)
}

// hungIn says what the ribs have grown by when the panels are hung.
func hungIn(p *engine.Pass, ends *closing.Ends) string {
	if by := ends.Growth.Get().Value; by > 0 {
		return p.Textf(", after the ribs grow by %v in the room's air", quantity.Length(by))
	}
	return ""
}
