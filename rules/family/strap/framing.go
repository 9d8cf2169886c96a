package strap

import (
	"math"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

var framing = rules.Rule{
	ID:       "strap.framing",
	Title:    "each strap comes up under framing, or blocking may be put in",
	Why:      "A strap between two joists has nothing to be screwed to.",
	Severity: rules.Query,
	Needs:    []string{"strap.stations", "room.framing.spacing", "room.framing.runs", "room.framing.offset", "room.framing.member", "close.first_gap"},
	Reads:    []string{"room.width", "room.length", "room.framing.blocking", "vault.span", "vault.length", "panels.along", "seam.gap", "rib.width"},
	Limits: []rules.Limit{{
		Key: "edge", Title: "from the strap's middle to the member's edge", Value: quantity.Length(0.020).Value(),
		Sense: rules.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{Valid: "straps plumb; edge ribs at the seams, the vault's gap at the near end what the first gap leaves", Source: cite.Derivation("positions of ribs and members from one wall")},
	Check: checkFraming,
}

func checkFraming(p *rules.Pass) {
	f, limit := p.Ceiling.Spec.Room.Framing, p.Limit("edge")
	if f.Blocking != nil && *f.Blocking {
		return
	}
	reach := float64(*f.Member)/2 - limit.SI
	off, at := 0, ""
	for _, x := range strapPlaces(p) {
		from := math.Mod(x.place-float64(*f.Offset), float64(*f.Spacing))
		if from < 0 {
			from += float64(*f.Spacing)
		}
		if away := min(from, float64(*f.Spacing)-from); away > reach {
			off++
			if at == "" {
				at = x.key
			}
		}
	}
	if off > 0 {
		p.Report(rules.Finding{
			At: at, Related: []string{"room.framing", "close.first_gap"},
			Text: p.Textf("%d of the straps' lines miss the framing, which lies every %v from %v; state blocking, or move the stations or the seams", off, *f.Spacing, *f.Offset),
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
	if c.Spec.Room.Framing.Runs == "along" {
		side := (float64(c.Spec.Room.Width) - c.Vault.Span) / 2
		for i, s := range c.Spec.Strap.Stations {
			y := c.Vault.Intrados.At(float64(s) * c.Vault.Arc).Y
			out = append(out, strapPlace{spec.Key("strap", "stations", i+1), side + y})
		}
		return out
	}
	near := float64(c.Spec.Room.Length) - float64(*c.Spec.Close.FirstGap) - c.BuiltLength()
	for k := range c.Panel.Along {
		start := near + float64(k)*(c.Panel.Length+c.Seam.Gap)
		out = append(out,
			strapPlace{"room.framing.offset", start + c.Rib.Width/4},
			strapPlace{"room.framing.offset", start + c.Panel.Length - c.Rib.Width/4})
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
		if p.Ceiling.Spec.Room.Access == "none" {
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
	Reads:    []string{"seam.gap"},
	Basis:    rules.Basis{Valid: "a strap thicker than the designed glue gap", Source: cite.Derivation("geometry of the seam")},
	Check: func(p *rules.Pass) {
		st := p.Ceiling.Spec.Strap
		if st.Fixing.Bottom == "seam" && float64(*st.Thickness) > p.Ceiling.Seam.Gap {
			p.Report(rules.Finding{
				At: "strap.fixing.bottom", Related: []string{"seam.gap"},
				Text:     "the strap lies in the seam and is {measured} thick, where the gap is {limit}: let it and its screws in, or the seam does not close",
				Measured: st.Thickness.Value(), Bound: p.Stated("seam.gap", quantity.Length(p.Ceiling.Seam.Gap).Value()),
			})
		}
	},
}
