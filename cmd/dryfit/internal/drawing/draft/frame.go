package draft

import (
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// Frame is what is around the drawing.
type Frame struct {
	Name, Title, About string
	Paper              Size
	Project            []string    // the ceiling's title, then what identifies the sheet
	Facts              [][2]string // of one that is empty there is a line to write on
	Bar                Bar
	Notes              []paper.Note
	Caution            string
}

// Heights of capitals in the column, in mm: of the series of ISO 3098-1 (from memory).
const (
	small = Ordinary
	large = Large
)

// furnish draws the border, the title block and the notes.
func (b *Board) furnish() {
	p := b.frame.Paper
	left := p.Width - border - p.column()
	edge := box{bound, border, p.Width - border, p.Height - border}
	b.figure = &figure{extent: nowhere}
	b.rectangle(edge, paper.Heavy)
	b.Line(paper.Point{X: left, Y: edge.y0}, paper.Point{X: left, Y: edge.y1}, paper.Stroke{Pen: paper.Bold})
	c := &columnWriter{b: b, x: left + gutter, width: p.column() - 2*gutter}
	top := c.titleBlock(edge.y1)
	b.Line(paper.Point{X: left, Y: top}, paper.Point{X: edge.x1, Y: top}, paper.Stroke{Pen: paper.Bold})
	caution := c.height(b.frame.Caution, small)
	c.y = top - caution - gutter
	c.paragraph(b.frame.Caution, small)
	c.bottom = top - caution - 3*gutter
	c.y = edge.y0 + gutter + small
	for _, n := range b.frame.Notes {
		c.note(n)
	}
	b.frame.Notes = nil
	b.notes = c
}

func (b *Board) rectangle(x box, pen paper.Pen) {
	b.Poly(paper.Poly{Points: []paper.Point{{X: x.x0, Y: x.y0}, {X: x.x1, Y: x.y0}, {X: x.x1, Y: x.y1}, {X: x.x0, Y: x.y1}}, Closed: true, Stroke: paper.Stroke{Pen: pen}})
}

// unplaced puts the text of a label that had no room into the notes.
func (b *Board) unplaced(text string) {
	note := paper.Note{Title: "No room on the drawing, " + b.frame.Name, Lines: []string{text}}
	switch last := len(b.rest) - 1; {
	case b.notes != nil:
		b.notes.note(note)
	case last >= 0:
		b.rest[last].Lines = append(b.rest[last].Lines, text)
	default:
		b.rest = append(b.rest, note)
	}
}

// columnWriter writes text from the top of the column down.
type columnWriter struct {
	b           *Board
	x, width    float64
	y, bottom   float64
	lastHeading string
	rest        []paper.Note // what there is no room for
}

// wrapped breaks a text into lines of the column's width.
func (c *columnWriter) wrapped(text string, height float64) []string {
	return paper.Wrap(show.Shown(text), c.width, height)
}

func (c *columnWriter) height(text string, height float64) float64 {
	return leading * height * float64(len(c.wrapped(text, height)))
}

func (c *columnWriter) line(text string, height float64) {
	c.b.Write(paper.Text{At: paper.Point{X: c.x, Y: c.y}, Height: height, Text: text})
	c.y += leading * height
}

func (c *columnWriter) paragraph(text string, height float64) {
	for _, l := range c.wrapped(text, height) {
		c.line(l, height)
	}
}

// note writes a heading and its lines, as far as there is room, keeps what is
// left, and says once where that is.
func (c *columnWriter) note(n paper.Note) {
	if len(n.Lines) == 0 {
		return
	}
	room := func(lines int) bool { return c.y+leading*small*float64(lines) <= c.bottom }
	if len(c.rest) > 0 || !room(3) {
		c.keep(n)
		return
	}
	if n.Title != c.lastHeading {
		c.y += 0.6 * small
		c.line(strings.ToUpper(n.Title), small)
		c.lastHeading = n.Title
	}
	for i, l := range n.Lines {
		if !room(len(c.wrapped(l, small)) + 1) {
			c.keep(paper.Note{Title: n.Title, Lines: n.Lines[i:]})
			return
		}
		c.paragraph(l, small)
		c.y += 0.4 * small
	}
	c.y += 0.6 * small
}

// keep leaves a note to the sheet of notes.
func (c *columnWriter) keep(n paper.Note) {
	if len(c.rest) == 0 {
		c.line("more on the sheet of notes", small)
	}
	if last := len(c.rest) - 1; last >= 0 && c.rest[last].Title == n.Title {
		c.rest[last].Lines = append(slices.Clip(c.rest[last].Lines), n.Lines...)
		return
	}
	c.rest = append(c.rest, n)
}

// mostLines is how many lines of the title block one text may take.
const mostLines = 3

// lines breaks a text into lines, the last of which says where there were more.
func (c *columnWriter) lines(text string, height float64) []string {
	lines := c.wrapped(text, height)
	if len(lines) > mostLines {
		lines = append(lines[:mostLines-1], paper.Cut(lines[mostLines-1]+" …", c.width, height))
	}
	return lines
}

// The title block's measures, in mm.
const (
	factName = 26  // from a fact's name to what it says
	barHigh  = 1.4 // of the scale bar
	ofParts  = 4   // of it, light and dark in turn
)

// titleBlock writes the block at the foot of the column, and returns its top.
func (c *columnWriter) titleBlock(bottom float64) float64 {
	f := c.b.frame
	title := c.lines(f.Project[0], large)
	var rest []string
	for _, text := range append([]string{f.Title}, f.Project[1:]...) {
		rest = append(rest, c.lines(text, Ordinary)...)
	}
	facts := 0.0
	for _, f := range f.Facts {
		facts += c.factHeight(f[1])
	}
	top := bottom - 3*gutter - c.barRoom() - leading*large*float64(len(title)) - leading*Ordinary*float64(len(rest)+1) - facts
	c.y = top + gutter
	c.bar()
	c.y += large
	for _, l := range title {
		c.line(l, large)
	}
	for _, l := range rest {
		c.line(l, Ordinary)
	}
	c.b.In(SheetOf, func() { c.line("sheet 1 of 1", Ordinary) })
	c.y += gutter / 2
	for _, f := range f.Facts {
		c.fact(f[0], f[1])
	}
	return top
}

// SheetOf is the part of a sheet that says which of how many it is.
const SheetOf = "sheet-of"

// says breaks what a fact says into lines, of which there are two at most.
func (c *columnWriter) says(text string) []string {
	lines := paper.Wrap(show.Shown(text), c.width-factName, small)
	if len(lines) > 2 {
		lines = []string{lines[0], paper.Cut(strings.Join(lines[1:], " "), c.width-factName, small)}
	}
	return lines
}

// factHeight is more where somebody writes by hand.
func (c *columnWriter) factHeight(says string) float64 {
	if says == "" {
		return 2 * leading * small
	}
	return leading * small * float64(len(c.says(says)))
}

func (c *columnWriter) fact(name, says string) {
	if says == "" {
		c.y += leading * small
		c.b.Line(paper.Point{X: c.x + factName, Y: c.y}, paper.Point{X: c.x + c.width, Y: c.y}, paper.Stroke{Pen: paper.Hair})
	}
	c.b.Write(paper.Text{At: paper.Point{X: c.x, Y: c.y}, Height: small, Text: name})
	for _, line := range c.says(says) {
		c.b.Write(paper.Text{At: paper.Point{X: c.x + factName, Y: c.y}, Height: small, Text: line})
		c.y += leading * small
	}
	if says == "" {
		c.y += leading * small
	}
}

// Bar is a scale bar: how long it is on paper, in mm, and what that stands for. There
// is none of a sheet to no scale.
type Bar struct {
	Length float64
	Stands string
}

// BarRoom is how long a scale bar on a paper may be, in mm, what it stands for beside it.
func (s Size) BarRoom() float64 { return s.column() - 2*gutter - 22 }

func (c *columnWriter) barRoom() float64 {
	if c.b.frame.Bar.Length == 0 {
		return 0
	}
	return 2*barHigh + gutter/2 + leading*Ordinary
}

// bar draws the scale bar over the title block.
func (c *columnWriter) bar() {
	c.b.scaleBar(paper.Point{X: c.x, Y: c.y})
	c.y += c.barRoom()
}

// scaleBar draws it, in parts that are light and dark in turn.
func (b *Board) scaleBar(at paper.Point) {
	bar := b.frame.Bar
	if bar.Length == 0 {
		return
	}
	b.In("scale-bar", func() {
		part := bar.Length / ofParts
		for i := range ofParts {
			x := at.X + part*float64(i)
			tone := paper.Paper
			if i%2 == 0 {
				tone = paper.Ink
			}
			b.Poly(paper.Poly{
				Points: []paper.Point{{X: x, Y: at.Y}, {X: x + part, Y: at.Y}, {X: x + part, Y: at.Y + barHigh}, {X: x, Y: at.Y + barHigh}},
				Closed: true, Tone: tone, Stroke: paper.Stroke{Pen: paper.Fine},
			})
		}
		b.Write(paper.Text{At: paper.Point{X: at.X + bar.Length + gutter/2, Y: at.Y + (barHigh+Ordinary)/2}, Height: Ordinary, Text: bar.Stands})
	})
}
