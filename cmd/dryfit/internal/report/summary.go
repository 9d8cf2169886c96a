package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/review"
)

// Summary writes the report for people in a line for each file, with what is
// referred once for all of them, and the totals.
func Summary(colour bool) Format {
	return func(w io.Writer, r Report) Writer {
		return &summaryWriter{byRuns: byRuns{r}, t: NewReportText(w, colour)}
	}
}

type summaryWriter struct {
	byRuns
	t        ReportText
	referred referrals
}

func (w *summaryWriter) Add(s *review.Assessment) error {
	w.referred.add(s)
	return nil
}

func (w *summaryWriter) Close() error {
	if w.t.referrals(w.referred) {
		w.t.Line("")
		w.t.Paragraph("caution", "", show.Caution)
		w.t.Line("")
	}
	w.t.totals(w.report, func(s *review.Assessment) string { return ": " + s.Counts.String() })
	return w.t.Flush()
}

// referrals lists what is referred, and reports whether anything is.
func (t ReportText) referrals(r referrals) bool {
	if len(r.list) > 0 {
		t.Line("referred")
	}
	for _, item := range r.list {
		t.Paragraph("", show.Pad(item.rule, show.WideLabel), show.Plural(item.files, "file")+": "+item.title)
	}
	return len(r.list) > 0
}

// totals are a line for each file, with what there is to add to its name, and
// one for each set of standards.
func (t ReportText) totals(r Report, more func(*review.Assessment) string) {
	for _, run := range r.Runs {
		if len(run.Standards) > 0 {
			t.Line("standards: " + show.Shown(strings.Join(run.Standards, ", ")))
		}
		for _, s := range run.Assessments {
			t.Verdict(t.Paint(s.Verdict, show.Pad(s.Verdict.String(), 18)) + show.Shown(s.Path) + more(s))
		}
		v := run.Verdict()
		t.Verdict(fmt.Sprintf("%s: %s, %s", t.Paint(v, v.String()), show.Plural(len(run.Assessments), "file"), run.Counts()))
	}
}
