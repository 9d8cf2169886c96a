package studying

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report/options"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/layout"
)

// tooMany is why a ceiling is not drawn small.
const tooMany = "not drawn: it has too many coffers for a small picture"

// drawable makes the ceilings of the places again, which were not kept; nil at a blank
// place. One that has too many coffers leaves its place blank in a matrix, and is left
// out of a list.
func drawable(s options.Study) (options.Places, []*layout.Ceiling) {
	places := s.Places()
	var list []options.Place
	var ceilings []*layout.Ceiling
	for _, p := range places.List {
		var c *layout.Ceiling
		if p.Row != nil {
			c = s.Option(p.Index).Assessment.Ceiling
		}
		if c != nil && !picture.Pictured(c) {
			if !places.Matrix() {
				places.Left++
				continue
			}
			c, p.Lines = nil, append(p.Lines, tooMany)
		}
		list, ceilings = append(list, p), append(ceilings, c)
	}
	places.List = list
	return places, ceilings
}

// writeContact writes the contact sheet as a file of its own.
func writeContact(w io.Writer, s options.Study) error {
	places, ceilings := drawable(s)
	var shown []picture.Shown
	for i, p := range places.List {
		shown = append(shown, picture.Shown{Ceiling: ceilings[i], Title: p.Title, Lines: p.Lines})
	}
	sheet := picture.Contact(show.Shown(s.Base.Ceiling.Project.Title.Get()), shown, picture.Matrix{
		RowKey: places.Rows.Key, Rows: places.Rows.Values, ColumnKey: places.Columns.Key, Columns: places.Columns.Values,
	})
	if places.Left > 0 {
		sheet.About += fmt.Sprintf(" %d further options are not drawn.", places.Left)
	}
	return svg.Write(w, sheet)
}

// writePage writes the page, with the contact sheet under the table.
func writePage(w io.Writer, s options.Study) error {
	places, ceilings := drawable(s)
	var made []*layout.Ceiling
	for _, c := range ceilings {
		if c != nil {
			made = append(made, c)
		}
	}
	looks := picture.NewLooks(made)
	drawn := options.Drawn{Places: places, Said: looks.Said()}
	for i, c := range ceilings {
		if c == nil {
			drawn.Pictures = append(drawn.Pictures, show.DrawingView{})
			continue
		}
		about := fmt.Sprintf("Option %d: %s.", places.List[i].Index, looks.About(c))
		drawn.Pictures = append(drawn.Pictures, show.Drawn(looks.Sheet("look", "", about, c)))
	}
	return options.StudyHTML(w, s, drawn)
}
