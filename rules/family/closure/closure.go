// Package closure holds the rules on closing the row of panels: the first gap,
// the last one, the sides, and what is left for the moulding to cover.
package closure

import (
	"embed"

	"dryfit/rules/engine"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "close", Title: "closing the row of panels", Cases: cases,
		Rules: []engine.Rule{slide, probability, twoWay, firstGap, cover, side, line},
	}
}

// drawn is a finding on the room as drawn. Where the room was measured a rule on
// that answers the same question, and this is a note.
func drawn(p *engine.Pass, f engine.Finding, answers string) engine.Finding {
	if c := p.Ceiling; c.Survey.Given() && c.Close.FirstGap.Given() {
		f.Severity, f.Related = engine.Note, append(f.Related, "survey")
		f.Text += "; this figure is for the room as drawn; " + answers + " checks the room as measured"
	}
	return f
}
