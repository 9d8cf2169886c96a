package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// strapPlace is a line that must meet framing, and how far it is from the middle
// of the nearest member.
type strapPlace struct {
	key string
	off float64
}

// strapPlaces are the edge ribs' straps where the framing runs across the span
// as they do, the stations where it runs along the vault.
func strapPlaces(p *engine.Pass) (out []strapPlace) {
	c, f := p.Ceiling, p.Ceiling.Room.Framing
	add := func(key string, at float64) {
		out = append(out, strapPlace{key, c.OffMember(at)})
	}
	if f.Runs.Get() == "along" {
		side := (c.Room.Width.Get() - c.Vault.Span.Get()) / 2
		for i, s := range c.Strap.Stations.Get() {
			add(c.Strap.Stations.Place(i), side+c.Vault.Intrados.Get().At(s*c.Vault.Arc.Get()).Y)
		}
		return out
	}
	for _, r := range c.EdgeRibs() {
		add("room.framing.offset", c.StrapLine(r))
	}
	return out
}

var letIn = engine.Rule{
	ID:       "strap.let-in",
	Title:    "a strap on the seam side of a rib is let in",
	Why:      "A strap and its screw heads between two panels hold the seam open.",
	Severity: engine.Query,
	Needs:    []string{"strap.fixing", "strap.thickness"},
	Basis:    engine.Basis{Valid: "a strap thicker than the designed glue gap", Source: cite.Derivation("geometry of the seam")},
	Check: func(p *engine.Pass) {
		st := p.Ceiling.Strap
		if st.Fixing.Bottom.Get() == "seam" && st.Thickness.Get() > p.Ceiling.Seam.Gap.Get() {
			p.Report(engine.Finding{
				At: "strap.fixing.bottom", Related: []string{"seam.gap"},
				Text:     "the strap lies in the seam and is {measured} thick; the gap of the seam is {limit}. Let in the strap and its screws, or the seam does not close",
				Measured: quantity.Length(st.Thickness.Get()).Value(), Bound: p.Stated("seam.gap", quantity.Length(p.Ceiling.Seam.Gap.Get()).Value()),
			})
		}
	},
}
