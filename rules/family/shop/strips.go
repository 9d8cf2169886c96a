package shop

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

var blank = engine.Rule{
	ID:       "shop.blank",
	Title:    "each strip is one blank, or the scarfs of adjacent strips are far enough apart",
	Why:      "No clear board is as long as a large arch, so strips are scarfed from several boards. A scarf is weaker than the wood. Two scarfs side by side cut the rib through.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Formula: "m = ceil((L − c)/(blank − c)), m·blank − (m − 1)·c − L ≥ c + apart",
		Symbols: []engine.Symbol{
			{Name: "L", Means: "length of a strip: the longer edge of its rib plus the trim at both ends", Unit: "m"},
			{Name: "c", Means: "length of a scarf, its slope times the strip's thickness", Unit: "m"},
			{Name: "blank", Means: "length of the longest clear board", Unit: "m"},
			{Name: "m", Means: "number of boards in a strip", Unit: "1"},
			{Name: "apart", Means: "least distance along the rib between the scarfs of adjacent strips, end to end", Unit: "m"},
		},
		Valid:  "laminated ribs of whole strips; every other strip turned end for end; the shop's figures from [shop] in its standards, or else from common practice: blanks of 3660mm, whose consequences are only noted, and scarfs of 1 in 12 and 300mm apart",
		Source: cite.Derivation("boards laid end to end overlap by a scarf"),
	},
	Check: checkBlank,
}

// longest is the strips of the piece of an arch whose strips are longest.
func longest(p *engine.Pass) (shop.Strips, bool) {
	var most shop.Strips
	for _, s := range p.Results.Shop().Strips.Get() {
		if s.Length > most.Length*(1+1e-9) {
			most = s
		}
	}
	return most, most.Length > 0
}

func checkBlank(p *engine.Pass) {
	s, ok := longest(p)
	bench := p.Ceiling.Bench()
	if !ok || s.Boards == 1 {
		return
	}
	f := engine.Finding{
		At: "rib.lamination", Related: []string{"vault.span", "panels.around"},
		Measured: quantity.Length(s.Length).Value(), Bound: p.Bench("blank", quantity.Length(bench.Blank).Value()),
	}
	switch {
	case s.Boards == 0:
		f.Text = p.Textf("a scarf of strips of %v is {measured} long; the longest blank is {limit}", quantity.Length(p.Ceiling.Rib.Lamination.Get()))
		f.Measured = quantity.Length(s.Scarf).Value()
	case !bench.Scarf.Allowed:
		f.Text = "strips are {measured} long; the longest blank is {limit}, and the shop does not scarf"
		f.Bound.Firm = true // the shop's own word
	default:
		scarfed(p, s, &f)
	}
	p.Report(f)
}

// scarfed says how strips are scarfed of the longest blank. What rests on a blank that
// no standards state is a note.
func scarfed(p *engine.Pass, s shop.Strips, f *engine.Finding) {
	blank, least := f.Bound, p.Ceiling.Bench().Scarf.Apart
	switch {
	case s.Apart < 0: // which no distance allows
		f.Text = p.Textf("strips %v long are scarfed from %d blanks of %v, and the scarfs of adjacent strips overlap by {measured}; the minimum distance between them is {limit}",
			quantity.Length(s.Length), s.Boards, blank.Value)
		f.Measured, f.Bound = quantity.Length(-s.Apart).Value(), p.Bench("scarf.apart", quantity.Length(least).Value())
		f.Bound.Firm = true
	case quantity.Over(least, s.Apart):
		f.Text = p.Textf("strips %v long are scarfed from %d blanks of %v, which leaves {measured} between the scarfs of adjacent strips; the minimum is {limit}",
			quantity.Length(s.Length), s.Boards, blank.Value)
		f.Measured, f.Bound = quantity.Length(s.Apart).Value(), p.Bench("scarf.apart", quantity.Length(least).Value())
	default:
		f.Severity = engine.Query
		f.Text = p.Textf("strips are {measured} long; the longest blank is {limit}. Each strip is scarfed from %d boards with %d scarf%s %v long, %s from one end; turn every other strip end for end",
			s.Boards, len(s.Scarfs), plural(len(s.Scarfs)), quantity.Length(s.Scarf), places(p, s.Scarfs))
	}
	if !blank.Firm {
		f.Severity = engine.Note
		f.Text += ". No standards state the blank; it is assumed, by common practice"
	}
}

func plural(n int) string {
	if n == 1 {
		return ""
	}
	return "s"
}

// places lists where the middles of scarfs lie.
func places(p *engine.Pass, at []float64) string {
	text := "its middle "
	if len(at) > 1 {
		text = "their middles "
	}
	for i, s := range at {
		switch {
		case i == 0:
		case i == len(at)-1:
			text += " and "
		default:
			text += ", "
		}
		text += p.Textf("%v", quantity.Length(s))
	}
	return text
}

