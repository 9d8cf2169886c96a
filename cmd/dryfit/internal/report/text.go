package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// reportText writes what is said of a spec and its findings.
type reportText struct{ *texter }

func newReportText(w io.Writer, colour bool) reportText { return reportText{newTexter(w, colour)} }

// Text writes the report for people, 80 columns wide, in colour where asked. Its
// lines of verdict may be longer: a program that looks for one finds it whole.
func Text(w io.Writer, r Report, colour bool) error {
	t := newReportText(w, colour)
	files := 0
	for _, run := range r.Runs {
		for _, s := range run.Sheets {
			t.sheet(s, r)
			files++
		}
	}
	if files > 1 || len(r.Runs) > 1 {
		t.summary(r)
	}
	return t.flush()
}

func (t reportText) sheet(s *review.Sheet, r Report) {
	t.heading(s, r)
	for _, p := range s.Problems {
		t.problem(p, faultsAre(s))
	}
	for _, f := range s.Findings {
		t.finding(f)
	}
	t.notChecked(s.NotChecked)
	t.assumed(s.Assumed)
	t.loosened(s.Loosened)
	t.awaited(s.Awaited)
	if len(s.Findings) > 0 {
		t.paragraph("caution", "", Caution)
	}
	t.rule("─")
	t.verdict(t.paint(s.Verdict, s.Verdict.String()) + ": " + s.Counts.String())
	t.line("")
}

func (t reportText) heading(s *review.Sheet, r Report) {
	t.line(Shown(s.Path))
	if p := s.Project; p != nil {
		for _, l := range wrap(title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), textWidth) {
			t.line(l)
		}
	}
	to := "the " + s.Standards.Name
	if len(s.Standards.Files) > 0 {
		to = s.Standards.Name + " (" + strings.Join(s.Standards.Files, ", ") + ")"
	}
	if r.Against != "" {
		to += ", against the findings at " + r.Against
	}
	for _, l := range wrap(Shown("checked on "+r.On+" to "+to), textWidth) {
		t.line(l)
	}
	t.rule("─")
}

// entry is the first line of a finding: severity, rule, place, and what it is to
// the baseline, where there is one.
func (t reportText) entry(s engine.Severity, rule string, at spec.Position, b engine.Baseline) {
	place := fmt.Sprintf("line %d, column %d", at.Line, at.Column)
	if b != 0 {
		place += ", " + b.String()
	}
	t.line(t.paint(s, pad(s.String(), margin)) + pad(rule, wideLabel) + place)
}

func (t reportText) problem(p spec.Problem, b engine.Baseline) {
	t.entry(problemSeverity, p.Rule, p.Position, b)
	text := p.Message
	if p.Key != "" && !strings.HasPrefix(text, p.Key) {
		text = p.Key + ": " + text
	}
	t.paragraph("", "", sentence(Shown(text)))
	t.line("")
}

func (t reportText) finding(f engine.Finding) {
	t.entry(f.Severity, f.Rule.ID, f.Start, f.Baseline)
	t.paragraph("", "", Shown(f.At+": "+sentence(f.Text)))
	if f.Passes != nil {
		t.paragraph("", "passes with", Shown(f.Passes.Key+" = "+Written(f.Passes.Value)))
	}
	t.paragraph("", "basis", Shown(basis(f)))
	if a := f.Accepted; a != nil {
		t.paragraph("", "accepted", Shown(fmt.Sprintf("%s, by %s, until %s", a.Reason, a.By, a.Until)))
	}
	t.line("")
}

// notChecked lists the missing keys, each with the rules that need it, then the
// rules that have another reason.
func (t reportText) notChecked(list []engine.NotChecked) {
	if len(list) == 0 {
		return
	}
	t.line("not checked")
	var keys []string
	neededBy := map[string][]string{}
	for _, n := range list {
		if n.Why != "" {
			continue
		}
		if neededBy[n.Key] == nil {
			keys = append(keys, n.Key)
		}
		neededBy[n.Key] = append(neededBy[n.Key], n.Rule.ID)
	}
	for _, key := range keys {
		t.paragraph("", pad(key, wideLabel), Safe("needed by "+strings.Join(neededBy[key], ", ")))
	}
	for _, l := range lacking(list) {
		switch {
		case l.why == "":
		case len(l.rules) == 1:
			t.paragraph("", pad(l.rules[0], wideLabel), Shown(l.said()))
		default:
			t.paragraph("", "", Shown(l.said())+": "+strings.Join(l.rules, ", "))
		}
	}
	t.line("")
}

func (t reportText) assumed(list []standards.Assumed) {
	if len(list) == 0 {
		return
	}
	t.line("assumed")
	for _, a := range list {
		t.paragraph("", pad(a.Key, wideLabel), Shown(Written(a.Value)+", "+AssumedFrom(a)))
	}
	t.line("")
}

// loosened lists the limits that the standards loosen and that were used: a
// change of the standards could let anything pass.
func (t reportText) loosened(list []engine.Loosened) {
	if len(list) == 0 {
		return
	}
	t.line("loosened by the standards")
	for _, l := range list {
		t.paragraph("", pad(l.Name, wideLabel), Shown(fmt.Sprintf("%s, built in is %s; %s:%d: %s",
			l.Used, l.BuiltIn, l.Origin.File, l.Origin.Line, l.Source)))
	}
	t.line("")
}

// awaited lists the absent keys that would let most rules be checked.
func (t reportText) awaited(list []review.Awaited) {
	if len(list) == 0 {
		return
	}
	t.line("give first")
	for _, a := range list {
		t.paragraph("", pad(a.Key, wideLabel), waiting(a))
	}
	t.line("")
}
