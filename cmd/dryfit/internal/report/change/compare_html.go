package change

import (
	"io"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

var comparePage = show.LeafOf("compare.html.tmpl", "study.css", "", svg.Style)

// comparePageData is what the template puts in its places.
type comparePageData struct {
	show.Furniture
	Title, Checked, Outcome, Undrawn, Caution string
	Sides                                     []string
	Sections                                  []comparePart
	Drawing                                   show.DrawingView
}

type comparePart struct {
	Title   string
	Entries []comparePageEntry
}

type comparePageEntry struct{ Mark, What, Text string }

// CompareHTML writes a comparison as one page that asks for nothing else, with the
// two ceilings over one another; undrawn says why they are not.
func CompareHTML(w io.Writer, c Comparison, drawing paper.Sheet, undrawn string) error {
	data := comparePageData{
		Furniture: comparePage().Furniture, Title: c.Title(), Checked: "checked on " + c.On,
		Outcome: show.Shown(c.ending()), Undrawn: undrawn, Caution: show.Caution, Drawing: show.Drawn(drawing),
	}
	for _, s := range []struct {
		name string
		of   *review.Assessment
	}{{"old", c.Old}, {"new", c.New}} {
		data.Sides = append(data.Sides, s.name+": "+show.Shown(s.of.Path)+", to "+standardsOf(s.of))
	}
	for _, s := range c.sections() {
		part := comparePart{Title: s.title}
		for _, e := range s.entries {
			what := e.what
			if s.severities {
				what = e.head()
			}
			part.Entries = append(part.Entries, comparePageEntry{e.mark, show.Shown(what), show.Shown(e.text)})
		}
		data.Sections = append(data.Sections, part)
	}
	return comparePage().Execute(w, data)
}

// Title is what a picture of a comparison is called.
func (c Comparison) Title() string {
	p := c.New.Ceiling.Project
	return show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get())
}

// Lines are the verdicts, the figures that a decision hangs on, and the findings that
// came, went and moved and are more than noted, a line each, for a picture.
func (c Comparison) Lines() []string {
	const most = 30
	out := []string{show.Shown("old: " + c.Old.Path), show.Shown("new: " + c.New.Path), show.Shown(c.ending())}
	var found []string
	for _, s := range c.sections() {
		lines := []string{"", s.title}
		for _, e := range s.entries {
			if s.severities && e.mark == engine.Note.String() {
				continue
			}
			lines = append(lines, e.line(s.severities))
		}
		switch {
		case len(lines) == 2:
		case s.severities:
			found = append(found, lines...)
		case s.decides:
			out = append(out, lines...)
		}
	}
	if out = append(out, found...); len(out) > most {
		out = append(out[:most], "… the full list is in the text output")
	}
	return out
}

// line is an entry in one line.
func (e compareEntry) line(severities bool) string {
	what := e.what
	if severities {
		what = e.head()
	}
	if what != "" {
		what += ": "
	}
	if e.mark != "" {
		what = e.mark + " " + what
	}
	return show.Shown(what + e.text)
}
