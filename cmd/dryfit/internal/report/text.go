package report

import (
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/review"
)

// ReportText writes what is said of a spec and its findings.
type ReportText struct{ *show.Texter }

// NewReportText writes to w, in colour where asked.
func NewReportText(w io.Writer, colour bool) ReportText { return ReportText{show.NewTexter(w, colour)} }

// Text writes the report for people, 80 columns wide, in colour where asked. Its
// lines of verdict may be longer: a program that looks for one finds it whole.
func Text(colour bool) Format {
	return func(w io.Writer, r Report) Writer {
		return &textWriter{summaryWriter{byRuns: byRuns{r}, t: NewReportText(w, colour)}}
	}
}

// textWriter writes each file in full, and of several a summary at the end.
type textWriter struct{ summaryWriter }

func (w *textWriter) Add(s *review.Assessment) error {
	w.referred.add(s)
	w.t.assessment(s, w.report)
	return w.t.Flush()
}

func (w *textWriter) Close() error {
	if w.report.files() > 1 || len(w.report.Runs) > 1 {
		w.t.Rule("═")
		if w.t.referrals(w.referred) {
			w.t.Line("")
		}
		w.t.totals(w.report, func(*review.Assessment) string { return "" })
	}
	return w.t.Flush()
}

func (t ReportText) assessment(s *review.Assessment, r Report) {
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
func (t ReportText) Heading(s *review.Assessment, r Report) {
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
