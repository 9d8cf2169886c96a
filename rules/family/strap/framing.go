package strap

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var framing = engine.Rule{
	ID:       "strap.framing",
	Title:    "each strap comes up to framing that its screws go into, or blocking may be put in",
	Why:      "A strap between two joists has nothing to be screwed to, and a screw near a joist's edge splits it out.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations", "strap.fixing", "room.framing.spacing", "room.framing.runs", "room.framing.offset", "room.framing.member"},
	Limits: []engine.Limit{
		{
			Key: "edge", Title: "from a screw in the underside to the member's edge, in its diameters", Value: quantity.Value{SI: 1.5, Unit: quantity.One},
			Sense: engine.AtLeast, Lowest: 0, Most: 50, Source: cite.NDS.At("chapter 12, lag screws in withdrawal; of wood screws, common practice").FromMemory(),
		},
		{
			Key: "face", Title: "from a strap that is fixed to a member's side to that side", Value: quantity.Length(0.010).Value(),
			Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
		},
	},
	Basis: engine.Basis{
		Formula: "underside: b/2 − |x − m| ≥ e; side: ||x − m| − (b + t)/2| ≤ face",
		Symbols: []engine.Symbol{
			{Name: "x", Means: "line of the strap", Unit: "m"},
			{Name: "m", Means: "middle of the nearest member", Unit: "m"},
			{Name: "b", Means: "width of a member", Unit: "m"},
			{Name: "e", Means: "least edge distance of a screw", Unit: "m"},
			{Name: "t", Means: "thickness of the strap", Unit: "m"},
			{Name: "face", Means: "the most that the strap may stand off the side", Unit: "m"},
		},
		Valid:  "straps plumb; screws in one row on the strap's centre line, its top bent along the member; edge ribs at the seams, the vault's gap at the near end what the first gap leaves",
		Source: cite.Derivation("positions of ribs and members from one wall"),
	},
	Check: checkFraming,
}

func checkFraming(p *engine.Pass) {
	c := p.Ceiling
	if f := c.Room.Framing; f.Blocking.Given() && f.Blocking.Get() {
		return
	}
	if c.Room.Framing.Runs.Get() == "across" && !c.Close.FirstGap.Given() {
		p.Absent("close.first_gap")
		return
	}
	if c.Strap.Fixing.Top.Get() == "side" {
		checkFace(p)
	} else {
		checkUnderside(p)
	}
}

// checkFace compares how far straps stand off the nearest side of a member.
func checkFace(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("face")
	var off lines
	for _, x := range strapPlaces(p) {
		if stands := math.Abs(x.off - (c.Room.Framing.Member.Get()+c.Strap.Thickness.Get())/2); stands > limit.SI {
			off.add(x.key, stands)
		}
	}
	off.report(p, p.Textf("%d of the straps' lines stand off the sides of the framing, which lies every %v from %v, by up to {measured}; the most is {limit}: state blocking, or move the stations or the seams",
		off.count, quantity.Length(c.Room.Framing.Spacing.Get()), quantity.Length(c.Room.Framing.Offset.Get())), limit)
}

// checkUnderside looks for straps beside the members, and for screws near a
// member's edge.
func checkUnderside(p *engine.Pass) {
	c := p.Ceiling
	half := c.Room.Framing.Member.Get() / 2
	least, given := edgeLeast(p)
	var missed, near lines
	for _, x := range strapPlaces(p) {
		switch left := half - x.off; {
		case left < 0:
			missed.add(x.key, -left)
		case given && left < least.SI:
			near.add(x.key, -left)
		}
	}
	missed.report(p, p.Textf("%d of the straps' lines miss the framing, which lies every %v from %v, by up to {measured}; state blocking, or move the stations or the seams",
		missed.count, quantity.Length(c.Room.Framing.Spacing.Get()), quantity.Length(c.Room.Framing.Offset.Get())), engine.Bound{})
	near.most = -near.most
	near.report(p, p.Textf("%d of the straps' lines come up near an edge of the framing: the least left from the screws to the member's edge is {measured}; the limit is {limit}", near.count), least)
}

// edgeLeast is the least distance from a screw to the wood's edge: what the spec
// asks for, or so many diameters.
func edgeLeast(p *engine.Pass) (least engine.Bound, given bool) {
	s := p.Ceiling.Strap.Screws
	if s.Edge.Given() {
		return p.Stated("strap.screws.edge", quantity.Length(s.Edge.Get()).Value()), true
	}
	if !s.Diameter.Given() {
		p.Absent("strap.screws.diameter")
		return least, false
	}
	least = p.Limit("edge")
	least.Value = quantity.Length(least.SI * s.Diameter.Get()).Value()
	return least, true
}

// lines counts the straps' lines of one finding, and keeps the worst.
type lines struct {
	count int
	key   string
	most  float64
}

func (l *lines) add(key string, by float64) {
	if l.count == 0 || by > l.most {
		l.most = by
	}
	if l.count == 0 {
		l.key = key
	}
	l.count++
}

func (l *lines) report(p *engine.Pass, text string, bound engine.Bound) {
	if l.count > 0 {
		p.Report(engine.Finding{
			At: l.key, Related: []string{"room.framing", "strap.fixing.top", "close.first_gap"}, Text: text,
			Measured: quantity.Length(l.most).Value(), Bound: bound,
		})
	}
}

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
		from := math.Abs(math.Mod(at-f.Offset.Get(), f.Spacing.Get()))
		out = append(out, strapPlace{key, min(from, f.Spacing.Get()-from)})
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
				Text:     "the strap lies in the seam and is {measured} thick, where the gap is {limit}: let it and its screws in, or the seam does not close",
				Measured: quantity.Length(st.Thickness.Get()).Value(), Bound: p.Stated("seam.gap", quantity.Length(p.Ceiling.Seam.Gap.Get()).Value()),
			})
		}
	},
}
