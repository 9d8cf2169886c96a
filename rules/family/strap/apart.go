package strap

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var apart = engine.Rule{
	ID:       "strap.apart",
	Title:    "no two straps have one place, and no strap is over a seam within the arch",
	Why:      "A strap over a seam within the arch is screwed to neither piece, or ties both together before they are joined. Two straps at one place count as one.",
	Severity: engine.Hold,
	Needs:    []string{"strap.stations"},
	Basis: engine.Basis{
		Formula: "|s − seam| ≥ w/2, |x − y| ≥ w",
		Symbols: []engine.Symbol{
			{Name: "s", Means: "place of a strap along the arc", Unit: "m"},
			{Name: "seam", Means: "place of a seam within the arch", Unit: "m"},
			{Name: "x", Means: "line of a strap across the span, where it leaves the back of the rib", Unit: "m"},
			{Name: "y", Means: "line of the strap before it", Unit: "m"},
			{Name: "w", Means: "width of a strap", Unit: "m"},
		},
		Valid:  "plumb straps, flat along the arc; if strap.width is absent, only two straps at one station",
		Source: cite.Derivation("places along the arc, and lines across the span"),
	},
	Check: checkApart,
}

func checkApart(p *engine.Pass) {
	c := p.Ceiling
	if !c.Strap.Width.Given() {
		p.Absent("strap.width")
	}
	for i := range c.Strap.Stations.Get() {
		checkSeam(p, i)
		if i > 0 {
			checkNeighbour(p, i)
		}
	}
}

// checkSeam looks for a seam within the arch under a strap.
func checkSeam(p *engine.Pass, i int) {
	c := p.Ceiling
	k, off := c.NearestSeam(c.Strap.Stations.Get()[i] * c.Vault.Arc.Get())
	if !c.OnSeam(off) {
		return
	}
	f := engine.Finding{
		At: c.Strap.Stations.Place(i), Related: []string{"panels.around", "strap.width"},
		Text:     p.Textf("strap %d lies over the seam between pieces %d and %d of the arch: its middle is {measured} from it", i+1, k, k+1),
		Measured: quantity.Length(off).Value(),
	}
	if c.Strap.Width.Given() {
		f.Text += ", which is under {limit}, half its width"
		f.Bound = p.Stated("strap.width", quantity.Length(c.Strap.Width.Get()/2).Value())
	}
	p.Report(f)
}

// checkNeighbour compares a strap with the one before it.
func checkNeighbour(p *engine.Pass, i int) {
	st := p.Ceiling.Strap
	before, at := st.Stations.Get()[i-1], st.Stations.Get()[i]
	f := engine.Finding{At: st.Stations.Place(i), Related: []string{st.Stations.Place(i - 1), "strap.width"}}
	off := math.Abs(p.Ceiling.StrapAcross(at) - p.Ceiling.StrapAcross(before))
	switch {
	case at == before:
		f.Text = p.Textf("straps %d and %d have one station", i, i+1)
	case st.Width.Given() && off < st.Width.Get():
		f.Text = p.Textf("straps %d and %d are {measured} apart across the span, and each is {limit} wide", i, i+1)
		f.Measured, f.Bound = quantity.Length(off).Value(), p.Stated("strap.width", quantity.Length(st.Width.Get()).Value())
	default:
		return
	}
	p.Report(f)
}
