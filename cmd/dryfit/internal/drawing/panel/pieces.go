// Package panel draws a panel developed on its intrados, with its true arc.
package panel

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/spec/quantity"
)

// mostPieces are those of a split arch that are drawn each: of more, the first, the second
// and the last are.
const mostPieces = 6

// Room on paper at the sides of a developed panel, in mm, for its running dimensions.
const (
	tenonRoom   = 48
	stationRoom = 50
)

// Developed is a panel unrolled on its intrados, its tenons at the left, which is the near
// end, the left springing at the top; of a split arch each piece beside the one before.
func Developed(in sheet.Input) (*sheet.Subject, error) {
	list, err := panelPieces(in, true)
	if err != nil {
		return nil, err
	}
	return panelRow(in, list), nil
}

// panelRow is the drawing of pieces beside each other, or of one less where the paper has
// no room.
func panelRow(in sheet.Input, list []*panelOf) *sheet.Subject {
	s := panelSubject(in, list[0])
	if last := len(list) - 1; last > 0 {
		s.Less = panelRow(in, list[:last])
		s.Less.Notes = append(s.Less.Notes, paper.Note{Title: "No room on this paper", Lines: []string{fmt.Sprintf("Piece %d.", list[last].piece+1)}})
	}
	if n := in.Ceiling().Panel.Around.Get(); n > 1 {
		s.Title = fmt.Sprintf("Panel, %d pieces around, developed on the intrados", n)
	}
	s.Wide, s.Right = 0, -tenonRoom
	for _, d := range list {
		s.Wide, s.Right = s.Wide+d.wide(), s.Right+tenonRoom+d.right()
	}
	s.Draw = func(b *draft.Board, v draft.View) map[int]paper.Point {
		places := map[int]paper.Point{}
		for i, d := range list {
			if i > 0 {
				b.Figure()
			}
			d.places = places
			d.draw(b, v)
			v.Origin.X += v.Size(d.wide()) + d.right() + tenonRoom
		}
		return places
	}
	return s
}

// panelPieces are the pieces of a panel that are drawn, an inner one if there is one, each with its true arc
// beside it or not: one of the same chord and rise stands once.
func panelPieces(in sheet.Input, arc bool) (list []*panelOf, err error) {
	c := in.Ceiling()
	if err := sheet.CheckCount("panel", int(c.Panel.Modules.Get())*c.Grid.Around.Get()/c.Panel.Around.Get(), "coffers"); err != nil {
		return nil, err
	}
	if err := sheet.CheckCount("panel", c.Seam.TenonsInSeam.Get(), "tenons"); err != nil {
		return nil, err
	}
	n, wood := c.Panel.Around.Get(), wood(in)
	for k := range n {
		if n > mostPieces && k > 1 && k < n-1 {
			continue
		}
		d := &panelOf{Input: in, c: c, bays: max(1, int(math.Round(c.Panel.Modules.Get()))), long: c.Panel.Length.Get(), arc: c.Panel.Arc.Get(), piece: k, wood: wood}
		d.endRibs()
		d.from = float64(k) * d.arc
		d.shape = arcOf(c, d.from, d.from+d.arc)
		d.beside = arc && d.newArc(list)
		list = append(list, d)
	}
	return list, nil
}

// endRibs widens a panel that has no inner one beside it by what its ribs at the vault's
// ends are wider than halves.
func (d *panelOf) endRibs() {
	panels, more := d.c.Panel.Along.Get(), d.c.Rib.Width.Get()/2
	if d.c.Grid.HalfEnds.Get() || panels > 2 {
		return
	}
	if d.near = more; panels == 1 {
		d.far = more
	}
	d.long += d.near + d.far
}

// newArc reports whether the piece is curved in another way than those before it.
func (d *panelOf) newArc(before []*panelOf) bool {
	const alike = 5e-5 // m
	for _, o := range before {
		if math.Abs(o.shape.chord-d.shape.chord) < alike && math.Abs(o.shape.rise-d.shape.rise) < alike {
			return false
		}
	}
	return d.shape.curved()
}

// wide is how wide a piece with its true arc is drawn to scale, in m.
func (d *panelOf) wide() float64 {
	if d.beside {
		return d.long + d.shape.reach
	}
	return d.long
}

// right is what it takes on paper beside that, at its right, in mm.
func (d *panelOf) right() float64 {
	if d.beside {
		return besideArc + chordRoom + stationRoom
	}
	return stationRoom
}

// panelSubject is the drawing of one piece.
func panelSubject(in sheet.Input, d *panelOf) *sheet.Subject {
	c := in.Ceiling()
	s := &sheet.Subject{
		Name: "panel", Title: "Panel, developed on the intrados",
		About: fmt.Sprintf("A panel unrolled: %s along the axis, %s around the arc, %s; with its ribs, rails, sheets, tenons and straps.",
			in.Length(d.long), in.Length(d.arc), in.Format(quantity.Mass(c.Panel.Mass.Get()).Value())),
		Wide: d.wide(), High: d.arc,
		Left: tenonRoom, Right: d.right(), Above: 16, Below: 28, Best: 20,
		Shows: []string{"seam", "skin.sheet", "skin.straight", "skin.setback", "lift", "panels", "rail", "grid.reveal", "finish"},
		Draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			d.places = map[int]paper.Point{}
			d.draw(b, v)
			return d.places
		},
	}
	if n := c.Panel.Around.Get(); n > 1 {
		s.Title = fmt.Sprintf("Panel, piece %d of %d around, developed on the intrados", d.piece+1, n)
		s.Above += pieceRoom
	}
	if d.piece == 0 {
		s.Notes = []paper.Note{{Title: "Pieces of the heaviest panel", Lines: d.pieces()}, d.pieceNote()}
	}
	return s
}

// pieceRoom is what a piece's number takes over it, in mm.
const pieceRoom = 7

// Parts are the figures of the panel: each piece, and its true arc, which lies.
func Parts(in sheet.Input, _ draft.Size) (out []*sheet.Subject, err error) {
	list, err := panelPieces(in, false)
	if err != nil {
		return nil, err
	}
	for i, d := range list {
		out = append(out, panelSubject(in, d))
		if d.newArc(list[:i]) {
			out = append(out, d.arcSubject())
		}
	}
	return out, nil
}
