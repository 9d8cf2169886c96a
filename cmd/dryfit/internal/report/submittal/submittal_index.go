package submittal

import (
	"io"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Index is the page that leads to several submittals.
type Index struct {
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
func EntryOf(s *review.Assessment, path string) SubmittalEntry {
	e := SubmittalEntry{Path: show.Shown(path), Verdict: s.Verdict, Counts: s.Counts}
	if s.Ceiling != nil {
		p := s.Ceiling.Project
		e.Title = show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get())
	}
	for _, f := range report.Entries(s) {
		if s.Ceiling == nil {
			e.Faults = append(e.Faults, show.Shown(f.Said()))
		}
	}
	return e
}

// Verdict is the worst of the specs.
func (x Index) Verdict() engine.Verdict {
	worst := engine.Passed
	for _, e := range x.Entries {
		worst = max(worst, e.Verdict)
	}
	return worst
}

// Class is how a verdict is coloured.
func (e SubmittalEntry) Class() string { return show.Classes[e.Verdict.String()] }

var indexPage = show.LeafOf("index.html.tmpl", "submittal.css", "")

// IndexHTML writes the index, in the order of the entries.
func IndexHTML(w io.Writer, x Index) error {
	verdict := x.Verdict()
	return indexPage().Execute(w, struct {
		show.Furniture
		Index
		Verdict engine.Verdict
		Class   string
		Files   string
		Caution string
	}{indexPage().Furniture, x, verdict, show.Classes[verdict.String()], show.Plural(len(x.Entries), "spec"), show.Caution})
}
