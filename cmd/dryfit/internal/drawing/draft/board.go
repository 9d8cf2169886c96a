// Package draft is the drawing board: what is drawn on a sheet is kept, and
// dimensions, labels and marks are placed at the end where they meet nothing.
// The sheet has a border, a column of notes and a title block.
package draft

import (
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Board is one sheet while it is drawn.
type Board struct {
	frame   Frame
	area    box
	items   []paper.Item
	room    *room
	figure  *figure
	all     []*figure
	labels  []Label
	marks   []mark
	insides []inside
	placed  map[int]paper.Point
	notes   *columnWriter
	rest    []paper.Note // what a board without a column has no room for
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

// Plain is a blank board with a scale bar in a strip at its foot, whose height is in mm.
func Plain(name, title, about string, size Size, bar Bar, strip float64) *Board {
	b := Blank(name, title, about, size)
	b.frame.Bar = bar
	b.area.y1 -= strip
	b.scaleBar(paper.Point{X: gutter, Y: size.Height - barHigh - Ordinary})
	b.Figure() // dimensions lie around what is drawn, not around the bar
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
