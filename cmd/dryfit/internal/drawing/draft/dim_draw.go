package draft

import (
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// at is a point at a distance along and across the dimension line.
func (d laid) at(along, across float64) paper.Point {
	if d.upright() {
		return paper.Point{X: across, Y: along}
	}
	return paper.Point{X: along, Y: across}
}

func (b *Board) dimLines(d laid) {
	hair := paper.Stroke{Pen: paper.Hair}
	b.Line(d.at(d.from, d.across), d.at(d.to, d.across), hair)
	for _, end := range []paper.Point{d.From, d.To} {
		along, start := end.X, end.Y
		if d.upright() {
			along, start = end.Y, end.X
		}
		away := 1.0
		if d.across < start {
			away = -1
		}
		b.Line(d.at(along, start+away*offTier), d.at(along, d.across+away*pastTier), hair)
		p := d.at(along, d.across)
		b.Line(paper.Point{X: p.X - tick, Y: p.Y + tick}, paper.Point{X: p.X + tick, Y: p.Y - tick}, paper.Stroke{Pen: paper.Medium})
	}
}

// overLine is how far over its line a dimension's text stands, in mm.
var overLine = paper.Descent(Ordinary) + 2*clear

// text is the dimension's at a distance along from its middle, and across.
func (d laid) text(along, across float64) paper.Text {
	t := paper.Text{At: d.at((d.from+d.to)/2+along, d.across+across), Height: Ordinary, Anchor: paper.Middle, Text: show.Shown(d.Text)}
	if d.upright() {
		t.Turn = 90
	}
	return t
}

// dimText writes the text along the line: in its middle if it can be, else
// shifted, else beyond an end, else as a label.
func (b *Board) dimText(d laid) {
	w := paper.TextWidth(show.Shown(d.Text), Ordinary)
	for _, side := range []float64{-overLine, Ordinary + 2*clear} { // over the line, then under it
		for shift := 0.0; shift <= (d.to-d.from+w)/2+3; shift++ {
			for _, sign := range []float64{1, -1} {
				t := d.text(sign*shift, side)
				x := boxOf(t)
				if x.within(b.area) && b.room.free(x.grown(clear)) {
					b.add(t)
					return
				}
			}
		}
	}
	b.Label(Label{Text: d.Text, Of: d.at((d.from+d.to)/2, d.across), Prefer: []Side{d.Side}, onDim: true})
}
