package draft

import (
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// add keeps an item, and what of it is in the way of texts.
func (b *Board) add(item paper.Item) {
	b.items = append(b.items, item)
	for _, s := range strokes(item) {
		b.room.draw(s)
		b.figure.extent = b.figure.extent.with(s.a).with(s.b)
	}
	for in := range paper.Ungrouped([]paper.Item{item}) {
		if t, ok := in.(paper.Text); ok {
			x := boxOf(t)
			b.room.write(x.grown(clear))
			b.figure.extent = b.figure.extent.with(paper.Point{X: x.x0, Y: x.y0}).with(paper.Point{X: x.x1, Y: x.y1})
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
	rest := b.rest
	if b.notes != nil {
		rest = b.notes.rest
	}
	return paper.Sheet{
		Rest: rest,
		Name: b.frame.Name, Title: show.Shown(b.frame.Title), About: show.Shown(b.frame.About),
		Width: b.frame.Paper.Width, Height: b.frame.Paper.Height, Items: paper.Settled(b.items), Marks: b.placed,
	}
}
