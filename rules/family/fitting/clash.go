package fitting

import (
	"fmt"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var geometry = cite.Derivation("the fitting in the coffer's own coordinates")

var inGrid = engine.Rule{
	ID:       "fitting.in-grid",
	Title:    "every fitting is in a coffer of the grid",
	Why:      "A fitting in a coffer beyond the grid was not moved when the grid changed.",
	Severity: engine.Hold,
	Needs:    []string{"fitting"},
	Basis:    engine.Basis{Source: cite.Derivation("coffers counted from 1, around from the left springing and along from the near end")},
	Check: func(p *engine.Pass) {
		for _, f := range places(p.Ceiling) {
			if f.beyond() {
				p.Report(engine.Finding{
					At: f.key("coffer"), Related: []string{"grid.around", "grid.along"},
					Text: p.Textf("the %s is in %s; the grid has %d coffers around and %d along", f.Name.Get(), f.where(), p.Ceiling.Grid.Around.Get(), p.Ceiling.Grid.Along.Get()),
				})
			}
		}
	},
}

var clearOfMembers = engine.Rule{
	ID:       "fitting.clear-of-members",
	Title:    "every fitting is clear of the ribs and rails of its coffer",
	Why:      "A hole through a rib or a rail cuts the member and, at a seam, its tenons and straps.",
	Severity: engine.Hold,
	Needs:    []string{"fitting"},
	Basis: engine.Basis{
		Formula: "|at| + size/2 ≤ (module − member)/2",
		Symbols: []engine.Symbol{
			{Name: "at", Means: "offset of the fitting's centre from the coffer's centre", Unit: "m"},
			{Name: "size", Means: "diameter of the fitting, or its width around and its length along", Unit: "m"},
			{Name: "module", Means: "size of the coffer between the centre lines of its members", Unit: "m"},
			{Name: "member", Means: "width of the rib or rail", Unit: "m"},
		},
		Valid:  "clear sizes at the intrados; the spec does not state the fitting's size behind the skin",
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
