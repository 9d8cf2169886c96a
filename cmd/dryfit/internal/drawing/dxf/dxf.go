// Package dxf writes a drawing in the drawing interchange format of release 12
// (AC1009), in ASCII, which most programs of a shop read.
package dxf

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Layers are those of every file, with their colours by number.
var Layers = []struct {
	Name   string
	Colour int
}{
	{"CUT", 7},
	{"RAIL", 3},
	{"RIB", 3},
	{"STRAP", 5},
	{"BORE", 1},
	{"MORTISE", 6},
	{"REVEAL", 4},
	{"JOINT", 1},
	{"FORM", 7},
	{"CLAMP", 5},
	{"FITTING", 6},
	{"DIM", 8},
	{"TEXT", 2},
	{"CHECK", 1},
}

// Drawing is what a file has. Groups are layers. The format has no unit: Unit is
// what one of the file's stands for, in mm.
type Drawing struct {
	Items  []paper.Item
	Origin paper.Point // of the file, on the sheet
	Unit   float64
}

type writer struct {
	*bufio.Writer
	Drawing
	layer string
}

// Write writes the drawing.
func Write(to io.Writer, d Drawing) error {
	w := &writer{bufio.NewWriter(to), d, "0"}
	w.head()
	w.items(d.Items)
	w.pairs(0, "ENDSEC", 0, "EOF")
	return w.Flush()
}

// pairs writes codes and values in turn, each on a line.
func (w *writer) pairs(all ...any) {
	for i := 0; i+1 < len(all); i += 2 {
		fmt.Fprintf(w, "%3d\r\n%v\r\n", all[i], all[i+1])
	}
}

