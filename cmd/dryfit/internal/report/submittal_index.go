package report

import (
	"io"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// SubmittalIndex is the page that leads to several submittals.
type SubmittalIndex struct {
	On, Version string
	Entries     []SubmittalEntry
}

// SubmittalEntry is one spec of an index.
type SubmittalEntry struct {
	Path, Title string
	Page        string // its file in the folder; "" of a spec that could not be checked
	Verdict     engine.Verdict
	Counts      engine.Counts
	Faults      []string
}

// EntryOf is a sheet's line in the index, under a path.
func EntryOf(s *review.Sheet, path string) SubmittalEntry {
	e := SubmittalEntry{Path: Shown(path), Verdict: s.Verdict, Counts: s.Counts}
	if s.Ceiling != nil {
		p := s.Ceiling.Project
		e.Title = title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get())
	}
	for _, f := range entries(s) {
		if s.Ceiling == nil {
			e.Faults = append(e.Faults, Shown(f.said()))
		}
	}
	return e
}

// Verdict is the worst of the specs.
func (x SubmittalIndex) Verdict() engine.Verdict {
	worst := engine.Passed
	for _, e := range x.Entries {
		worst = max(worst, e.Verdict)
	}
	return worst
}

// Class is how a verdict is coloured.
func (e SubmittalEntry) Class() string { return classes[e.Verdict.String()] }

var indexPage = leafOf("index.html.tmpl", "submittal.css", "")

// SubmittalIndexHTML writes the index, in the order of the entries.
func SubmittalIndexHTML(w io.Writer, x SubmittalIndex) error {
	verdict := x.Verdict()
	return indexPage().Execute(w, struct {
		furniture
		SubmittalIndex
		Verdict engine.Verdict
		Class   string
		Files   string
		Caution string
	}{indexPage().furniture, x, verdict, classes[verdict.String()], plural(len(x.Entries), "spec"), Caution})
}
