package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
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

// panel is a panel unrolled on its intrados, its tenons at the left, which is the near
// end, the left springing at the top; of a split arch each piece beside the one before.
func panel(in Input) (*subject, error) {
	list, err := in.panelPieces(true)
	if err != nil {
		return nil, err
	}
	return in.panelRow(list), nil
}

// panelRow is the drawing of pieces beside each other, or of one less where the paper has
// no room.
func (in Input) panelRow(list []*panelOf) *subject {
	s := in.panelSubject(list[0])
	if last := len(list) - 1; last > 0 {
		s.less = in.panelRow(list[:last])
		s.less.notes = append(s.less.notes, paper.Note{Title: "Without room on this paper", Lines: []string{fmt.Sprintf("Piece %d.", list[last].piece+1)}})
	}
	if n := in.ceiling().Panel.Around.Get(); n > 1 {
		s.title = fmt.Sprintf("Panel, %d pieces around, developed on the intrados", n)
	}
	s.wide, s.right = 0, -tenonRoom
	for _, d := range list {
		s.wide, s.right = s.wide+d.wide(), s.right+tenonRoom+d.right()
	}
	s.draw = func(b *draft.Board, v draft.View) map[int]paper.Point {
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
func (in Input) panelPieces(arc bool) (list []*panelOf, err error) {
	c := in.ceiling()
	if err := shows("panel", int(c.Panel.Modules.Get())*c.Grid.Around.Get()/c.Panel.Around.Get(), "coffers"); err != nil {
		return nil, err
	}
	if err := shows("panel", c.Seam.TenonsInSeam.Get(), "tenons"); err != nil {
		return nil, err
	}
	n, wood := c.Panel.Around.Get(), in.wood()
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
func (in Input) panelSubject(d *panelOf) *subject {
	c := in.ceiling()
	s := &subject{
		name: "panel", title: "Panel, developed on the intrados",
		about: fmt.Sprintf("A panel unrolled: %s along the axis, %s around the arc, %s; with its ribs, rails, sheets, tenons and straps.",
			in.length(d.long), in.length(d.arc), in.format(quantity.Mass(c.Panel.Mass.Get()).Value())),
		wide: d.wide(), high: d.arc,
		left: tenonRoom, right: d.right(), above: 16, below: 28, best: 20,
		shows: []string{"seam", "skin.sheet", "skin.straight", "skin.setback", "lift", "panels", "rail", "grid.reveal", "finish"},
		draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			d.places = map[int]paper.Point{}
			d.draw(b, v)
			return d.places
		},
	}
	if n := c.Panel.Around.Get(); n > 1 {
		s.title = fmt.Sprintf("Panel, piece %d of %d around, developed on the intrados", d.piece+1, n)
		s.above += pieceRoom
	}
	if d.piece == 0 {
		s.notes = []paper.Note{{Title: "Pieces of the heaviest panel", Lines: d.pieces()}, d.pieceNote()}
	}
	return s
}

// pieceRoom is what a piece's number takes over it, in mm.
const pieceRoom = 7

// panelParts are the figures of the panel: each piece, and its true arc, which lies.
func panelParts(in Input, _ draft.Size) (out []*subject, err error) {
	list, err := in.panelPieces(false)
	if err != nil {
		return nil, err
	}
	for i, d := range list {
		out = append(out, in.panelSubject(d))
		if d.newArc(list[:i]) {
			out = append(out, d.arcSubject())
		}
	}
	return out, nil
}
