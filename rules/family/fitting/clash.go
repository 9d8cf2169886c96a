package fitting

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var geometry = cite.Derivation("the fitting in the coffer's own coordinates")

var inGrid = engine.Rule{
	ID:       "fitting.in-grid",
	Title:    "every fitting is in a coffer that there is",
	Why:      "A fitting in a coffer beyond the grid is one that a change of the grid has forgotten.",
	Severity: engine.Hold,
	Needs:    []string{"fitting"},
	Basis:    engine.Basis{Source: cite.Derivation("coffers counted from 1, around from the left springing and along from the near end")},
	Check: func(p *engine.Pass) {
		for _, f := range places(p.Ceiling) {
			if f.beyond() {
				p.Report(engine.Finding{
					At: f.key("coffer"), Related: []string{"grid.around", "grid.along"},
					Text: p.Textf("the %s is in %s, and the grid has %d coffers around and %d along", f.Name.Get(), f.where(), p.Ceiling.Grid.Around.Get(), p.Ceiling.Grid.Along.Get()),
				})
			}
		}
	},
}

var clearOfMembers = engine.Rule{
	ID:       "fitting.clear-of-members",
	Title:    "every fitting is clear of the ribs and rails of its coffer",
	Why:      "A hole through a rib or a rail takes the member, and at a seam its tenons and straps, out of the ceiling.",
	Severity: engine.Hold,
	Needs:    []string{"fitting"},
	Basis: engine.Basis{
		Formula: "|at| + size/2 ≤ (module − member)/2",
		Symbols: []engine.Symbol{
			{Name: "at", Means: "centre of the fitting from that of its coffer", Unit: "m"},
			{Name: "size", Means: "its diameter, or its width around and its length along", Unit: "m"},
			{Name: "module", Means: "coffer between centre lines", Unit: "m"},
			{Name: "member", Means: "width of the rib or rail", Unit: "m"},
		},
		Valid:  "clear sizes at the intrados; what the fitting is behind the skin is not in the spec",
		Source: geometry,
	},
	Check: checkClear,
}

// mostNamed is how many things in a fitting's way a finding names.
const mostNamed = 6

func checkClear(p *engine.Pass) {
	for _, f := range places(p.Ceiling) {
		if f.beyond() {
			continue
		}
		if tooBig(p, f) {
			continue
		}
		for _, s := range f.sides() {
			if s.clear >= 0 {
				continue
			}
			with := ""
			if list := f.inTheWay(s); len(list) > 0 {
				with = ", with " + strings.Join(list[:min(len(list), mostNamed)], ", ")
				if more := len(list) - mostNamed; more > 0 {
					with += fmt.Sprintf(" and %d more", more)
				}
			}
			p.Report(engine.Finding{
				At: f.key("at"), Related: []string{f.key("size"), f.key("coffer")},
				Text:     p.Textf("the %s in %s reaches {measured} over the %s %s%s", f.Name.Get(), f.where(), s.member, s.way, with),
				Measured: quantity.Length(-s.clear).Value(),
			})
		}
	}
}

// tooBig says where a fitting is larger than its coffer, wherever it is in it.
func tooBig(p *engine.Pass, f place) bool {
	around, along := f.clear()
	at := f.shape()
	for _, d := range []struct {
		size, clear       float64
		key, word, member string
	}{
		{2 * at.halfA, around, "width", "across around the arc", "rail.width"},
		{2 * at.halfL, along, "length", "long along the axis", "rib.width"},
	} {
		if d.size <= d.clear {
			continue
		}
		key, word := d.key, d.word
		if at.round {
			key, word = "diameter", "across"
		}
		p.Report(engine.Finding{
			At: f.key("size", key), Related: []string{d.member, f.key("coffer")},
			Text:     p.Textf("the %s is {measured} %s; %s is %v clear", f.Name.Get(), word, f.where(), quantity.Length(d.clear)),
			Measured: quantity.Length(d.size).Value(),
			Offers:   []engine.Offer{{Key: f.key("size", key), Value: p.Below(d.clear)}},
		})
		return true
	}
	return false
}

var edge = engine.Rule{
	ID:       "fitting.edge",
	Title:    "every fitting keeps its distance from the sides of its coffer",
	Why:      "A trim that touches a rib looks like a mistake, and nobody can get a hand beside it.",
	Severity: engine.Query,
	Needs:    []string{"fitting"},
	Limits: []engine.Limit{{
		Key: "clear", Title: "between a fitting and a rib or rail", Value: quantity.Length(0.025).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Source: cite.CommonPractice()},
	Check: func(p *engine.Pass) { checkNear(p, p.Limit("clear"), "", "") },
}

// checkNear reports the fittings of a kind, or all, that are clear of the
// members and nearer to one than a limit.
func checkNear(p *engine.Pass, limit engine.Bound, kind, why string) {
	for _, f := range places(p.Ceiling) {
		if kind != "" && f.Kind.Get() != kind || f.beyond() {
			continue
		}
		near := f.nearest()
		if near.clear < 0 || near.clear >= limit.SI {
			continue
		}
		p.Report(engine.Finding{
			At: f.key("at"), Related: []string{f.key("size"), f.key("coffer")},
			Text:     p.Textf("the %s in %s is {measured} from the %s %s; the least is {limit}%s", f.Name.Get(), f.where(), near.member, near.way, why),
			Measured: quantity.Length(near.clear).Value(), Bound: limit,
		})
	}
}

var overlap = engine.Rule{
	ID:       "fitting.overlap",
	Title:    "no two fittings of a coffer overlap",
	Why:      "Two trades each find the middle of the coffer free.",
	Severity: engine.Hold,
	Needs:    []string{"fitting"},
	Basis:    engine.Basis{Source: geometry},
	Check: func(p *engine.Pass) {
		all := places(p.Ceiling)
		for i, f := range all {
			checkOverlap(p, f, all[:i])
		}
	},
}

// checkOverlap reports the fitting that a fitting overlaps most, of some others.
func checkOverlap(p *engine.Pass, f place, others []place) {
	most, by, count := place{}, 0.0, 0
	for _, other := range others {
		if !slices.Equal(f.Coffer.Get(), other.Coffer.Get()) {
			continue
		}
		if over := -gap(f.shape(), other.shape()); over > 0 {
			count++
			if over > by {
				most, by = other, over
			}
		}
	}
	if count == 0 {
		return
	}
	more := ""
	if count > 1 {
		more = fmt.Sprintf(", and %d more", count-1)
	}
	p.Report(engine.Finding{
		At: f.key("at"), Related: []string{most.key()},
		Text:     p.Textf("the %s overlaps the %s in %s by {measured}%s", f.Name.Get(), most.Name.Get(), f.where(), more),
		Measured: quantity.Length(by).Value(),
	})
}
