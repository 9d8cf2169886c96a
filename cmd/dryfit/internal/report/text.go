package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// ReportText writes what is said of a spec and its findings.
type ReportText struct{ *show.Texter }

// NewReportText writes to w, in colour where asked.
func NewReportText(w io.Writer, colour bool) ReportText { return ReportText{show.NewTexter(w, colour)} }

// Text writes the report for people, 80 columns wide, in colour where asked. Its
// lines of verdict may be longer: a program that looks for one finds it whole.
func Text(w io.Writer, r Report, colour bool) error {
	t := NewReportText(w, colour)
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
	return t.Flush()
}

func (t ReportText) sheet(s *review.Sheet, r Report) {
	t.Heading(s, r)
	for _, p := range s.Problems {
		t.problem(p, faultsAre(s))
	}
	for _, f := range s.Findings {
		t.finding(f)
	}
	t.notChecked(s.NotChecked)
	t.assumed(s.Assumed)
	t.Loosened(s.Loosened)
	t.awaited(s.Awaited)
	if len(s.Findings) > 0 {
		t.Paragraph("caution", "", show.Caution)
	}
	t.Rule("─")
	t.Verdict(t.Paint(s.Verdict, s.Verdict.String()) + ": " + s.Counts.String())
	t.Line("")
}

// Heading says which spec is checked, when and to which standards.
func (t ReportText) Heading(s *review.Sheet, r Report) {
	t.Line(show.Shown(s.Path))
	if p := s.Project; p != nil {
		for _, l := range show.Wrap(show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), show.TextWidth) {
			t.Line(l)
		}
	}
	to := "the " + s.Standards.Name
	if len(s.Standards.Files) > 0 {
		to = s.Standards.Name + " (" + strings.Join(s.Standards.Files, ", ") + ")"
	}
	if r.Against != "" {
		to += ", against the findings at " + r.Against
	}
	for _, l := range show.Wrap(show.Shown("checked on "+r.On+" to "+to), show.TextWidth) {
		t.Line(l)
	}
	t.Rule("─")
}

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

// notChecked lists the missing keys, each with the rules that need it, then the
// rules that have another reason.
func (t ReportText) notChecked(list []engine.NotChecked) {
	if len(list) == 0 {
		return
	}
	t.Line("not checked")
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
		t.Paragraph("", show.Pad(key, show.WideLabel), show.Safe("needed by "+strings.Join(neededBy[key], ", ")))
	}
	for _, l := range Lacking(list) {
		switch {
		case l.why == "":
		case len(l.Rules) == 1:
			t.Paragraph("", show.Pad(l.Rules[0], show.WideLabel), show.Shown(l.Said()))
		default:
			t.Paragraph("", "", show.Shown(l.Said())+": "+strings.Join(l.Rules, ", "))
		}
	}
	t.Line("")
}

func (t ReportText) assumed(list []standards.Assumed) {
	if len(list) == 0 {
		return
	}
	t.Line("assumed")
	for _, a := range list {
		t.Paragraph("", show.Pad(a.Key, show.WideLabel), show.Shown(show.Written(a.Value)+", "+AssumedFrom(a)))
	}
	t.Line("")
}

// Loosened lists the limits that the standards loosen and that were used: a
// change of the standards could let anything pass.
func (t ReportText) Loosened(list []engine.Loosened) {
	if len(list) == 0 {
		return
	}
	t.Line("loosened by the standards")
	for _, l := range list {
		t.Paragraph("", show.Pad(l.Name, show.WideLabel), show.Shown(fmt.Sprintf("%s, built in is %s; %s:%d: %s",
			l.Used, l.BuiltIn, l.Origin.File, l.Origin.Line, l.Source)))
	}
	t.Line("")
}

// awaited lists the absent keys that would let most rules be checked.
func (t ReportText) awaited(list []review.Awaited) {
	if len(list) == 0 {
		return
	}
	t.Line("give first")
	for _, a := range list {
		t.Paragraph("", show.Pad(a.Key, show.WideLabel), waiting(a))
	}
	t.Line("")
}
