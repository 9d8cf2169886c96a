package closure

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var firstGap = engine.Rule{
	ID:       "close.first-gap",
	Title:    "the first panel stands clear of the far end wall",
	Why:      "Walls are not straight. A first panel set hard against a wall follows its bow, and so does every panel after it.",
	Severity: engine.Query,
	Needs:    []string{"close.first_gap"},
	Limits: []engine.Limit{{
		Key: "least", Title: "first gap", Value: quantity.Length(0.006).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Source: cite.CommonPractice()},
	Check: func(p *engine.Pass) {
		gap, limit := quantity.Length(p.Ceiling.Close.FirstGap.Get()), p.Limit("least")
		if float64(gap) < limit.SI {
			p.Report(engine.Finding{
				At: "close.first_gap", Text: "the first gap is {measured}; the minimum is {limit}", Measured: gap.Value(), Bound: limit,
				Offers: []engine.Offer{{Key: "close.first_gap", Value: p.Above(limit.SI)}},
			})
		}
	},
}

var cover = engine.Rule{
	ID:       "close.cover",
	Title:    "the perimeter moulding covers every gap at its widest",
	Why:      "Tolerances and the dry season open gaps at the walls. A gap wider than the moulding shows as a dark line.",
	Severity: engine.Hold,
	Needs:    []string{"edge.cover"},
	Figures:  []string{"close.last-gap.most", "close.side-gap.most"},
	Limits:   []engine.Limit{engine.OverlapLimit()},
	Basis: engine.Basis{
		Formula: "gap + overlap ≤ cover",
		Symbols: []engine.Symbol{
			{Name: "gap", Means: "widest of these gaps: the first gap, the greatest last gap in the dry season, and the gap beside a foot in the season that moves the foot inward", Unit: "m"},
			{Name: "overlap", Means: "least overlap of the moulding over the panels", Unit: "m"},
			{Name: "cover", Means: "widest gap that the moulding can cover", Unit: "m"},
		},
		Valid:  "the vault in the middle of the room; all of the shrinkage along it opens the last gap",
		Source: cite.Derivation("the chain of lengths at its worst, with the movement of the wood"),
	},
	Check: checkCover,
}

func checkCover(p *engine.Pass) {
	k := p.Results.Closing()
	gap := func(at, where string, width float64, err error) {
		if err != nil {
			p.Lacks("rib.species", err)
			return
		}
		reportCover(p, at, where, width, wetDelivery(p))
	}
	if e, ok := k.Ends(); !ok {
		p.Absent("close.first_gap")
	} else {
		reportCover(p, "close.first_gap", "the first gap is", e.First.Get(), false)
		if most := e.Most.Get(); p.Ordered() {
			gap("close.first_gap", "in the dry season the last gap is up to", most.Value, most.Err)
		}
	}
	most := k.Sides.Most.Get()
	gap("room.width", "the gap beside a foot is up to", most.Value, most.Err)
}

// wetDelivery reports whether the wood is wetter in the shop than in either season,
// so that its gaps open whatever the air is: a drier shop cures that, and a wider
// moulding hides it.
func wetDelivery(p *engine.Pass) bool {
	m := p.Ceiling.Climate
	return m.Shop.Get() > max(m.Dry.Get(), m.Wet.Get())
}

// answers are the rules on the measured room, by the key that a gap hangs on.
var answers = map[string]string{"close.first_gap": "survey.end", "room.width": "survey.cover"}

func reportCover(p *engine.Pass, at, where string, width float64, wet bool) {
	f, short := p.Hides(at, where, width)
	if !short {
		return
	}
	if wet {
		f.Text += "; the gap opens because the wood is wetter in the shop than in either season"
		f.Related, f.NotBy, f.Offers = append(f.Related, "climate.shop"), []string{"edge.cover"}, nil
	}
	p.Report(drawn(p, f, answers[at]))
}

var side = engine.Rule{
	ID:       "close.side",
	Title:    "the panel at its widest fits between the walls at their narrowest",
	Why:      "Form, tolerance, season and the arch's own weight spread the feet. A foot that meets the wall leaves the panel crooked.",
	Severity: engine.Hold,
	Figures:  []string{"panel.side-gap"},
	Limits: []engine.Limit{{
		Key: "clearance", Title: "clearance beside a foot after all movements that spread it", Value: quantity.Length(0.003).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "(W − τ − B − p − f·k)/2 − season − load ≥ clearance",
		Symbols: []engine.Symbol{
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "τ", Means: "tolerance of the room", Unit: "m"},
			{Name: "B", Means: "width of the vault over its feet", Unit: "m"},
			{Name: "p", Means: "tolerance of a panel", Unit: "m"},
			{Name: "f·k", Means: "tolerance of the form's rise, converted to width", Unit: "m"},
			{Name: "season", Means: "movement of a foot outward, in the season that moves it outward", Unit: "m"},
			{Name: "load", Means: "movement of a foot outward under load, on the lifts or on the straps; 0 if the spec gives no straps", Unit: "m"},
			{Name: "clearance", Means: "least clearance", Unit: "m"},
		},
		Valid:  "the vault in the middle of the room",
		Source: cite.Derivation("the chain of widths at its worst, with the movement of the wood and of the frame"),
	},
	Check: checkSide,
}

func checkSide(p *engine.Pass) {
	gap, clearance := p.Results.Closing().Sides.Least.Get(), p.Limit("clearance")
	if gap < 0 {
		p.Report(drawn(p, engine.Finding{
			At: "room.width", Related: []string{"vault.span", "panels.tolerance", "panels.form", "room.tolerance"},
			Text:     "the panel at its widest is {measured} wider than the room at its narrowest",
			Measured: quantity.Length(-2 * gap).Value(),
			Offers:   []engine.Offer{{Key: "vault.span", Value: p.Below(p.Ceiling.Vault.Span.Get() + 2*(gap-clearance.SI))}},
		}, "survey.fits"))
		return
	}
	spread, ok := footSpread(p)
	if left := gap - spread; ok && left < clearance.SI {
		p.Report(drawn(p, engine.Finding{
			At: "room.width", Related: []string{"vault.span", "panels.form", "room.tolerance", "rib.cut"}, Severity: engine.Query,
			Text: p.Textf("the panel at its widest has %v beside each foot in the room at its narrowest; this is %v too little for a movement of %v, from the season and the arch's weight, and a clearance of {limit}",
				quantity.Length(gap), quantity.Length(clearance.SI-left), quantity.Length(spread)),
			Measured: quantity.Length(left).Value(), Bound: clearance,
			Offers: []engine.Offer{{Key: "vault.span", Value: p.Below(p.Ceiling.Vault.Span.Get() + 2*(left-clearance.SI))}},
		}, "survey.fits"))
	}
}

// footSpread is how far a foot moves outward at most, by season and load; not
// known where the wood's movement is not.
func footSpread(p *engine.Pass) (float64, bool) {
	s := p.Results.Seasons()
	dry, wet := s.Dry.Foot.Get(), s.Wet.Foot.Get()
	for _, foot := range []error{dry.Err, wet.Err} {
		if foot != nil {
			p.Lacks("rib.species", foot)
			return 0, false
		}
	}
	spread := math.Max(0, math.Max(dry.Value, wet.Value))
	if !p.Ceiling.Has("strap.stations") {
		return spread, true
	}
	h := p.Results.Hanging()
	first, raised := h.First.Get(), h.Raised.Get()
	if first.Err != nil || raised.Err != nil {
		return spread, true // which strap.holds says
	}
	load := math.Max(0, first.Is.Feet)
	if raised.Is != nil {
		load = math.Max(load, raised.Is.Feet)
	}
	return spread + load, true
}

var line = engine.Rule{
	ID:       "close.line",
	Title:    "the seams stay on the lines of the coffer grid",
	Why:      "Each panel starts where the panel before it ends, so deviations add up along the row. Lights, doors and windows set out on the grid show it.",
	Severity: engine.Query,
	Figures:  []string{"close.line"},
	Limits: []engine.Limit{{
		Key: "drift", Title: "distance of the last seam from its line of the grid", Value: quantity.Length(0.003).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "√(n·p² + n·u²)",
		Symbols: []engine.Symbol{
			{Name: "n", Means: "seams", Unit: "1"}, {Name: "p", Means: "tolerance of a panel", Unit: "m"}, {Name: "u", Means: "tolerance of a seam", Unit: "m"},
		},
		Valid:  "a grid set out from the first panel, including the seam gaps; panels that deviate independently",
		Source: cite.Scholz1995.At("statistical tolerancing"),
	},
	Check: func(p *engine.Pass) {
		l, limit := p.Results.Closing().Line.Get(), p.Limit("drift")
		if l.ByChance > limit.SI {
			p.Report(engine.Finding{
				At: "panels.tolerance", Related: []string{"panels.along", "seam.tolerance"},
				Text: p.Textf("seam %d from the first panel may be up to {measured} off the coffer grid if panels deviate independently, or %v if all deviate alike, as from one form; the maximum is {limit}",
					l.Seams, quantity.Length(l.Alike)),
				Measured: quantity.Length(l.ByChance).Value(), Bound: limit,
			})
		}
	},
}
