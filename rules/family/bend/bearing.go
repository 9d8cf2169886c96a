package bend

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var skinBearing = engine.Rule{
	ID:       "bend.skin-bearing",
	Title:    "the skin bears on every rail, and on the ribs if it lies behind them",
	Why:      "Glue does not hold a skin that does not touch the frame. A skin that overlaps the frame does not go in.",
	Severity: engine.Hold,
	Limits: []engine.Limit{
		{Key: "gap", Title: "gap between the skin and the back of a rail or rib", Value: quantity.Length(0.0005).Value(), Sense: engine.AtMost, Lowest: 0, Most: 0.1, Source: cite.CommonPractice()},
		{Key: "bearing", Title: "width of bearing on a half rail", Value: quantity.Length(0.010).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice()},
	},
	Basis: engine.Basis{
		Formula: "a = d_l; behind the ribs a = d",
		Symbols: []engine.Symbol{
			{Name: "a", Means: "setback from the intrados to the skin", Unit: "m"},
			{Name: "d_l", Means: "depth of the rail", Unit: "m"},
			{Name: "d", Means: "depth of the rib", Unit: "m"},
		},
		Source: cite.Derivation("geometry; bearing by common practice"),
	},
	Check: checkSkinBearing,
}

// seats compares the skin's setback with the depth of a member that it bears on.
func seats(p *engine.Pass, key, member string, depth float64) {
	setback, gap := p.Ceiling.Skin.Setback.Get(), p.Limit("gap")
	f := engine.Finding{
		At: "skin.setback", Related: []string{key},
		Offers: []engine.Offer{{Key: "skin.setback", Value: p.Exactly(depth)}},
	}
	switch away := setback - depth; {
	case away < -gap.SI:
		f.Text = "the skin is set back {measured}; the " + member + " is {limit} deep and overlaps the skin"
		f.Measured, f.Bound = quantity.Length(setback).Value(), p.Stated(key, quantity.Length(depth).Value())
	case away > gap.SI:
		f.Severity, f.Text = engine.Query, "the skin stands {measured} off the back of the "+member+"; the maximum is {limit}"
		f.Measured, f.Bound = quantity.Length(away).Value(), gap
	default:
		return
	}
	p.Report(f)
}

func checkSkinBearing(p *engine.Pass) {
	c := p.Ceiling
	seats(p, "rail.depth", "rail", c.Rail.Depth.Get())
	if !c.Skin.Between.Get() {
		seats(p, "rib.depth", "rib", c.Rib.Depth.Get())
	}
	if least := p.Limit("bearing"); c.Rail.Width.Get()/2 < least.SI {
		p.Report(engine.Finding{
			At: "rail.width", Text: "the skin bears on {measured} of a half rail; the minimum is {limit}",
			Measured: quantity.Length(c.Rail.Width.Get() / 2).Value(), Bound: least,
		})
	}
}

var sheetJoint = engine.Rule{
	ID:       "bend.sheet-joint",
	Title:    "every joint of the skin's sheets falls on a member",
	Why:      "A joint between two members has nothing behind it, so it opens and shows as a kink.",
	Severity: engine.Query,
	Figures:  []string{"skin.sheets"},
	Basis: engine.Basis{
		Formula: "module ≤ sheet, around and along",
		Symbols: []engine.Symbol{
			{Name: "module", Means: "around: distance between rails, on the skin's near face; along: length that one sheet must cover", Unit: "m"},
			{Name: "sheet", Means: "length of the sheet's edge in that direction", Unit: "m"},
		},
		Source: cite.Derivation("a sheet that does not reach the next member leaves a joint between members"),
	},
	Check: checkSheetJoint,
}

func checkSheetJoint(p *engine.Pass) {
	c, s := p.Ceiling, p.Ceiling.SkinSheets()
	if !s.FitsAround {
		p.Report(engine.Finding{
			At: "skin.sheet.bent", Related: []string{"grid.around"},
			Text:     "the skin is {measured} from rail to rail; the sheet's bent edge is {limit}, so joints fall between rails",
			Measured: quantity.Length(s.Module).Value(), Bound: p.Stated("skin.sheet.bent", quantity.Length(c.Skin.Sheet.Bent.Get()).Value()),
		})
	}
	if !s.FitsAlong {
		p.Report(engine.Finding{
			At: "skin.sheet.straight", Related: []string{"grid.along"},
			Text:     "the skin is {measured} from rib to rib; the sheet's straight edge is {limit}, so joints fall between ribs",
			Measured: quantity.Length(s.Bay).Value(), Bound: p.Stated("skin.sheet.straight", quantity.Length(c.Skin.Sheet.Straight.Get()).Value()),
		})
	}
}
