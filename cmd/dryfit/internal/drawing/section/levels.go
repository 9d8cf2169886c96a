package section

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
)

// height is one over the finished floor, in m, and how high it is drawn over the
// springing.
type height struct {
	name      string
	at, drawn float64
}

// What a mark of a level takes, in mm.
const (
	levelOff   = 13  // from the room to the mark: the dimensions lie between
	levelText  = 5   // from there to its text
	levelApart = 9.6 // from one to the next
	levelOver  = 1.1 // from the line to a text
)

// levelsOf are those of the section from the top, those of one height together.
func (d *sectionOf) levelsOf() []height {
	c := d.c
	springing, rise := c.Room.Height.Get(), c.Vault.Rise.Get()
	var out []height
	if !math.IsNaN(d.framing) {
		out = append(out, height{"underside of framing", springing + d.framing, d.framing})
	}
	if rise > 0 {
		out = append(out, height{"soffit at the crown", springing + rise, rise}, height{"springing", springing, 0})
	} else {
		out = append(out, height{"soffit", springing, 0})
	}
	return append(out, height{"finished floor", 0, -d.floor})
}

// levelSaid is a level over the floor, as it is printed.
func (d *sectionOf) levelSaid(l height) string {
	if l.at == 0 {
		return "0"
	}
	return "+" + d.Dim(l.at)
}

// levelsWide is what they take at the right of the room, in mm.
func (d *sectionOf) levelsWide() float64 {
	wide := 0.0
	for _, l := range d.levelsOf() {
		wide = max(wide, paper.TextWidth(l.name, draft.Ordinary), paper.TextWidth(d.levelSaid(l), draft.Ordinary))
	}
	return levelOff + levelText + wide + 2
}

// levels draws them at the right of the room, each with its mark; where two lie too
// near to each other their texts move apart.
func (d *sectionOf) levels() {
	of := d.levelsOf()
	right := d.v.At(d.c.Vault.Span.Get()+max(d.wall, d.over()), 0).X
	var at []float64
	for _, l := range of {
		at = append(at, d.v.At(0, l.drawn).Y)
	}
	apart(at)
	for i, l := range of {
		d.levelMark(right, d.v.At(0, l.drawn).Y, at[i], l)
	}
}

// apart moves what lies too near to what is above it down, and then what would move
// the lowest, up.
func apart(at []float64) {
	last := len(at) - 1
	low := at[last]
	for i := 1; i <= last; i++ {
		at[i] = max(at[i], at[i-1]+levelApart)
	}
	at[last] = low
	for i := last - 1; i >= 0; i-- {
		at[i] = min(at[i], at[i+1]-levelApart)
	}
}

// levelMark is the line of a level, its mark, an arrow's head that stands on it, its
// height over it and its name under it.
func (d *sectionOf) levelMark(right, from, y float64, l height) {
	x := right + levelOff
	name, said := l.name, d.levelSaid(l)
	end := x + levelText + max(paper.TextWidth(name, draft.Ordinary), paper.TextWidth(said, draft.Ordinary))
	d.b.Poly(paper.Poly{Points: []paper.Point{{X: right + 1.5, Y: from}, {X: x - 2, Y: from}, {X: x, Y: y}, {X: end, Y: y}}, Stroke: pen.Hair})
	d.b.Poly(paper.Poly{Points: []paper.Point{{X: x + 0.7, Y: y - 1.8}, {X: x + 2.5, Y: y}, {X: x + 4.3, Y: y - 1.8}}, Closed: true, Stroke: pen.Fine})
	d.b.Write(paper.Text{At: paper.Point{X: x + levelText, Y: y - levelOver}, Height: draft.Ordinary, Text: said})
	d.b.Write(paper.Text{At: paper.Point{X: x + levelText, Y: y + levelOver + draft.Ordinary}, Height: draft.Ordinary, Text: name})
}
