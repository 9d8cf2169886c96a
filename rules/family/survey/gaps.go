package survey

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var placing = cite.Derivation("a linear programme for the straight row with the greatest least gap, between walls that are straight from reading to reading")

var fits = engine.Rule{
	ID:       "survey.fits",
	Title:    "the panels fit between the walls as measured",
	Why:      "A panel jams overhead where a wall bows or runs out of true, unless the shop measures the room before it cuts.",
	Severity: engine.Hold,
	Needs:    []string{table, "close.first_gap"},
	Quiet:    true,
	Figures:  []string{"survey.least-gap"},
	Limits: []engine.Limit{{
		Key: "clearance", Title: "clearance beside a panel after the season has spread it", Value: length(layout.SurveyClearance),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "g − acc ≥ 0, g − acc − season ≥ clearance",
		Symbols: []engine.Symbol{
			{Name: "g", Means: "least gap on either side over the whole row, for the placing of the row that makes this gap greatest", Unit: "m"},
			{Name: "acc", Means: "accuracy of a reading", Unit: "m"},
			{Name: "season", Means: "movement of a foot outward, in the season that moves it outward", Unit: "m"},
			{Name: "clearance", Means: "least clearance", Unit: "m"},
		},
		Valid: "one straight row of panels at their widest; the slope of its axis to the baseline is at most 10mm in 1m", Source: placing,
	},
	Check: checkFits,
}

func checkFits(p *engine.Pass) {
	v, _, ok := placed(p)
	if !ok {
		return
	}
	gap, accuracy, clearance := v.Least.Get().Gap, p.Ceiling.Survey.Accuracy.Get(), p.Limit("clearance")
	f := engine.Finding{At: stations, Related: []string{"vault.span", "survey.accuracy", "panels.form"}}
	narrower := func(left float64) []engine.Offer {
		return []engine.Offer{{Key: "vault.span", Value: p.Below(p.Ceiling.Vault.Span.Get() + 2*(left-clearance.SI))}}
	}
	left := gap - accuracy
	if left < 0 {
		f.Text = p.Textf("the row of panels at its widest does not fit between the measured walls: even in its best position it needs {measured} more on each side, including %v for the accuracy of the readings", quantity.Length(accuracy))
		f.Measured, f.Offers = length(-left), narrower(left)
		p.Report(f)
		return
	}
	spread, ok := moves(p, 1)
	if left -= spread; ok && left < clearance.SI {
		f.Severity = engine.Query
		f.Text = p.Textf("the row of panels, in its best position between the measured walls, has %v beside it; this is %v too little for readings with an accuracy of %v, a seasonal movement of %v and a clearance of {limit}",
			quantity.Length(gap), quantity.Length(clearance.SI-left), quantity.Length(accuracy), quantity.Length(spread))
		f.Measured, f.Bound, f.Offers = length(left), clearance, narrower(left)
		p.Report(f)
	}
}

var cover = engine.Rule{
	ID:       "survey.cover",
	Title:    "the moulding covers the gaps beside the panels, as measured",
	Why:      "A wall that bows away leaves a gap that a moulding made for the drawing does not cover.",
	Severity: engine.Hold,
	Needs:    []string{table, "close.first_gap", "edge.cover"},
	Quiet:    true,
	Figures:  []string{"survey.most-gap"},
	Limits:   []engine.Limit{engine.OverlapLimit()},
	Basis: engine.Basis{
		Formula: "g + p + f·k + acc + season + overlap ≤ cover",
		Symbols: []engine.Symbol{
			{Name: "g", Means: "greatest gap beside the panels at their widest, for the placing of the row in the room", Unit: "m"},
			{Name: "p", Means: "tolerance of a panel", Unit: "m"},
			{Name: "f·k", Means: "tolerance of the form's rise, converted to width", Unit: "m"},
			{Name: "acc", Means: "accuracy of a reading", Unit: "m"},
			{Name: "season", Means: "movement of a foot inward, in the season that moves it inward", Unit: "m"},
			{Name: "overlap", Means: "least overlap of the moulding over the panels", Unit: "m"},
			{Name: "cover", Means: "widest gap that the moulding can cover", Unit: "m"},
		},
		Valid: "the placing of the row that minimises the greatest gap and keeps the clearance of survey.fits", Source: placing,
	},
	Check: checkCover,
}

func checkCover(p *engine.Pass) {
	v, at, ok := placed(p)
	if !ok {
		return
	}
	if drawn, ok := moves(p, -1); ok {
		reportCover(p, stations, "the greatest gap beside the panels, at their narrowest and drawn in by the season,", at.Most+v.Narrower.Get()+p.Ceiling.Survey.Accuracy.Get()+drawn)
	}
}

// reportCover reports a gap that the moulding does not hide.
func reportCover(p *engine.Pass, at, where string, width float64) {
	if f, short := p.Hides(at, where+" is up to", width); short {
		p.Report(f)
	}
}

var end = engine.Rule{
	ID:       "survey.end",
	Title:    "the last panel goes in and the moulding covers both end gaps, as measured",
	Why:      "An end wall out of square leaves less room at one corner of the last panel than the drawing shows.",
	Severity: engine.Hold,
	Needs:    []string{table, "close.first_gap"},
	Quiet:    true,
	Figures: []string{
		"survey.last-gap.left.least", "survey.last-gap.right.least", "survey.last-gap.left.most", "survey.last-gap.right.most",
		"survey.first-gap.left", "survey.first-gap.right",
	},
	Limits: []engine.Limit{{
		Key: "clearance", Title: "clearance left when the last panel stands off", Value: length(0.003),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}, engine.OverlapLimit()},
	Basis: engine.Basis{
		Formula: "g_l − ΔL − P·p − n·u − 2·acc ≥ t/2 + clearance",
		Symbols: []engine.Symbol{
			{Name: "g_l", Means: "gap between the near wall and the nearer of the last panel's corners, for the placing of the row in the room", Unit: "m"},
			{Name: "ΔL", Means: "sum of the growth of all rib widths since the shop, for the state of the wood when hung that makes them widest", Unit: "m"},
			{Name: "P", Means: "panels along", Unit: "1"},
			{Name: "p", Means: "tolerance of a panel", Unit: "m"},
			{Name: "n", Means: "seams", Unit: "1"},
			{Name: "u", Means: "tolerance of a seam", Unit: "m"},
			{Name: "acc", Means: "accuracy of a reading", Unit: "m"},
			{Name: "t", Means: "length of a tenon, half of which projects", Unit: "m"},
			{Name: "clearance", Means: "least clearance", Unit: "m"},
		},
		Valid:  "end walls that run straight between their corners; the first gap set at the first panel's corner that is nearer to the wall",
		Source: cite.Scholz1995.At("arithmetic tolerancing: the sum of the absolute tolerances"),
	},
	Check: checkEnd,
}

func checkEnd(p *engine.Pass) {
	v, _, ok := placed(p)
	if !ok {
		return
	}
	last := v.Last.Get()
	left, right := last[0].Least, last[1].Least
	switch {
	case left.Err != nil:
		p.Lacks("rib.species", left.Err)
	case left.Value <= right.Value:
		checkSlide(p, "left", left.Value)
	default:
		checkSlide(p, "right", right.Value)
	}
	if !p.Ceiling.Edge.Cover.Given() {
		p.Absent("edge.cover")
		return
	}
	first := v.First.Get()
	reportCover(p, "close.first_gap", "the gap between the far wall and a corner of the first panel", max(first.Left, first.Right))
	if most := last[0].Most; most.Err != nil {
		p.Lacks("rib.species", most.Err)
	} else if p.Ordered() {
		reportCover(p, "survey.near", "in the dry season the gap between the near wall and a corner of the last panel", max(most.Value, last[1].Most.Value))
	}
}

// checkSlide compares the last gap at the corner where it is less with what the last
// panel needs to stand off.
func checkSlide(p *engine.Pass, side string, least float64) {
	projection, clearance := p.Results.Closing().Projection.Get(), p.Limit("clearance")
	f := engine.Finding{
		At: "close.first_gap", Related: []string{"survey.near", "survey.far", "vault.length", "close.last"}, Measured: length(least),
		Offers: p.Shorten(projection + clearance.SI - least),
	}
	where := "the last gap between the measured end walls may be as small as {measured}, at the " + side + " corner"
	switch {
	case least < 0:
		f.Text, f.Measured = "the row of panels at its longest is {measured} too long for the measured end walls, at the "+side+" corner of the last panel", length(-least)
	case least < projection:
		f.Text = where + "; the last panel must stand off by {limit}, the projection of its neighbour's tenons, before it slides into place"
		f.Bound = p.Stated("seam.tenon", length(projection))
	case least < projection+clearance.SI:
		f.Text, f.Severity = where+"; the last panel needs {limit} to go in, which includes %v of clearance", engine.Query
		f.Text = p.Textf(f.Text, clearance.Value)
		f.Bound = clearance
		f.Bound.Value = length(projection + clearance.SI)
	default:
		return
	}
	p.Report(f)
}
