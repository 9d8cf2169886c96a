package rib

import (
	"fmt"
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec/quantity"
)

var frameSource = cite.Derivation("plane frame of at least 72 elements, checked against closed forms and a general-purpose finite element program")

var sag = engine.Rule{
	ID:       "rib.sag",
	Title:    "the rib's sag between its straps, and the step between adjacent ribs at a seam, are small",
	Why:      "A sag shows against the straight line of the moulding. A step at a seam throws a shadow.",
	Severity: engine.Hold,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"hanging.first-hung.sag-by-run"},
	Limits: []engine.Limit{
		{Key: "run", Title: "ratio of clear run to sag", Value: quantity.Value{SI: 240, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 50, Most: 5000, Source: cite.CommonPractice()},
		{Key: "code", Title: "ratio of clear run to half of the first day's sag", Value: quantity.Value{SI: 180, Unit: quantity.One}, Sense: engine.AtLeast, Lowest: 50, Most: 5000, Source: cite.IBC.At("table 1604.3, roof members, nonplaster ceiling: l/180 under dead and live load; note d: of the dead load only the creep, half of its deflection if the wood is dry")},
		{Key: "step", Title: "step across a seam", Value: quantity.Length(0.0013).Value(), Sense: engine.AtMost, Lowest: 0, Most: 0.1, Source: cite.AWS.At("p. 241, 6.1.21: custom grade, shaped")},
	},
	Basis: engine.Basis{
		Formula: "δ·(1 + k) ≤ u/run, δ/2 ≤ u/code",
		Symbols: []engine.Symbol{
			{Name: "δ", Means: "first day's deflection below the chord between adjacent supports", Unit: "m"},
			{Name: "k", Means: "creep over years, 0.6 (" + cite.Eurocode5.At("k_def of service class 1").String() + ")", Unit: "1"},
			{Name: "u", Means: "clear run; twice an overhang", Unit: "m"},
			{Name: "run", Means: "least ratio of clear run to sag", Unit: "1"},
			{Name: "code", Means: "least ratio of clear run to the part of the dead load's deflection that the code counts, half of the first day's sag", Unit: "1"},
		},
		Valid: "the rib as first hung, of dry wood and without live load; the step is that of one strap set long or short", Source: frameSource,
	},
	Check: checkSag,
}

func checkSag(p *engine.Pass) {
	first, ok := engine.Hung(p, p.Results.Hanging().First)
	if !ok {
		return
	}
	p.Unweighed()
	checkRun(p, first.ByRun)
	set, ok := engine.Hung(p, p.Results.Hanging().Set)
	if step, limit := set.Step(), p.Limit("step"); ok && step > limit.SI {
		p.Report(engine.Finding{
			At: "strap.setting", Related: []string{"rib.depth", "strap.stations"}, Severity: engine.Query,
			Text:     "a strap set long or short makes a step of {measured} between the rib and its neighbour across the seam; the maximum is {limit}",
			Measured: quantity.Length(step).Value(), Bound: limit,
		})
	}
}

// checkRun compares the sag with its clear run: the part of it that the code
// limits, and else the whole of it.
func checkRun(p *engine.Pass, sag hanging.Sag) {
	f := engine.Finding{At: "rib.depth", Related: []string{"strap.stations"}, Offers: deeper(p)}
	code, usual := p.Limit("code"), p.Limit("run")
	switch creeps := sag.FirstDay() / 2; {
	case creeps*code.SI > sag.Run:
		f.Text = p.Textf("the rib's creep over its clear run of %v is {measured}, half of its first day's sag of %v; the maximum is {limit}, 1/%.0f of the run",
			quantity.Length(sag.Run), quantity.Length(sag.FirstDay()), code.SI)
		f.Measured, f.Bound = quantity.Length(creeps).Value(), over(code, sag.Run)
	case sag.Drop*usual.SI > sag.Run:
		f.Text = p.Textf("the rib's sag over its clear run of %v is {measured} after years, %.3g times the first day's; the maximum is {limit}, 1/%.0f of the run",
			quantity.Length(sag.Run), sag.Drop/sag.FirstDay(), usual.SI)
		f.Measured, f.Bound = quantity.Length(sag.Drop).Value(), over(usual, sag.Run)
	default:
		return
	}
	p.Report(f)
}

// over is the length that a limit on run by length allows.
func over(limit engine.Bound, run float64) engine.Bound {
	limit.Value = quantity.Length(run / limit.SI).Value()
	return limit
}

// deepened is a depth for the rib, at least a factor of its own: on a step, or of
// a laminated one in whole strips.
func deepened(p *engine.Pass, factor float64) string {
	depth := p.Ceiling.Deeper(factor)
	if p.Ceiling.Rib.Lamination.Get() > 0 {
		return p.Exactly(depth)
	}
	return p.Above(depth)
}

