package draft

import (
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// Row is one line of notes that are set in columns over a whole sheet.
type Row struct {
	Text    string
	Heading bool
}

// apart is between two columns, and widest how wide one may be, in mm.
const (
	apart  = 8
	widest = 100
)

// columns are how many there are on a sheet, how wide each is and how many rows
// it has.
func (s Size) columns() (count int, width float64, rows int) {
	w, h := s.Area()
	n := math.Ceil((w + apart) / (widest + apart))
	return int(n), (w+apart)/n - apart, int(h / (leading * small))
}

// Rows breaks notes into the lines of a column, an empty one between two notes.
func (s Size) Rows(notes []paper.Note) (rows []Row) {
	_, width, _ := s.columns()
	for i, n := range notes {
		if i > 0 {
			rows = append(rows, Row{})
		}
		rows = append(rows, Row{strings.ToUpper(n.Title), true})
		for _, text := range n.Lines {
			for _, line := range paper.Wrap(show.Shown(text), width, small) {
				rows = append(rows, Row{Text: line})
			}
		}
	}
	return rows
}

// Rows fills the sheet's columns, and returns what is left. A heading is not the
// last of a column, and an empty row not the first.
func (b *Board) Rows(rows []Row) (rest []Row) {
	count, width, most := b.frame.Paper.columns()
	for k := range count {
		at := paper.Point{X: b.area.x0 + float64(k)*(width+apart), Y: b.area.y0 + small}
		for n := 0; n < most && len(rows) > 0; n++ {
			row := rows[0]
			if row.Heading && n == most-1 {
				break
			}
			if rows = rows[1:]; row.Text == "" && n == 0 {
				n--
				continue
			}
			b.Write(paper.Text{At: at, Height: small, Text: row.Text})
			at.Y += leading * small
		}
	}
	return rows
}
