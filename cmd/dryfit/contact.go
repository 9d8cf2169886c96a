package main

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report/options"
	"dryfit/cmd/dryfit/internal/report/show"
)

// mostDrawn is how many options a contact sheet has room for.
const mostDrawn = 60

// contact draws the first of the options that are listed and can be made. Their
// ceilings were not kept, and are made again.
func contact(s options.Study) (sheet paper.Sheet, left int) {
	var shown []drawing.Shown
	for _, row := range s.Rows {
		if !row.Made() {
			continue
		}
		if len(shown) == mostDrawn {
			left++
			continue
		}
		ceiling := s.Option(row.Index).Sheet.Ceiling
		if !drawing.Pictured(ceiling) {
			left++
			continue
		}
		title, lines := s.Caption(row)
		shown = append(shown, drawing.Shown{Ceiling: ceiling, Title: title, Lines: lines})
	}
	return drawing.Contact(show.Shown(s.Base.Ceiling.Project.Title.Get()), shown), left
}

// writeContact writes the contact sheet as a file of its own.
func writeContact(w io.Writer, s options.Study) error {
	sheet, left := contact(s)
	if left > 0 {
		sheet.About += fmt.Sprintf(" %d further options are not drawn.", left)
	}
	return svg.Write(w, sheet)
}

// writePage writes the page, with the contact sheet under the table.
func writePage(w io.Writer, s options.Study) error {
	sheet, left := contact(s)
	return options.StudyHTML(w, s, sheet, left)
}
