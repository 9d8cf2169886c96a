package strap

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var framing = engine.Rule{
	ID:       "strap.framing",
	Title:    "each strap meets framing for its screws, or blocking is allowed",
	Why:      "A strap between two joists has nothing to screw to. A screw near a joist's edge splits it.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations", "strap.fixing", "room.framing.spacing", "room.framing.runs", "room.framing.offset", "room.framing.member"},
	Limits: []engine.Limit{
		{
			Key: "edge", Title: "distance from a screw in the underside to the member's edge, in diameters of the screw", Value: quantity.Value{SI: 1.5, Unit: quantity.One},
			Sense: engine.AtLeast, Lowest: 0, Most: 50, Source: cite.NDS.At("chapter 12, lag screws in withdrawal; for wood screws, common practice").FromMemory(),
		},
		{
			Key: "face", Title: "distance from a strap that is fixed to a member's side to that side", Value: quantity.Length(layout.FaceMost).Value(),
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
			{Name: "face", Means: "greatest distance of the strap from the side", Unit: "m"},
		},
		Valid:  "plumb straps; screws in one row on the strap's centre line; the top of the strap bent along the member; edge ribs at the seams. The gap at the near end is the room's length less the panels and the first gap",
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
