package survey

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/survey"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// nearest is the station of the survey next to a place that has a reading.
func nearest(p *engine.Pass, x float64, has func(layout.SurveyStation) bool) int {
	best, least := 0, math.Inf(1)
	for i, s := range p.Ceiling.Survey.Station.Get() {
		if off := math.Abs(s.At.Get() - x); has(s) && off < least {
			best, least = i, off
		}
	}
	return best + 1
}

var level = engine.Rule{
	ID:       "survey.level",
	Title:    "the seats lie at the height of the springing",
	Why:      "A seat out of level tilts the panel. A tilt that the ledger or the moulding does not cover shows as a wedge-shaped gap, or the foot has to be cut on the lift.",
	Severity: engine.Query,
	Needs:    []string{table, "close.first_gap"},
	Quiet:    true,
	Figures:  []string{"survey.seat.1.left", "survey.seat.1.right", "survey.tilt"},
	Limits: []engine.Limit{{
		Key: "hides", Title: "difference in height between a seat and the springing, up or down, that the ledger or the moulding covers", Value: length(0.006),
		Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "|z − z_s| ≤ hides",
		Symbols: []engine.Symbol{
			{Name: "z", Means: "height of the seat above the level line, at the panel's middle", Unit: "m"},
			{Name: "z_s", Means: "height of the design springing above the level line", Unit: "m"},
			{Name: "hides", Means: "greatest difference that the ledger or the moulding covers", Unit: "m"},
		},
		Valid: "seats that are straight between the readings", Source: cite.CommonPractice(),
	},
	Check: checkLevel,
}

func checkLevel(p *engine.Pass) {
	seated := func(s layout.SurveyStation) bool { return s.Seat.Left.Given() }
	if !hasAny(p, seated) {
		return
	}
	v, _, ok := placed(p)
	if !ok {
		return
	}
	worst, panel, side := farthestSeat(v.Panels.Get())
	limit, way := p.Limit("hides"), "above"
	if worst < 0 {
		way = "below"
	}
	if math.Abs(worst) > limit.SI {
		at := v.Panels.Get()[panel]
		p.Report(engine.Finding{
			At: spec.Key("survey", "station", nearest(p, (at.Near+at.Far)/2, seated), "seat", side), Related: []string{springs, "ledger"},
			Text: p.Textf("the %s seat of %s lies {measured} %s the springing, and the seats slope by up to %v; the ledger or the moulding covers at most {limit}",
				side, v.Name(panel), way, quantity.Share(v.Tilt.Get())),
			Measured: length(math.Abs(worst)), Bound: limit,
		})
	}
}

// farthestSeat returns the seat farthest from the springing: how far above it (m),
// the index of its panel, and its side.
func farthestSeat(panels []survey.Panel) (off float64, panel int, side string) {
	for i, n := range panels {
		for _, seat := range []struct {
			side string
			off  float64
		}{{"left", n.Seat.Left}, {"right", n.Seat.Right}} {
			if math.Abs(seat.off) > math.Abs(off) {
				off, panel, side = seat.off, i, seat.side
			}
		}
	}
	return off, panel, side
}

// hasAny reports whether a station has a reading above the level line, and says what
// is missing where one has and the springing is not given.
func hasAny(p *engine.Pass, has func(layout.SurveyStation) bool) bool {
	for _, s := range p.Ceiling.Survey.Station.Get() {
		if has(s) {
			if !p.Ceiling.Survey.Springing.Given() {
				p.Absent(springs)
			}
			return p.Ceiling.Survey.Springing.Given()
		}
	}
	return false
}

var strap = engine.Rule{
	ID:       "survey.strap",
	Title:    "the straps are as long as drawn, for the framing as measured",
	Why:      "A strap cut to the drawing does not fit if the framing is much higher or lower than drawn. Framing below the crown stops the panel.",
	Severity: engine.Hold,
	Needs:    []string{table, "close.first_gap", "strap.stations"},
	Quiet:    true,
	Figures:  []string{"survey.strap.1.1", "strap.length.1"},
	Limits: []engine.Limit{{
		Key: "share", Title: "difference between a strap's length and the length drawn, as a share of its lap", Value: quantity.Share(0.5).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "l > 0, z_f ≥ z_c, |l − l_d| ≤ lap·share",
		Symbols: []engine.Symbol{
			{Name: "l", Means: "height of the framing's underside at the panel's middle less the height of the extrados at the strap", Unit: "m"},
			{Name: "z_f", Means: "height of the framing's underside above the springing, where it is lowest over the row", Unit: "m"},
			{Name: "z_c", Means: "height of the extrados at the crown", Unit: "m"},
			{Name: "l_d", Means: "the strap's length as drawn", Unit: "m"},
			{Name: "lap", Means: "lap of the strap at each end", Unit: "m"},
		},
		Valid: "framing that is straight between the readings and level across the room", Source: cite.Derivation("heights above the level line"),
	},
	Check: checkStrap,
}

func checkStrap(p *engine.Pass) {
	framed := func(s layout.SurveyStation) bool { return s.Framing.Given() }
	if !hasAny(p, framed) {
		return
	}
	v, _, ok := placed(p)
	if !ok {
		return
	}
	key := func(n survey.Panel) string {
		return spec.Key("survey", "station", nearest(p, (n.Near+n.Far)/2, framed), "framing")
	}
	crown := p.Ceiling.Vault.Crown.Get()
	for i, n := range v.Panels.Get() {
		if n.Lowest < crown {
			p.Report(engine.Finding{
				At: key(n), Related: []string{springs, "vault.rise"}, Measured: length(crown - n.Lowest),
				Text: p.Textf("the framing's underside over %s is {measured} below the back of the crown", v.Name(i)),
			})
			return
		}
	}
	worst, worstPanel := longest(p, v)
	checkLength(p, worst, key(v.Panels.Get()[worstPanel]))
}

// cut is a strap as measured and as drawn.
type cut struct {
	panel       string
	strap       int // from 1
	length, off float64
}

// longest is the strap that is the furthest from as drawn, or that has no length.
func longest(p *engine.Pass, v *survey.Survey) (worst cut, panel int) {
	c := p.Ceiling
	for i, n := range v.Panels.Get() {
		for k, station := range c.Strap.Stations.Get() {
			now := cut{v.Name(i), k + 1, v.Strap(n, station), 0}
			if c.Room.Above.Given() {
				now.off = now.length - c.StrapLength(station)
			}
			switch {
			case worst.strap == 0, now.length <= 0 && now.length < worst.length,
				worst.length > 0 && math.Abs(now.off) > math.Abs(worst.off)+1e-9:
				worst, panel = now, i
			}
		}
	}
	return worst, panel
}

func checkLength(p *engine.Pass, worst cut, at string) {
	f := engine.Finding{At: at, Related: []string{springs, "room.above", "strap.lap"}}
	if worst.length <= 0 {
		f.Text = p.Textf("strap %d of %s has no length left: the framing comes down to its fixing", worst.strap, worst.panel)
		p.Report(f)
		return
	}
	for _, key := range []string{"room.above", "strap.lap"} {
		if !p.Ceiling.Has(key) {
			p.Absent(key)
			return
		}
	}
	limit, than := p.Limit("share"), "longer"
	limit.Value = length(limit.SI * p.Ceiling.Strap.Lap.Get())
	if worst.off < 0 {
		than = "shorter"
	}
	if off := math.Abs(worst.off); off > limit.SI {
		f.Severity, f.Measured, f.Bound = engine.Query, length(off), limit
		f.Text = p.Textf("strap %d of %s is %v long by the framing as measured, {measured} %s than drawn; its lap permits {limit}. Cut the straps panel by panel",
			worst.strap, worst.panel, quantity.Length(worst.length), than)
		p.Report(f)
	}
}
