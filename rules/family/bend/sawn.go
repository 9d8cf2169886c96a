package bend

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// segment is the angle that one segment of a sawn rib spans where the curve is
// tightest, and whether there is one.
func segment(p *engine.Pass) (angle float64, sawn bool) {
	c := p.Ceiling
	if c.Rib.Construction.Get() != "sawn" || math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return 0, false
	}
	if !c.Rib.Segments.Given() {
		p.Absent("rib.segments")
		return 0, false
	}
	return c.SegmentAngle(), true
}

var grain = engine.Rule{
	ID:       "bend.grain",
	Title:    "the slope of grain at the ends of a sawn segment is small",
	Why:      "A curved piece sawn from a straight board has short grain at its ends and breaks there.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "slope", Title: "slope of grain at a segment's end", Value: quantity.Value{SI: 1.0 / 12, Unit: quantity.One},
		Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.ASTMD245.At("1 in 12 keeps about 69% of the strength").FromMemory(),
	}},
	Basis: engine.Basis{
		Formula: "tan(α/2)",
		Symbols: []engine.Symbol{{Name: "α", Means: "angle that one segment spans, where the curve is tightest", Unit: "rad"}},
		Valid:   "straight-grained boards; the remaining strength is by Hankinson's formula with n = 1.5 and, across the grain, 0.05 of the strength along it",
		Source:  cite.Derivation("the chord of a segment is the grain's direction"),
	},
	Check: checkGrain,
}

func checkGrain(p *engine.Pass) {
	angle, sawn := segment(p)
	limit := p.Limit("slope")
	if !sawn || angle/2 <= math.Atan(limit.SI) {
		return
	}
	f := engine.Finding{At: "rib.segments", Related: []string{"vault.rise"}}
	need := int(math.Ceil(angle * float64(p.Ceiling.Rib.Segments.Get()) / (2 * math.Atan(limit.SI))))
	f.Offers = []engine.Offer{{Key: "rib.segments", Value: int64(need)}}
	if angle >= math.Pi {
		f.Text = p.Textf("a segment spans %v of arc, so the grain at its ends runs straight across it", quantity.Angle(angle))
		p.Report(f)
		return
	}
	slope := math.Tan(angle / 2)
	f.Measured, f.Bound = quantity.Value{SI: slope, Unit: quantity.One}, limit
	f.Text = p.Textf("the grain at a segment's ends slopes 1 in %.1f ({measured}); the maximum is {limit}. About %v of the bending strength is left",
		1/slope, quantity.Share(p.Ceiling.GrainStrength()))
	p.Report(f)
}

var plank = engine.Rule{
	ID:       "bend.plank",
	Title:    "a sawn segment can be cut from a plank of usual width",
	Why:      "Wide clear plank is expensive and cups. Cut shorter segments instead.",
	Severity: engine.Note,
	Limits: []engine.Limit{{
		Key: "width", Title: "width of plank", Value: quantity.Length(0.3).Value(), Sense: engine.AtMost, Lowest: 0.01, Most: 5, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "R_o − R_i·cos(α/2)",
		Symbols: []engine.Symbol{
			{Name: "R_o", Means: "radius of the rib's back", Unit: "m"},
			{Name: "R_i", Means: "radius of its intrados", Unit: "m"},
			{Name: "α", Means: "angle that one segment spans", Unit: "rad"},
		},
		Valid: "where the curve is tightest", Source: cite.Derivation("a segment between two parallel lines"),
	},
	Check: checkPlank,
}

func checkPlank(p *engine.Pass) {
	angle, sawn := segment(p)
	c, limit := p.Ceiling, p.Limit("width")
	inner := c.Vault.TightestRadius.Get()
	width := inner + c.Rib.Depth.Get() - inner*math.Cos(angle/2)
	if !sawn || width <= limit.SI {
		return
	}
	p.Report(engine.Finding{
		At: "rib.segments", Related: []string{"rib.depth"},
		Text:     "a segment needs plank {measured} wide; plank wider than {limit} is expensive and cups",
		Measured: quantity.Length(width).Value(), Bound: limit,
	})
}

// stockSheets are those that mills sell, in m: 4 × 8, 9, 10 and 12 ft, 5 × 5 ft and
// the European sizes.
var stockSheets = [][2]float64{
	{1.22, 2.44}, {1.22, 2.5}, {1.25, 2.5}, {1.22, 3.05}, {1.22, 3.66}, {1.525, 1.525}, {1.525, 3.05}, {1.5, 3.0},
}

// cutTolerance is what a mill's sheet may be off: 4 mm by European mills, and what
// a foot size differs from its metric name.
const cutTolerance = 0.008
