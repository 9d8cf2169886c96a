package options

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
)

var studyPage = show.LeafOf("study.html.tmpl", "study.css", "study.js", svg.Style)

// page is what the template puts in its places.
type page struct {
	show.Furniture
	Title, Path, Checked, Outcome, Unbeaten, Abridged, Caution string
	Varied, Says, Same                                         []string
	Heads                                                      []pageHead
	Options                                                    []pageOption
	Reasons                                                    []string
	Starred, Losers, Judged                                    bool
	Said                                                       string // of all pictures
	RowKey, ColumnKey                                          string
	Columns                                                    []string
	Rows                                                       []pageRow
	Looks                                                      []pageLook // in a list
	Pairs                                                      bool       // there are two to put side by side
	Undrawn                                                    int
}

// pageRow is a row of the matrix.
type pageRow struct {
	Value string
	Looks []pageLook
}

// pageLook is an option as it looks; without a picture it says why.
type pageLook struct {
	Place
	Picture show.DrawingView
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

// Drawn is how options look: their places, with a picture of each, empty at a blank
// place, and what all pictures have in common.
type Drawn struct {
	Places
	Pictures []show.DrawingView
	Said     string
}

// StudyHTML writes a study as one page that asks for nothing else: no
// font, no picture from anywhere.
func StudyHTML(w io.Writer, s Study, drawn Drawn) error {
	p := s.Base.Ceiling.Project
	same, differ := s.shared()
	out := page{
		Furniture: studyPage().Furniture,
		Title:     show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), Path: show.Shown(s.Base.Path),
		Checked: "checked on " + s.On + " to the " + show.Shown(s.Base.Standards.Name),
		Outcome: s.outcome(), Unbeaten: show.Sentence(show.Shown(s.unbeaten())),
		Abridged: s.abridged(), Caution: show.Caution,
	}
	out.look(drawn)
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

// look puts the pictures into their rows, or in a list.
func (p *page) look(d Drawn) {
	p.Said, p.Undrawn, p.RowKey, p.ColumnKey, p.Columns = show.Sentence(d.Said), d.Left, d.Rows.Key, d.Columns.Key, d.Columns.Values
	pictures := 0
	for i, place := range d.List {
		look := pageLook{place, d.Pictures[i]}
		if look.Picture.Box != "" {
			pictures++
		}
		p.Pairs = pictures > 1
		if !d.Matrix() {
			p.Looks = append(p.Looks, look)
			continue
		}
		if i%len(d.Columns.Values) == 0 {
			p.Rows = append(p.Rows, pageRow{Value: d.Rows.Values[i/len(d.Columns.Values)]})
		}
		row := &p.Rows[len(p.Rows)-1]
		row.Looks = append(row.Looks, look)
	}
}
