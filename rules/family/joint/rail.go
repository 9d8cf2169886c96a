package joint

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var rail = engine.Rule{
	ID:       "joint.rail",
	Title:    "the joints of rails to ribs have their least sizes",
	Why:      "A rail meets a rib with its end grain, where glue and threads hold least. The skin hangs on the rails, over people's heads.",
	Severity: engine.Hold,
	Needs:    []string{"rail.joint"},
	Limits: []engine.Limit{
		{Key: "least", Title: "ratio of a tenon's thickness or a dowel's diameter to the smaller of the rail's width and depth", Value: one(0.2), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "tenon", Title: "ratio of a tenon's thickness to the smaller of the rail's width and depth", Value: one(0.4), Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "dowel", Title: "ratio of a dowel's diameter to the smaller of the rail's width and depth", Value: one(0.5), Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.DowelThirds.At("no larger than half the thickness of the thinner board")},
		{Key: "embedment", Title: "embedment of a tenon in the half rib", Value: quantity.Length(0.020).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
		{Key: "diameters", Title: "embedment of a dowel in the half rib, in its diameters", Value: one(2.5), Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: cite.DowelDepth.At("at least 2.5 diameters on each side")},
		{Key: "screw", Title: "depth of a screw in the rail, in its diameters", Value: one(6), Sense: engine.AtLeast, Lowest: 0, Most: 100, Source: cite.AWCScrews.At("6D including the tip")},
	},
	Basis: engine.Basis{
		Formula: "least ≤ t/T ≤ tenon or dowel; e ≥ embedment, diameters·D or screw·D",
		Symbols: []engine.Symbol{
			{Name: "t", Means: "thickness of the tenon, diameter of the dowel", Unit: "m"},
			{Name: "T", Means: "the smaller of the rail's width and depth", Unit: "m"},
			{Name: "e", Means: "embedment of a tenon or dowel in the half rib, or of a screw in the rail", Unit: "m"},
			{Name: "D", Means: "diameter of the dowel or screw", Unit: "m"},
		},
		Valid:  "the least sizes of a joint, not its strength; glue holds end grain against side grain no better than end grain against end grain, which the handbook calls practically impossible to make strong enough; screws in the rail's end grain carry the rail in shear, and by Civil Engineering Formulas, p. 170, have no strength in withdrawal",
		Source: cite.WoodHandbook2010.At("chapter 10, end-grain joints"),
	},
	Check: checkRail,
}

func checkRail(p *engine.Pass) {
	switch j := p.Ceiling.RailJoint; j.Kind.Get() {
	case "tenon":
		if stated(p, j.Thickness, j.Width, j.Embedment) {
			checkRailTenon(p, j)
		}
	case "dowel":
		if stated(p, j.Diameter, j.Embedment) && counted(p) {
			checkRailDowels(p, j)
		}
	case "screw":
		if stated(p, j.Diameter, j.Embedment) && counted(p) {
			deepEnough(p, "screw goes into the rail", diameters(p.Limit("screw"), j))
		}
	default:
		p.Report(engine.Finding{
			At: "rail.joint.kind", Severity: engine.Query,
			Text: "the rails' end grain is only glued to the ribs, which is hardly ever strong enough for ordinary service. Use tenons, dowels or screws",
		})
	}
}

// stated says the first size that the spec does not state.
func stated(p *engine.Pass, sizes ...layout.Number) bool {
	for _, n := range sizes {
		if !n.Given() {
			p.Absent(n.Key())
			return false
		}
	}
	return true
}

// counted reports whether there are two or more at each end of a rail, or says
// what is wrong.
func counted(p *engine.Pass) bool {
	j := p.Ceiling.RailJoint
	if !j.Count.Given() {
		p.Absent(j.Count.Key())
		return false
	}
	if n := j.Count.Get(); n < 2 {
		p.Report(engine.Finding{
			At: j.Count.Key(), Severity: engine.Query,
			Text: p.Textf("one %s holds each end of a rail, and the rail can turn about it", j.Kind.Get()),
		})
	}
	return true
}

// lesser is the thickness of the rail, by the trade's word.
func lesser(c *layout.Ceiling) float64 { return math.Min(c.Rail.Width.Get(), c.Rail.Depth.Get()) }
