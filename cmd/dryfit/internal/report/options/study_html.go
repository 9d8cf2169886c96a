package options

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
)

var studyPage = show.LeafOf("study.html.tmpl", "study.css", "", svg.Style)

// page is what the template puts in its places.
type page struct {
	show.Furniture
	Title, Path, Checked, Outcome, Unbeaten, Abridged, Caution string
	Varied, Says, Same                                         []string
	Heads                                                      []pageHead
	Options                                                    []pageOption
	Reasons                                                    []string
	Starred, Losers, Judged                                    bool
	Contact                                                    show.DrawingView
	Undrawn                                                    int
}

type pageHead struct {
	Table      string // of a key; the head may break behind it
	Text, Name string
	Figure     bool // to the right, as numbers stand
}

type pageOption struct {
	Index    int
	Values   []string
	Figures  []string
	Verdict  string
	Class    string
	Unbeaten bool
	Loses    string
	Found    string
}

// StudyHTML writes a study as one page that asks for nothing else: no
// font, no picture from anywhere. Some options are drawn on the contact
// sheet; undrawn is how many it had no room for.
func StudyHTML(w io.Writer, s Study, contact paper.Sheet, undrawn int) error {
	p := s.Base.Ceiling.Project
	same, differ := s.shared()
	out := page{
		Furniture: studyPage().Furniture,
		Title:     show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), Path: show.Shown(s.Base.Path),
		Checked: "checked on " + s.On + " to the " + show.Shown(s.Base.Standards.Name),
		Outcome: s.outcome(), Unbeaten: show.Sentence(show.Shown(s.unbeaten())),
		Abridged: s.abridged(), Caution: show.Caution, Undrawn: undrawn,
		Contact: show.Drawn(contact),
	}
	for _, l := range append(report.Loosenings(s.Tally.Loosened), s.varied()...) {
		out.Varied = append(out.Varied, show.Shown(l))
	}
	for _, l := range s.Says {
		out.Says = append(out.Says, show.Shown(l))
	}
	for _, l := range s.sameInAll(same) {
		out.Same = append(out.Same, show.Shown(l))
	}
	for _, d := range s.Vary {
		table, name, _ := strings.Cut(d.Key, ".")
		out.Heads = append(out.Heads, pageHead{Table: table, Text: name, Name: d.Key})
	}
	for _, i := range differ {
		out.Heads = append(out.Heads, pageHead{Text: s.Columns[i].Head, Name: s.Columns[i].Name, Figure: true})
	}
	for _, r := range s.made() {
		o := pageOption{
			Index: r.Index, Verdict: r.Verdict.String(), Class: show.Classes[r.Verdict.String()],
			Unbeaten: s.Front.Has(r.Index), Loses: show.Shown(s.Loses(s.Front, r)), Found: r.Found(),
		}
		for _, v := range s.Values(r.Index) {
			o.Values = append(o.Values, show.Shown(fmt.Sprint(v)))
		}
		for _, i := range differ {
			o.Figures = append(o.Figures, s.cell(i, r))
		}
		out.Starred, out.Losers = out.Starred || o.Unbeaten, out.Losers || o.Loses != ""
		out.Judged = out.Judged || o.Found != ""
		out.Options = append(out.Options, o)
	}
	for i, r := range s.Tally.Reasons {
		if i == shownReasons {
			out.Reasons = append(out.Reasons, fmt.Sprintf("… and at %d more keys", len(s.Tally.Reasons)-i))
			break
		}
		out.Reasons = append(out.Reasons, show.Sentence(show.Shown(whyNot(r))))
	}
	return studyPage().Execute(w, out)
}