var press = engine.Rule{
	ID:       "shop.press",
	Title:    "the bent pieces fit the press",
	Why:      "A rib longer than the form and its clamps can't be glued.",
	Severity: engine.Hold,
	Basis: engine.Basis{
		Formula: "L ≤ press",
		Symbols: []engine.Symbol{
			{Name: "L", Means: "length of the form, equal to that of its strips", Unit: "m"},
			{Name: "press", Means: "greatest length of form and clamps, from the standards", Unit: "m"},
		},
		Valid: "laminated ribs", Source: cite.Derivation("comparison of two lengths"),
	},
	Check: func(p *engine.Pass) {
		bench := p.Ceiling.Bench()
		if p.Ceiling.Rib.Construction.Get() != "laminated" {
			return
		}
		if bench.Press == 0 {
			p.NotChecked("rib.construction", "the standards do not state the shop's press: [shop] press")
			return
		}
		if s, ok := longest(p); ok && quantity.Over(s.Length, bench.Press) {
			p.Report(engine.Finding{
				At: "vault.span", Related: []string{"panels.around", "vault.rise"},
				Text:     "the strips of a rib need {measured} of press; the press takes {limit}",
				Measured: quantity.Length(s.Length).Value(), Bound: p.Bench("press", quantity.Length(bench.Press).Value()),
			})
		}
	},
}

var clamp = engine.Rule{
	ID:       "shop.clamp",
	Title:    "the clamps give the pressure that the glue needs",
	Why:      "Strips under too little pressure are glued only at their high spots. The force needed is more than most clamps give.",
	Severity: engine.Query,
	Basis: engine.Basis{
		Formula: "F = p·w·L/(n − 1), n = ceil(L/spacing) + 1",
		Symbols: []engine.Symbol{
			{Name: "F", Means: "force of one clamp", Unit: "N"},
			{Name: "p", Means: "pressure on the glue, for hardwood or softwood", Unit: "Pa"},
			{Name: "w", Means: "width of the strips: half a rib plus the allowance that is jointed off", Unit: "m"},
			{Name: "L", Means: "length of the form", Unit: "m"},
			{Name: "n", Means: "clamps", Unit: "1"},
			{Name: "spacing", Means: "greatest distance between clamps", Unit: "m"},
		},
		Valid:  "laminated half ribs, glued one at a time; by default 1.4MPa on hardwood and 0.9MPa on softwood, with clamps every 150mm",
		Source: cite.CommonPractice(),
	},
	Check: checkClamp,
}

func checkClamp(p *engine.Pass) {
	var most shop.Clamping
	c, bench := p.Ceiling, p.Ceiling.Bench()
	for _, s := range p.Results.Shop().Strips.Get() {
		if one := shop.Clamped(c, s.Length); s.PerRib > 0 && one.Force > most.Force*(1+1e-9) {
			most = one
		}
	}
	if most.Clamps == 0 || math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return
	}
	f := engine.Finding{
		At: "rib.width", Related: []string{"rib.species"}, Severity: engine.Note, Measured: quantity.Force(most.Force).Value(),
		Text: p.Textf("%d clamps %v apart must press with {measured} each to give %v on the glue", most.Clamps, quantity.Length(most.Spacing), quantity.Stress(shop.Pressure(c, bench))),
	}
	if bench.Clamp.Capacity > 0 && quantity.Over(most.Force, bench.Clamp.Capacity) {
		f.Severity, f.Bound = engine.Query, p.Bench("clamp.capacity", quantity.Force(bench.Clamp.Capacity).Value())
		f.Text += "; the shop's clamps give {limit}"
	}
	p.Report(f)
}

var pick = engine.Rule{
	ID:       "shop.pick",
	Title:    "the shop can lift blanks and ribs by hand",
	Why:      "People lift a glued blank off its form, plane it and turn it over several times.",
	Severity: engine.Query,
	Basis: engine.Basis{
		Formula: "m ≤ pick",
		Symbols: []engine.Symbol{
			{Name: "m", Means: "mass of a glued blank, including its trim and the allowance that is jointed off; mass of any other rib as finished", Unit: "kg"},
			{Name: "pick", Means: "greatest mass that is lifted by hand, from the standards", Unit: "kg"},
		},
		Valid: "ribs before they are built into a panel; transit.weight checks the panel", Source: cite.Derivation("volume by density"),
	},
	Check: checkPick,
}

func checkPick(p *engine.Pass) {
	bench := p.Ceiling.Bench()
	if bench.Pick == 0 {
		p.NotChecked("rib.width", "the standards do not state what is lifted by hand: [shop] pick")
		return
	}
	if m, name := heaviest(p); quantity.Over(m, bench.Pick) {
		p.Report(engine.Finding{
			At: "rib.width", Related: []string{"rib.depth", "vault.span", "panels.around"},
			Text:     p.Textf("%s weighs {measured}; the shop lifts {limit} by hand", name),
			Measured: quantity.Mass(m).Value(), Bound: p.Bench("pick", quantity.Mass(bench.Pick).Value()),
		})
	}
}

// heaviest is the mass of the heaviest glued blank, or of the heaviest rib that is not
// glued of strips.
func heaviest(p *engine.Pass) (mass float64, name string) {
	c := p.Ceiling
	for _, piece := range c.VaultPieces() {
		if piece.Kind != layout.Rib && piece.Kind != layout.HalfRib {
			continue
		}
		m, n := piece.Mass, "a "+piece.Kind.String()
		if s, ok := longest(p); ok {
			density := timber.Density(c.Rib.Species.Get().SG12, c.Climate.Shop.Get())
			m = density * s.Length * c.Rib.Depth.Get() * (piece.Width + c.Bench().Joint)
			n = "the glued blank of " + n
		}
		if m > mass*(1+1e-9) {
			mass, name = m, n
		}
	}
	return mass, name
}