func (w *writer) head() {
	low, high := paper.Box(w.Items)
	x0, y0 := w.place(paper.Point{X: low.X, Y: high.Y})
	x1, y1 := w.place(paper.Point{X: high.X, Y: low.Y})
	w.pairs(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009",
		9, "$EXTMIN", 10, x0, 20, y0, 30, "0.0", 9, "$EXTMAX", 10, x1, 20, y1, 30, "0.0", 0, "ENDSEC",
		0, "SECTION", 2, "TABLES",
		0, "TABLE", 2, "LTYPE", 70, 1, 0, "LTYPE", 2, "CONTINUOUS", 70, 0, 3, "Solid line", 72, 65, 73, 0, 40, "0.0", 0, "ENDTAB",
		0, "TABLE", 2, "LAYER", 70, len(Layers))
	for _, l := range Layers {
		w.pairs(0, "LAYER", 2, l.Name, 70, 0, 62, l.Colour, 6, "CONTINUOUS")
	}
	w.pairs(0, "ENDTAB",
		0, "TABLE", 2, "STYLE", 70, 1, 0, "STYLE", 2, "STANDARD", 70, 0, 40, "0.0", 41, "1.0", 50, "0.0", 71, 0, 42, "1.0", 3, "txt", 4, "", 0, "ENDTAB",
		0, "ENDSEC", 0, "SECTION", 2, "BLOCKS", 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES")
}

func (w *writer) items(items []paper.Item) {
	for _, item := range items {
		switch i := item.(type) {
		case paper.Line:
			w.line(i.A, i.B)
		case paper.Arc:
			w.arc(i)
		case paper.Poly:
			w.poly(i)
		case paper.Hatching: // the release has no entity for it
			for _, l := range i.Lines {
				w.line(l[0], l[1])
			}
		case paper.Path:
			w.path(i)
		case paper.Text:
			w.text(i)
		case paper.Group:
			within := *w
			within.layer = i.ID
			within.items(i.Items)
		}
	}
}

func (w *writer) line(a, b paper.Point) {
	w.pairs(0, "LINE", 8, w.layer)
	w.point(10, a)
	w.point(11, b)
}

// arc is a circle where it is whole. The format's angles run anticlockwise.
func (w *writer) arc(a paper.Arc) {
	if a.To-a.From >= 2*math.Pi*(1-1e-9) {
		w.pairs(0, "CIRCLE", 8, w.layer)
		w.point(10, a.C)
		w.pairs(40, number(a.R/w.Unit))
		return
	}
	w.pairs(0, "ARC", 8, w.layer)
	w.point(10, a.C)
	w.pairs(40, number(a.R/w.Unit), 50, degrees(-a.To), 51, degrees(-a.From))
}

func (w *writer) poly(p paper.Poly) {
	if len(p.Points) == 0 {
		return
	}
	path := paper.Path{From: p.Points[0], Closed: p.Closed}
	for _, q := range p.Points[1:] {
		path.Steps = append(path.Steps, paper.Step{To: q})
	}
	if p.Closed {
		path.Steps = append(path.Steps, paper.Step{To: p.Points[0]})
	}
	w.path(path)
}

// path is a line, an arc or a polyline.
func (w *writer) path(p paper.Path) {
	pieces := p.Pieces()
	switch {
	case len(pieces) == 0:
	case len(pieces) == 1 && pieces[0].Straight():
		w.line(pieces[0].From, pieces[0].To)
	case len(pieces) == 1:
		c, r := pieces[0].Circle()
		from := math.Atan2(pieces[0].From.Y-c.Y, pieces[0].From.X-c.X)
		to := from - pieces[0].Turn()
		w.arc(paper.Arc{C: c, R: r, From: min(from, to), To: max(from, to)})
	default:
		w.polyline(p, pieces)
	}
}

func (w *writer) polyline(p paper.Path, pieces []paper.Piece) {
	closed := 0
	if p.Closed {
		closed = 1
	}
	w.pairs(0, "POLYLINE", 8, w.layer, 66, 1, 10, "0.0", 20, "0.0", 30, "0.0", 70, closed)
	for _, s := range pieces {
		w.pairs(0, "VERTEX", 8, w.layer)
		w.point(10, s.From)
		if !s.Straight() {
			w.pairs(42, strconv.FormatFloat(s.Bulge, 'f', 9, 64))
		}
	}
	if !p.Closed {
		w.pairs(0, "VERTEX", 8, w.layer)
		w.point(10, pieces[len(pieces)-1].To)
	}
	w.pairs(0, "SEQEND", 8, w.layer)
}

// text has its base line's beginning, middle or end at its place.
func (w *writer) text(t paper.Text) {
	text := Plain(t.Text)
	if text == "" {
		return
	}
	w.pairs(0, "TEXT", 8, w.layer)
	w.point(10, t.At)
	w.pairs(40, number(t.Height/w.Unit), 1, text)
	if t.Turn != 0 {
		w.pairs(50, number(t.Turn))
	}
	if t.Anchor != paper.Start {
		w.pairs(72, map[paper.Anchor]int{paper.Middle: 1, paper.End: 2}[t.Anchor])
		w.point(11, t.At)
	}
}

// point writes a place in three pairs, the first of this code.
func (w *writer) point(code int, p paper.Point) {
	x, y := w.place(p)
	w.pairs(code, x, code+10, y, code+20, "0.0")
}

// place is a point of the sheet in the file's units, upward from its origin.
func (w *writer) place(p paper.Point) (x, y string) {
	return number((p.X - w.Origin.X) / w.Unit), number((w.Origin.Y - p.Y) / w.Unit)
}

// number has six places, of inches too less than a thousandth of a hair.
func number(x float64) string {
	text := strconv.FormatFloat(x, 'f', 6, 64)
	if strings.Trim(text, "-0.") == "" {
		return "0.0"
	}
	return text
}

func degrees(rad float64) string {
	d := math.Mod(rad*180/math.Pi, 360)
	if d < 0 {
		d += 360
	}
	return strconv.FormatFloat(d, 'f', 9, 64)
}
