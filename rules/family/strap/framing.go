package strap

import (
	"math"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var framing = rules.Rule{
	ID:       "strap.framing",
	Title:    "each strap comes up under framing, or blocking may be put in",
	Why:      "A strap between two joists has nothing to be screwed to.",
	Severity: rules.Query,
	Needs:    []string{"strap.stations", "room.framing.spacing", "room.framing.runs", "room.framing.offset", "room.framing.member", "close.first_gap"},
	Limits: []rules.Limit{{
		Key: "edge", Title: "from the strap's middle to the member's edge", Value: quantity.Length(0.020).Value(),
		Sense: rules.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{Valid: "straps plumb; edge ribs at the seams, the vault's gap at the near end what the first gap leaves", Source: cite.Derivation("positions of ribs and members from one wall")},
	Check: checkFraming,
}

func checkFraming(p *rules.Pass) {
	f, limit := p.Ceiling.Room.Framing, p.Limit("edge")
	if f.Blocking.Given() && f.Blocking.Get() {
		return
	}
	reach := f.Member.Get()/2 - limit.SI
	off, at := 0, ""
	for _, x := range strapPlaces(p) {
		from := math.Mod(x.place-f.Offset.Get(), f.Spacing.Get())
		if from < 0 {
			from += f.Spacing.Get()
		}
		if away := min(from, f.Spacing.Get()-from); away > reach {
			off++
			if at == "" {
				at = x.key
			}
		}
	}
	if off > 0 {
		p.Report(rules.Finding{
			At: at, Related: []string{"room.framing", "close.first_gap"},
			Text: p.Textf("%d of the straps' lines miss the framing, which lies every %v from %v; state blocking, or move the stations or the seams", off, quantity.Length(f.Spacing.Get()), quantity.Length(f.Offset.Get())),
		})
	}
}

type strapPlace struct {
	key   string
	place float64 // from the wall that the framing is counted from
}

// strapPlaces are the lines that must meet framing: the edge ribs where it runs
// across the span as they do, the stations where it runs along the vault.
func strapPlaces(p *rules.Pass) []strapPlace {
	c := p.Ceiling
	var out []strapPlace
	if c.Room.Framing.Runs.Get() == "along" {
		side := (c.Room.Width.Get() - c.Vault.Span.Get()) / 2
		for i, s := range c.Strap.Stations.Get() {
			y := c.Vault.Intrados.Get().At(float64(s) * c.Vault.Arc.Get()).Y
			out = append(out, strapPlace{c.Strap.Stations.Place(i), side + y})
		}
		return out
	}
	near := c.Room.Length.Get() - c.Close.FirstGap.Get() - c.BuiltLength()
	for k := range c.Panel.Along.Get() {
		start := near + float64(k)*(c.Panel.Length.Get()+c.Seam.Gap.Get())
		out = append(out,
			strapPlace{"room.framing.offset", start + c.Rib.Width.Get()/4},
			strapPlace{"room.framing.offset", start + c.Panel.Length.Get() - c.Rib.Width.Get()/4})
	}
	return out
}

var access = rules.Rule{
	ID:       "strap.access",
	Title:    "someone can get at the straps to fix them",
	Why:      "Once the panel is up, its straps are behind it.",
	Severity: rules.Query,
	Needs:    []string{"strap", "room.access"},
	Basis:    rules.Basis{Valid: "straps are fixed with the panel on the lift", Source: cite.CommonPractice()},
	Check: func(p *rules.Pass) {
		if p.Ceiling.Room.Access.Get() == "none" {
			p.Report(rules.Finding{At: "room.access", Text: "nobody can get above the ceiling, and the straps are behind the panel when it is up; say how they are fixed"})
		}
	},
}

var letIn = rules.Rule{
	ID:       "strap.let-in",
	Title:    "a strap on the seam side of a rib is let in",
	Why:      "A strap and its screw heads between two panels hold the seam open.",
	Severity: rules.Query,
	Needs:    []string{"strap.fixing", "strap.thickness"},
	Basis:    rules.Basis{Valid: "a strap thicker than the designed glue gap", Source: cite.Derivation("geometry of the seam")},
	Check: func(p *rules.Pass) {
		st := p.Ceiling.Strap
		if st.Fixing.Bottom.Get() == "seam" && st.Thickness.Get() > p.Ceiling.Seam.Gap.Get() {
			p.Report(rules.Finding{
				At: "strap.fixing.bottom", Related: []string{"seam.gap"},
				Text:     "the strap lies in the seam and is {measured} thick, where the gap is {limit}: let it and its screws in, or the seam does not close",
				Measured: quantity.Length(st.Thickness.Get()).Value(), Bound: p.Stated("seam.gap", quantity.Length(p.Ceiling.Seam.Gap.Get()).Value()),
			})
		}
	},
}
