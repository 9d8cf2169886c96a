package options

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
)

// studyText writes a study.
type studyText struct{ *show.Texter }

// StudyText writes a study for people: a row an option, as wide as it takes,
// then what each loses, 80 columns wide.
func StudyText(w io.Writer, s Study) error {
	t := studyText{show.NewTexter(w, false)}
	p := s.Base.Ceiling.Project
	t.Line(show.Shown(s.Base.Path))
	t.wrapped("study: " + show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()))
	t.wrapped("checked on " + s.On + " to the " + show.Shown(s.Base.Standards.Name))
	for _, l := range append(append(report.Loosenings(s.Tally.Loosened), s.varied()...), s.Says...) {
		t.wrapped(show.Shown(l))
	}
	same, differ := s.shared()
	for _, l := range s.sameInAll(same) {
		t.wrapped(show.Shown(l))
	}
	if rows := s.made(); len(rows) > 0 {
		t.Line("")
		t.table(s, rows, differ)
	}
	t.wrapped(s.abridged())
	t.Line("")
	t.wrapped(show.Shown(s.unbeaten()) + ".")
	t.found(s)
	t.losses(s)
	t.reasons(s)
	t.Line("")
	t.wrapped(show.Caution)
	t.Rule("─")
	for _, l := range show.Wrap(s.outcome(), show.TextWidth) {
		t.Verdict(l)
	}
	return t.Flush()
}

// wrapped writes text in lines of the report's width, or nothing if it is
// empty.
func (t studyText) wrapped(text string) {
	if text == "" {
		return
	}
	for _, l := range show.Wrap(text, show.TextWidth) {
		t.Line(l)
	}
}

// found names the rules that hold or query each option that is listed.
func (t studyText) found(s Study) {
	headed := false
	for _, r := range s.made() {
		if r.Found() == "" {
			continue
		}
		if !headed {
			t.Line("")
			t.Line("holds and queries, by rule")
			headed = true
		}
		t.Paragraph("", show.Pad(fmt.Sprintf("option %d", r.Index), show.Label), r.Found())
	}
}

// losses says what each option loses that is listed and beaten.
func (t studyText) losses(s Study) {
	headed := false
	for _, r := range s.made() {
		lost := s.Loses(s.Front, r)
		if lost == "" {
			continue
		}
		if !headed {
			t.Line("")
			t.Line("what beats the other options")
			headed = true
		}
		t.Paragraph("", show.Pad(fmt.Sprintf("option %d", r.Index), show.Label), show.Shown(lost)+".")
	}
}

// shownReasons is how many reasons are listed.
const shownReasons = 8

func (t studyText) reasons(s Study) {
	if s.Tally.Invalid == 0 {
		return
	}
	t.Line("")
	t.Line("options that can't be made")
	for i, r := range s.Tally.Reasons {
		if i == shownReasons {
			t.Paragraph("", "", fmt.Sprintf("… and at %d more keys", len(s.Tally.Reasons)-i))
			break
		}
		t.Paragraph("", "", show.Sentence(show.Shown(whyNot(r))))
	}
}
