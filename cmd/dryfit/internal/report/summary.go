package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/rules/review"
)

// Summary writes the report for people in a line for each file, with what is
// referred once for all of them, and the totals.
func Summary(w io.Writer, r Report, colour bool) error {
	t := newReportText(w, colour)
	if t.referrals(r) {
		t.line("")
		t.paragraph("caution", "", Caution)
		t.line("")
	}
	t.totals(r, func(s *review.Sheet) string { return ": " + s.Counts.String() })
	return t.flush()
}

// summary ends a run of several files: the verdict on each, the counts, and what
// is referred, once for all of them.
func (t reportText) summary(r Report) {
	t.rule("═")
	if t.referrals(r) {
		t.line("")
	}
	t.totals(r, func(*review.Sheet) string { return "" })
}

// referrals lists what is referred, and reports whether anything is.
func (t reportText) referrals(r Report) bool {
	list := r.referred()
	if len(list) > 0 {
		t.line("referred")
	}
	for _, item := range list {
		t.paragraph("", pad(item.rule, wideLabel), plural(item.files, "file")+": "+item.title)
	}
	return len(list) > 0
}

// totals are a line for each file, with what there is to add to its name, and
// one for each set of standards.
func (t reportText) totals(r Report, more func(*review.Sheet) string) {
	for _, run := range r.Runs {
		if len(run.Standards) > 0 {
			t.line("standards: " + Shown(strings.Join(run.Standards, ", ")))
		}
		for _, s := range run.Sheets {
			t.verdict(t.paint(s.Verdict, pad(s.Verdict.String(), 18)) + Shown(s.Path) + more(s))
		}
		v := run.Verdict()
		t.verdict(fmt.Sprintf("%s: %s, %s", t.paint(v, v.String()), plural(len(run.Sheets), "file"), run.Counts()))
	}
}
