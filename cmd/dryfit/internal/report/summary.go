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
func Summary(w io.Writer, r Report, colour bool) error {
	t := NewReportText(w, colour)
	if t.referrals(r) {
		t.Line("")
		t.Paragraph("caution", "", show.Caution)
		t.Line("")
	}
	t.totals(r, func(s *review.Assessment) string { return ": " + s.Counts.String() })
	return t.Flush()
}

// summary ends a run of several files: the verdict on each, the counts, and what
// is referred, once for all of them.
func (t ReportText) summary(r Report) {
	t.Rule("═")
	if t.referrals(r) {
		t.Line("")
	}
	t.totals(r, func(*review.Assessment) string { return "" })
}

// referrals lists what is referred, and reports whether anything is.
func (t ReportText) referrals(r Report) bool {
	list := r.referred()
	if len(list) > 0 {
		t.Line("referred")
	}
	for _, item := range list {
		t.Paragraph("", show.Pad(item.rule, show.WideLabel), show.Plural(item.files, "file")+": "+item.title)
	}
	return len(list) > 0
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
