package rib

import (
	"math"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/layout"
	"dryfit/spec/quantity"
)

var groove = rules.Rule{
	ID:       "rib.groove",
	Title:    "the grooves of the reveal leave a rib and a rail",
	Why:      "Grooves that meet, or are as deep as the member, cut it in two; a thin tongue between them breaks off.",
	Severity: rules.Hold,
	Needs:    []string{"grid.reveal.width", "grid.reveal.depth"},
	Limits: []rules.Limit{{
		Key: "left", Title: "wood left between the grooves, and above them", Value: quantity.Length(0.010).Value(),
		Sense: rules.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{
		Formula: "min(b − 2·w, d − r) > 0; at a seam min(b − w, d − r) > 0",
		Symbols: []rules.Symbol{
			{Name: "b", Means: "width of the rib or rail", Unit: "m"},
			{Name: "w", Means: "width of the reveal", Unit: "m"},
			{Name: "d", Means: "depth of the rib or rail", Unit: "m"},
			{Name: "r", Means: "depth of the reveal", Unit: "m"},
		},
		Valid:  "grooves at the sides of all members, or at the seams; where there is nothing left, masses and strength are worked without the grooves",
		Source: cite.Derivation("two widths in one member, and two depths"),
	},
	Check: checkGroove,
}

func checkGroove(p *rules.Pass) {
	c, at := p.Ceiling, p.Ceiling.Grid.Reveal.At.Get()
	if at == "sides" || at == "seam" && c.Seam.Count.Get() > 0 {
		checkGrooveIn(p, "rib", c.Rib.Member)
	}
	if at == "sides" || at == "seam" && c.Seam.EdgeSeams.Get() > 0 {
		checkGrooveIn(p, "rail", c.Rail)
	}
}

// checkGrooveIn looks at what the grooves leave of one member, both ways.
func checkGrooveIn(p *rules.Pass, member string, m layout.Member) {
	r, limit := p.Ceiling.Grid.Reveal, p.Limit("left")
	beside, above := r.Leaves(m)
	grooves := quantity.Length(r.Width.Get())
	between, meet := "beside the groove of %v", "the groove of %v at a seam eats the "+member+", which is {limit} wide"
	if r.At.Get() == "sides" {
		between, meet = "between the grooves of %v", "the grooves of %v from both sides of the "+member+" meet: it is {limit} wide"
	}
	for _, way := range []struct {
		key, size   string
		left, stock float64
		groove      quantity.Length
		gone, thin  string
	}{
		{"grid.reveal.width", member + ".width", beside, m.Width.Get(), grooves, meet, between},
		{
			"grid.reveal.depth", member + ".depth", above, m.Depth.Get(), quantity.Length(r.Depth.Get()),
			"the groove of %v goes through the " + member + ", which is {limit} deep", "above the groove of %v",
		},
	} {
		f := rules.Finding{At: way.key, Related: []string{way.size}}
		switch {
		case way.left <= 0:
			f.Text = p.Textf(way.gone, way.groove)
			f.Bound = p.Stated(way.size, quantity.Length(way.stock).Value())
		case way.left < limit.SI:
			f.Severity, f.Bound = rules.Query, limit
			f.Text = p.Textf(way.thin+" the %s has {measured} of wood left; the least is {limit}", way.groove, member)
			f.Measured = quantity.Length(math.Max(0, way.left)).Value()
		default:
			continue
		}
		p.Report(f)
	}
}
