package survey

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

var differs = engine.Rule{
	ID:       "survey.differs",
	Title:    "the room as measured has the size that was drawn",
	Why:      "A room that differs from the drawing was drawn wrong or measured wrong. Every figure as drawn is then for another room.",
	Severity: engine.Query,
	Needs:    []string{table},
	Quiet:    true,
	Basis: engine.Basis{
		Formula: "|left + right − W| ≤ τ, |far − near − L| ≤ τ",
		Symbols: []engine.Symbol{
			{Name: "W", Means: "width of the room, as drawn", Unit: "m"},
			{Name: "L", Means: "length of the room, as drawn", Unit: "m"},
			{Name: "τ", Means: "tolerance of the room", Unit: "m"},
		},
		Valid: "each station, and each side wall", Source: cite.Derivation("the readings against the drawing"),
	},
	Check: checkDiffers,
}

func checkDiffers(p *engine.Pass) {
	c := p.Ceiling
	v, tolerance := c.Survey, p.Stated("room.tolerance", length(c.Room.Tolerance.Get()))
	report := func(at, key, what string, is, drawn float64) {
		if off := math.Abs(is - drawn); off > tolerance.SI {
			p.Report(engine.Finding{
				At: at, Related: []string{key, "room.tolerance"}, Measured: length(off), Bound: tolerance,
				Text: p.Textf("%s the room measures %v; the drawing says %v, a difference of {measured}; its tolerance is {limit}", what, quantity.Length(is), quantity.Length(drawn)),
			})
		}
	}
	drawn, worst, width := c.Room.Width.Get(), 0, c.Room.Width.Get()
	for i, s := range v.Station.Get() {
		if w := s.Left.Get() + s.Right.Get(); math.Abs(w-drawn) > math.Abs(width-drawn) {
			worst, width = i, w
		}
	}
	report(spec.Key("survey", "station", worst+1, "right"), "room.width", p.Textf("across station %d", worst+1), width, drawn)
	for _, side := range []struct {
		name string
		long float64
	}{{"left", v.Far.Left.Get() - v.Near.Left.Get()}, {"right", v.Far.Right.Get() - v.Near.Right.Get()}} {
		report("survey.far."+side.name, "room.length", "along its "+side.name+" wall", side.long, c.Room.Length.Get())
	}
}

var closes = engine.Rule{
	ID:       "survey.closes",
	Title:    "the diagonals agree with the other readings",
	Why:      "Diagonals show a bent baseline or a wrong reading at an end. Offsets alone do not.",
	Severity: engine.Query,
	Needs:    []string{table},
	Quiet:    true,
	Limits: []engine.Limit{{
		Key: "times", Title: "ratio of a diagonal's difference to the accuracy", Value: quantity.Value{SI: 3, Unit: quantity.One},
		Sense: engine.AtMost, Lowest: 0, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "|d − √(Δx² + Δy²)| ≤ times·acc",
		Symbols: []engine.Symbol{
			{Name: "d", Means: "diagonal as measured", Unit: "m"},
			{Name: "Δx", Means: "distance between the same two corners along the baseline, from survey.near and survey.far", Unit: "m"},
			{Name: "Δy", Means: "distance between them across the baseline, from the offsets at the stations", Unit: "m"},
			{Name: "times", Means: "the limit", Unit: "1"},
			{Name: "acc", Means: "accuracy of a reading", Unit: "m"},
		},
		Valid: "diagonals from corner to corner, at the height of the offsets", Source: cite.Derivation("the theorem of Pythagoras"),
	},
	Check: checkCloses,
}

func checkCloses(p *engine.Pass) {
	limit := p.Limit("times")
	limit.Value = length(limit.SI * p.Ceiling.Survey.Accuracy.Get())
	for i, d := range p.Results.Survey().Closes.Get() {
		if off := math.Abs(d.Measured - d.Follows); off > limit.SI {
			p.Report(engine.Finding{
				At: spec.Key("survey", "diagonals", i+1), Related: []string{stations, "survey.near", "survey.far", "survey.accuracy"},
				Text: p.Textf("the diagonal from %s is read as %v; the ends and the offsets give %v, a difference of {measured}; the maximum is {limit}. Measure again",
					[]string{"near left to far right", "near right to far left"}[i], quantity.Length(d.Measured), quantity.Length(d.Follows)),
				Measured: length(off), Bound: limit,
			})
		}
	}
}