// deeper offers ribs up to twice as deep, in tenths.
func deeper(p *engine.Pass) []engine.Offer {
	var offers []engine.Offer
	for more := 1.1; more <= 2.01; more += 0.1 {
		offers = append(offers, engine.Offer{Key: "rib.depth", Value: deepened(p, more)})
	}
	return offers
}

var stress = engine.Rule{
	ID:       "rib.stress",
	Title:    "the rib's stress is a small share of the strength of clear wood",
	Why:      "The handbook's strengths are averages of small clear pieces. A rib has knots and joints, and carries its load for years.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"hanging.first-hung.stress"},
	Limits:   []engine.Limit{engine.StressLimit()},
	Basis: engine.Basis{
		Formula: "|N|/A + |M|/S ≤ k·MOR/f",
		Symbols: []engine.Symbol{
			{Name: "N", Means: "axial force", Unit: "N"},
			{Name: "A", Means: "area, less the reveal; of a sawn rib of layers and segments, also less the layer that is cut at a joint", Unit: "m²"},
			{Name: "M", Means: "bending moment", Unit: "N·m"},
			{Name: "S", Means: "section modulus of the same section", Unit: "m³"},
			{Name: "MOR", Means: "modulus of rupture at 12% moisture", Unit: "Pa"},
			{Name: "k", Means: "share of the strength that remains. Laminated rib: the curvature factor 1 − 2000·(t/R)², where t is a strip's thickness and R the tightest radius, times 0.80 to 0.90 by the slope of the scarfs if the strips are scarfed (Wood Handbook, from memory). Sawn rib: the share that bend.grain computes for the slope of its grain. Solid rib: 1", Unit: "1"},
			{Name: "f", Means: "the limit's factor", Unit: "1"},
		},
		Valid: "the worst of the hanging cases; R/t of at least 100 for hardwood and 125 for softwood; the strength where the curve is tightest is used everywhere; the strength that a solid rib loses by steaming is not counted", Source: frameSource,
	},
	Check: checkStress,
}

// worstOf is the case of the envelope with the most of something.
func worstOf(cases []*hanging.Case, of func(*hanging.Case) float64) (most float64, in *hanging.Case) {
	for _, c := range cases {
		if v := of(c); in == nil || v > most+hanging.Alike*math.Abs(most) {
			most, in = v, c
		}
	}
	return most, in
}

func checkStress(p *engine.Pass) {
	cases, ok := p.Envelope()
	if !ok {
		return
	}
	p.Unweighed()
	jointed := hanging.Jointed(p.Ceiling)
	if jointed && !hanging.CarriesAtJoint(p.Ceiling) {
		p.NotChecked("rib.layer", "nothing is left to carry at a joint, which rib.joint says")
		return
	}
	kept, why, ok := strength(p)
	if !ok {
		return
	}
	limit, wood := p.Limit("factor"), p.Ceiling.Rib.Species.Get()
	allowed := limit
	allowed.Value = quantity.Stress(kept * wood.MOR / limit.SI).Value()
	most, in := worstOf(cases, func(c *hanging.Case) float64 { return c.Stress(jointed) })
	if most <= allowed.SI {
		return
	}
	p.Report(engine.Finding{
		At: "rib.depth", Related: []string{"rib.width", "strap.stations"},
		Text:     p.Textf("the rib is stressed to {measured} %s; the limit is {limit}: the strength of %s%s, divided by %.3g", in.Words(), wood.Name, why, limit.SI),
		Measured: quantity.Stress(most).Value(), Bound: allowed, Offers: deeper(p),
	})
}

// strength is the share of its wood's bending strength that the rib keeps, and
// what for; where it has no figure the rule is not checked.
func strength(p *engine.Pass) (kept float64, why string, ok bool) {
	k, needs, err := p.Results.Shop().Kept(p.Ceiling)
	switch {
	case needs != "":
		p.Absent(needs)
		return 0, "", false
	case err != nil:
		p.NotChecked("rib.lamination", p.Explain(err))
		return 0, "", false
	}
	for _, by := range []struct {
		share float64
		what  string
	}{{k.Grain, "the slope of its grain"}, {k.Curvature, "its curvature"}, {k.Scarf, "the scarfs of its strips"}} {
		if by.share < 1 {
			why += fmt.Sprintf(", times %.3g for %s", by.share, by.what)
		}
	}
	return k.Share(), why, true
}

