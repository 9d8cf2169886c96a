// Package draft is the drawing board: what is drawn on a sheet is kept, and
// dimensions, labels and marks are placed at the end where they meet nothing.
// The sheet has a border, a column of notes and a title block.
package draft

import (
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// Board is one sheet while it is drawn.
type Board struct {
	frame  Frame
	area   box
	items  []paper.Item
	room   *room
	figure *figure
	all    []*figure
	labels []Label
	marks  []mark
	placed map[int]paper.Point
	notes  *columnWriter
}

// figure is one of several drawings on a sheet, with its dimensions.
type figure struct {
	extent box
	dims   []Dim
}

// New is a board with the border, the notes and the title block.
func New(f Frame) *Board {
	b := &Board{frame: f, area: f.Paper.area(), room: newRoom(), placed: map[int]paper.Point{}}
	b.furnish()
	b.Figure()
	return b
}

// Blank is a board of a size of its own, without border, notes or title block.
func Blank(name, title, about string, size Size) *Board {
	b := &Board{
		frame: Frame{Name: name, Title: title, About: about, Paper: size}, room: newRoom(), placed: map[int]paper.Point{},
		area: box{0, 0, size.Width, size.Height},
	}
	b.Figure()
	return b
}

// Area is where a drawing may lie: its upper left and lower right corners.
func (b *Board) Area() (low, high paper.Point) {
	return paper.Point{X: b.area.x0, Y: b.area.y0}, paper.Point{X: b.area.x1, Y: b.area.y1}
}

// Figure begins another figure: dimensions lie around the figure that they are
// of.
func (b *Board) Figure() {
	b.figure = &figure{extent: nowhere}
	b.all = append(b.all, b.figure)
}

// Line draws a line.
func (b *Board) Line(from, to paper.Point, s paper.Stroke) {
	b.add(paper.Line{A: from, B: to, Stroke: s})
}

// Arc draws an arc.
func (b *Board) Arc(a paper.Arc) { b.add(a) }

// Poly draws a figure or a run of lines.
func (b *Board) Poly(p paper.Poly) { b.add(p) }

// Items draws what has been made elsewhere.
func (b *Board) Items(items []paper.Item) {
	for _, i := range items {
		b.add(i)
	}
}

// In draws a group with a name.
func (b *Board) In(id string, draw func()) {
	outer := b.items
	b.items = nil
	draw()
	b.items = append(outer, paper.Group{ID: id, Items: b.items})
}

// add keeps an item, and what of it is in the way of texts.
func (b *Board) add(item paper.Item) {
	b.items = append(b.items, item)
	for _, s := range strokes(item) {
		b.room.draw(s)
		b.figure.extent = b.figure.extent.with(s.a).with(s.b)
	}
	b.addTexts(item)
}

func (b *Board) addTexts(item paper.Item) {
	switch i := item.(type) {
	case paper.Text:
		x := boxOf(i)
		b.room.write(x.grown(clear))
		b.figure.extent = b.figure.extent.with(paper.Point{X: x.x0, Y: x.y0}).with(paper.Point{X: x.x1, Y: x.y1})
	case paper.Group:
		for _, inner := range i.Items {
			b.addTexts(inner)
		}
	}
}

// clear is how far a text keeps from other texts and lines, in mm.
const clear = 0.35

// Write puts a line of text at its place, whatever is there: for headings whose
// place is known to be free.
func (b *Board) Write(t paper.Text) {
	t.Text = show.Shown(t.Text)
	b.add(t)
}

// Finish places what has been left to be placed, and is the sheet.
func (b *Board) Finish() paper.Sheet {
	b.dimensions()
	b.place()
	var rest []paper.Note
	if b.notes != nil {
		rest = b.notes.rest
	}
	return paper.Sheet{
		Rest: rest,
		Name: b.frame.Name, Title: show.Shown(b.frame.Title), About: show.Shown(b.frame.About),
		Width: b.frame.Paper.Width, Height: b.frame.Paper.Height, Items: paper.Settled(b.items), Marks: b.placed,
	}
}

// View lays a model on the sheet, which is in m with y upward.
type View struct {
	Origin paper.Point // where the model's origin lies
	Scale  float64     // 20 is 1:20
}

// At is where a point of the model lies.
func (v View) At(x, y float64) paper.Point {
	return paper.Point{X: v.Origin.X + v.Size(x), Y: v.Origin.Y - v.Size(y)}
}

// Size is a length of the model on paper, in mm.
func (v View) Size(m float64) float64 { return m * 1000 / v.Scale }
