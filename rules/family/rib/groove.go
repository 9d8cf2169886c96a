package rib

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var groove = engine.Rule{
	ID:       "rib.groove",
	Title:    "the grooves of the reveal leave enough wood in ribs and rails",
	Why:      "Grooves that meet, or are as deep as the member, cut it in two. A thin tongue between grooves breaks off.",
	Severity: engine.Hold,
	Limits: []engine.Limit{{
		Key: "left", Title: "wood left between the grooves, and above them", Value: quantity.Length(0.010).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "min(b − 2·w, d − r) > 0; at a seam min(b − w, d − r) > 0",
		Symbols: []engine.Symbol{
			{Name: "b", Means: "width of the rib or rail", Unit: "m"},
			{Name: "w", Means: "width of the reveal", Unit: "m"},
			{Name: "d", Means: "depth of the rib or rail", Unit: "m"},
			{Name: "r", Means: "depth of the reveal", Unit: "m"},
		},
		Valid:  "grooves at the sides of all members, or at the seams; if no wood is left, masses and strength are computed without the grooves",
		Source: cite.Derivation("the widths and depths of the grooves against those of the member"),
	},
	Check: checkGroove,
}

func checkGroove(p *engine.Pass) {
	c, r := p.Ceiling, p.Ceiling.Grid.Reveal
	if !r.Given() {
		return // no groove: the schema asks for both sizes, but of layers
	}
	at := r.At.Get()
	if at == "sides" || at == "seam" && c.Seam.Count.Get() > 0 {
		checkGrooveIn(p, "rib", c.Rib.Member)
	}
	if at == "sides" || at == "seam" && c.Seam.EdgeSeams.Get() > 0 {
		checkGrooveIn(p, "rail", c.Rail)
	}
}

// checkGrooveIn looks at what the grooves leave of one member, both ways.
func checkGrooveIn(p *engine.Pass, member string, m layout.Member) {
	r := p.Ceiling.Grid.Reveal
	beside, above := r.Leaves(m)
	across := leftover{
		key: "grid.reveal.width", size: member + ".width", left: beside, stock: m.Width.Get(), groove: r.Width.Get(),
		gone: "the groove of %v at a seam removes all of the " + member + ", which is {limit} wide", thin: "beside the groove of %v the " + member,
	}
	if r.At.Get() == "sides" {
		across.gone = "the grooves of %v from both sides of the " + member + " meet: it is {limit} wide"
		across.thin = "between the grooves of %v the " + member
	}
	across.check(p)
	leftover{
		key: "grid.reveal.depth", size: member + ".depth", left: above, stock: m.Depth.Get(), groove: r.Depth.Get(),
		gone: "the groove of %v goes through the " + member + ", which is {limit} deep", thin: "above the groove of %v the " + member,
	}.check(p)
}

// leftover is what grooves leave of a member one way, and what is said of it.
type leftover struct {
	key, size           string
	left, stock, groove float64
	gone, thin          string
}

func (l leftover) check(p *engine.Pass) {
	f, limit := engine.Finding{At: l.key, Related: []string{l.size}}, p.Limit("left")
	switch {
	case l.left <= 0:
		f.Text = p.Textf(l.gone, quantity.Length(l.groove))
		f.Bound = p.Stated(l.size, quantity.Length(l.stock).Value())
	case l.left < limit.SI:
		f.Severity, f.Bound = engine.Query, limit
		f.Text = p.Textf(l.thin+" has {measured} of wood left; the minimum is {limit}", quantity.Length(l.groove))
		f.Measured = quantity.Length(l.left).Value()
	default:
		return
	}
	p.Report(f)
}
