package report

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/spec"
)

// Entry is the first line of a finding: severity, rule, place, and what it is to
// the baseline, where there is one.
func (t ReportText) Entry(s engine.Severity, rule, place string, b engine.Baseline) {
	if b != 0 {
		place += ", " + b.String()
	}
	lead := t.Paint(s, show.Pad(s.String(), show.Margin)) + show.Pad(rule, show.WideLabel)
	for _, l := range show.Wrap(place, show.TextWidth-show.Margin-show.WideLabel) {
		t.Line(lead + l)
		lead = strings.Repeat(" ", show.Margin+show.WideLabel)
	}
}

func (t ReportText) problem(p spec.Problem, b engine.Baseline) {
	t.Entry(problemSeverity, p.Rule, positionText(p.Position), b)
	text := p.Message
	if p.Key != "" && !strings.HasPrefix(text, p.Key) {
		text = p.Key + ": " + text
	}
	t.Paragraph("", "", show.Sentence(show.Shown(text)))
	t.Line("")
}

func (t ReportText) finding(f engine.Finding) {
	t.Entry(f.Severity, f.Rule.ID, Place(f), f.Baseline)
	t.Paragraph("", "", show.Shown(f.At+": "+show.Sentence(f.Text)))
	if f.Passes != nil {
		t.Paragraph("", "passes with", show.Shown(f.Passes.Key+" = "+show.Written(f.Passes.Value)))
	}
	t.Paragraph("", "basis", show.Shown(basis(f)))
	if a := f.Accepted; a != nil {
		t.Paragraph("", "accepted", show.Shown(fmt.Sprintf("%s, by %s, until %s", a.Reason, a.By, a.Until)))
	}
	t.Line("")
}