var radial = engine.Rule{
	ID:       "rib.radial",
	Title:    "bending does not pull the layers of the rib apart",
	Why:      "A moment that opens the curve pulls across the grain, the direction in which wood is weakest.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"hanging.first-hung.radial"},
	Limits: []engine.Limit{{
		Key: "most", Title: "tension across the grain", Value: quantity.Stress(0.10e6).Value(), Sense: engine.AtMost, Lowest: 0, Most: 1e7, Source: cite.NDS.At("5.2.8: radial tension, 15psi for Douglas fir-larch, hem-fir and western woods, except under wind and earthquake; used here for other woods too, for which it is less than a third of their shear strength").FromMemory(),
	}},
	Basis: engine.Basis{
		Formula: "3·M/(2·R·b·d)",
		Symbols: []engine.Symbol{
			{Name: "M", Means: "moment that opens the curve", Unit: "N·m"},
			{Name: "R", Means: "radius of the centre line", Unit: "m"},
			{Name: "b", Means: "width of half the rib", Unit: "m"},
			{Name: "d", Means: "depth", Unit: "m"},
		},
		Valid: "rectangular sections", Source: cite.NDS.At("5.4.1, read on a page that reprints it"),
	},
	Check: func(p *engine.Pass) {
		cases, ok := p.Envelope()
		if !ok {
			return
		}
		p.Unweighed()
		limit := p.Limit("most")
		if most, in := worstOf(cases, func(c *hanging.Case) float64 { return c.Radial }); most > limit.SI {
			p.Report(engine.Finding{
				At: "rib.depth", Related: []string{"strap.stations", "vault.rise"},
				Text:     "bending pulls across the grain with {measured} " + in.Words() + "; the maximum is {limit}",
				Measured: quantity.Stress(most).Value(), Bound: limit,
			})
		}
	},
}

var feet = engine.Rule{
	ID:       "rib.feet",
	RefersTo: engine.ToEngineer, // the thrust, where the walls stop the feet
	Title:    "the feet stay clear of the walls while the panel is on the lifts and when it hangs",
	Why:      "An arch spreads on two lifts. Feet that touch the walls jam it on the way up.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations"},
	Figures:  []string{"panel.side-gap", "hanging.first-hung.feet"},
	Limits: []engine.Limit{{
		Key: "clear", Title: "between a foot and the wall", Value: quantity.Length(0.001).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "panels level and in the middle of the room; with a survey, the least measured width at a panel less twice the accuracy", Source: frameSource},
	Check: checkFeet,
}

func checkFeet(p *engine.Pass) {
	h := p.Results.Hanging()
	first, ok := engine.Hung(p, h.First)
	if !ok {
		return
	}
	raised, ok := engine.Hung(p, h.Raised)
	if !ok {
		return
	}
	between, key, where := p.Beside()
	gap, limit := (between-p.Ceiling.WidestPanel())/2, p.Limit("clear")
	most, when := first.Feet, "as first hung"
	if raised != nil && raised.Feet > most {
		most, when = raised.Feet, "on the lifts"
	}
	if left := gap - math.Max(0, most); left < limit.SI {
		p.Report(engine.Finding{
			At: key, Related: []string{"vault.span", "lift.stations", "panels.form"},
			Text: p.Textf("%s each foot moves %v outward%s",
				when, quantity.Length(most), p.Lacking(gap, math.Max(0, most), limit.SI, "beside the panel at its widest"+where)),
			Measured: quantity.Length(left).Value(), Bound: limit,
		})
		referThrust(p, key)
	}
}

// referThrust refers what the feet thrust with on walls that stop them.
func referThrust(p *engine.Pass, key string) {
	if thrust, ok := engine.Hung(p, p.Results.Hanging().Thrust); ok && thrust != nil {
		p.Report(engine.Finding{
			At: key, Severity: engine.Refer,
			Text: p.Textf("each edge rib thrusts with %v on walls that stop the feet; whether the walls may take that is referred to the engineer", quantity.Force(*thrust)),
		})
	}
}

var inner = engine.Rule{
	ID:       "rib.inner",
	Title:    "every rib has its own straps",
	Why:      "The inner ribs of a panel of several modules have no straps. The rails' joints carry them to the edge ribs.",
	Severity: engine.Note,
	Needs:    []string{"strap.stations"},
	Basis:    engine.Basis{Valid: "the rail joints along an inner rib share its weight; the engineer checks the strength of the joints", Source: cite.CommonPractice()},
	Check:    checkInner,
}

func checkInner(p *engine.Pass) {
	c := p.Ceiling
	ribs := int(math.Round(c.Panel.Modules.Get())) - 1
	if ribs < 1 {
		return
	}
	// The whole panel hangs on two edge ribs: of what an inner module adds,
	// each rail's joint takes its part.
	joints := float64(c.Grid.Around.Get() + 1)
	force := c.Panel.Mass.Get() * float64(c.Panel.Around.Get()) * quantity.Gravity * float64(ribs) / float64(ribs+1) / 2 / joints
	hang := "inner rib of each panel hangs"
	if ribs > 1 {
		hang = "inner ribs of each panel hang"
	}
	p.Report(engine.Finding{
		At: "panels.along", Related: []string{"strap.stations"},
		Text: p.Textf("%d %s on the joints of its rails, about %v on each joint at an edge rib; the engineer checks these joints", ribs, hang, quantity.Force(force)),
	})
}
