package picture

import (
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
)

// Shown is one ceiling of a contact sheet, with what is written under it; without a
// ceiling its place is left blank, and the lines say why.
type Shown struct {
	Ceiling *layout.Ceiling
	Title   string
	Lines   []string
}

// Matrix is how the options of two keys lie: the rows by the values of one, the
// columns by those of the other. Without columns they lie in a list.
type Matrix struct {
	RowKey, ColumnKey string
	Rows, Columns     []string
}

// The parts of a contact sheet, in mm.
const (
	cellWide   = 88
	cellGap    = 5
	border     = 10
	headHigh   = 19 // the sheet's title
	keyHigh    = 13 // the heads of columns
	keyWide    = 30 // the heads of rows
	mainSize   = 3.2
	titleSize  = 2.6
	lineSize   = 1.9
	lineHigh   = 3.4
	columnsMax = 4
)

// contact is a sheet while it is laid out.
type contact struct {
	*draft.Board
	looks     Looks
	left, top float64 // of the first cell
	columns   int
	cellHigh  float64
}

// Contact is a sheet to lay before a client: each ceiling as plan from below and as
// view from the entry, in a matrix or in a list.
func Contact(title string, list []Shown, m Matrix) paper.Sheet {
	var ceilings []*layout.Ceiling
	lines, list := 0, slices.Clone(list)
	for i, s := range list {
		list[i].Lines = wrapped(s)
		lines = max(lines, len(list[i].Lines))
		if s.Ceiling != nil {
			ceilings = append(ceilings, s.Ceiling)
		}
	}
	c := contact{looks: NewLooks(ceilings), left: border, top: headHigh, columns: max(1, min(columnsMax, len(list)))}
	if len(m.Columns) > 0 {
		c.left, c.top, c.columns = border+keyWide, headHigh+keyHigh, len(m.Columns)
	}
	c.cellHigh = c.looks.high() + 7 + lineHigh*float64(lines) + cellGap
	rows := (len(list) + c.columns - 1) / c.columns
	said := c.looks.Said()
	size := draft.Size{Name: "contact", Width: c.left + cellWide*float64(c.columns) + border - cellGap, Height: c.top + c.cellHigh*float64(rows) + cellGap}
	size.Width = max(size.Width, 2*border+max(paper.TextWidth(title, mainSize), paper.TextWidth(said, lineSize)))
	c.Board = draft.Blank("contact", title, about(m)+"; "+said+".", size)
	c.Write(paper.Text{At: paper.Point{X: border, Y: 9}, Height: mainSize, Text: title})
	c.Write(paper.Text{At: paper.Point{X: border, Y: 14}, Height: lineSize, Text: said})
	c.heads(m)
	for i, s := range list {
		c.cell(i, s)
	}
	return c.Finish()
}

func about(m Matrix) string {
	text := "Each option in plan from below and in a view from the entry"
	if len(m.Columns) > 0 {
		text += ", " + m.RowKey + " by rows and " + m.ColumnKey + " by columns"
	}
	return text
}

// mostLines is how many lines one of those under a ceiling is broken into at most.
const mostLines = 6

// wrapped are the lines under a ceiling, broken where they are too long.
func wrapped(s Shown) (out []string) {
	for _, l := range s.Lines {
		broken := paper.Wrap(l, picture, lineSize)
		if len(broken) > mostLines {
			broken = broken[:mostLines]
			broken[mostLines-1] = paper.Cut(broken[mostLines-1]+"…", picture, lineSize)
		}
		out = append(out, broken...)
	}
	return out
}

// heads writes the values of both keys at their rows and columns.
func (c contact) heads(m Matrix) {
	if len(m.Columns) == 0 {
		return
	}
	c.Write(paper.Text{At: paper.Point{X: c.left, Y: headHigh + 3}, Height: lineSize, Text: paper.Cut(m.ColumnKey, picture, lineSize)})
	for j, v := range m.Columns {
		c.Write(paper.Text{At: paper.Point{X: c.left + cellWide*float64(j), Y: headHigh + 8}, Height: titleSize, Text: paper.Cut(v, picture, titleSize)})
	}
	c.Write(paper.Text{At: paper.Point{X: border, Y: headHigh + 8}, Height: lineSize, Text: paper.Cut(m.RowKey, keyWide-3, lineSize)})
	for i, v := range m.Rows {
		for k, l := range paper.Wrap(v, keyWide-4, titleSize) {
			c.Write(paper.Text{At: paper.Point{X: border, Y: c.top + c.cellHigh*float64(i) + 5 + 4.4*float64(k)}, Height: titleSize, Text: l})
		}
	}
}

// cell draws a ceiling at its place, with its number and its lines.
func (c contact) cell(i int, s Shown) {
	at := paper.Point{X: c.left + cellWide*float64(i%c.columns), Y: c.top + c.cellHigh*float64(i/c.columns)}
	if s.Ceiling != nil {
		c.Items(c.looks.items(s.Ceiling, at))
	}
	y := at.Y + c.looks.high() + 5
	c.Write(paper.Text{At: paper.Point{X: at.X, Y: y}, Height: titleSize, Text: s.Title})
	for k, line := range s.Lines {
		c.Write(paper.Text{At: paper.Point{X: at.X, Y: y + 4.4 + lineHigh*float64(k)}, Height: lineSize, Text: line})
	}
}
