package report

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// notes are what is annotated of a file.
func (r Report) notes(s *review.Assessment) (notes []note) {
	notes = append(notes, r.uncomputedNotes(s)...)
	notes = append(notes, r.uncheckedNotes(s)...)
	for _, e := range Entries(s) {
		notes = append(notes, noteOf(r.fileOf(s, e)))
	}
	return notes
}

func noteOf(path string, e Entry) note {
	word, text := commands[e.severity], show.Shown(e.Said())
	if e.baseline == engine.AlreadyThere {
		word = "notice"
	}
	switch {
	case e.Accepted != "":
		word, text = "notice", text+" Accepted: "+show.Shown(e.Accepted)+"."
	case e.Passes != "":
		text += " Passes with " + show.Shown(e.Passes) + "."
	}
	place := fmt.Sprintf("line=%d,endLine=%d", e.Start.Line, max(e.Start.Line, e.end.Line))
	if e.end.Line == e.Start.Line && e.end.Column > e.Start.Column { // columns are for a range within a line
		place += fmt.Sprintf(",col=%d,endColumn=%d", e.Start.Column, e.end.Column)
	}
	return note{word, path, place, e.severity.String() + " " + e.Rule + e.since(), text}
}

// uncomputedNotes are of figures that could not be computed, which fail a file as a
// hold does.
func (r Report) uncomputedNotes(s *review.Assessment) []note {
	var out []note
	for _, l := range Lacking(s.NotChecked) {
		if l.failed {
			word := "error"
			if l.before {
				word = "notice"
			}
			out = append(out, note{word, r.InRepository(s.Path), "line=1,endLine=1", "not computed " + strings.Join(l.Rules, " "), show.Shown(l.Said())})
		}
	}
	return out
}

// uncheckedNotes name the families of what was not checked, before other notices.
func (r Report) uncheckedNotes(s *review.Assessment) []note {
	if s.Counts.NotChecked == 0 {
		return nil
	}
	text := fmt.Sprintf("not checked, or not in full: %s of %s", show.Plural(s.Counts.NotChecked, "rule"), s.Counts.Families.List())
	return []note{{"notice", r.InRepository(s.Path), "line=1,endLine=1", "not checked", text}}
}
