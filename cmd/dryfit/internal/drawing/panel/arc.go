package panel

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
)

// trueArc is a piece of the arch in its own shape, its chord upright on paper:
// of each point how far it is along the chord and off it.
type trueArc struct {
	outline     []curve.Point // its feet as they are cut
	front, back curve.Point   // a place of the intrados and one of the extrados
	chord, rise float64
	top         float64 // how far along the chord the rise is
	reach       float64 // of the extrados, off the chord
	flush       float64 // how far the extrados begins before the chord
}

// trueSteps is in how many places the rise is looked for: of a half circle of 10m they miss
// it by less than 0.1mm, which no scale shows.
const trueSteps = 400

// arcOf lays the arch between two places along it.
func arcOf(c *layout.Ceiling, s0, s1 float64) (a trueArc) {
	from, to := c.Vault.Intrados.Get().At(s0), c.Vault.Intrados.Get().At(s1)
	a.chord = math.Hypot(to.Y-from.Y, to.Z-from.Z)
	u := curve.Point{Y: (to.Y - from.Y) / a.chord, Z: (to.Z - from.Z) / a.chord}
	laid := func(p curve.Point) curve.Point {
		y, z := p.Y-from.Y, p.Z-from.Z
		return curve.Point{Y: y*u.Y + z*u.Z, Z: z*u.Y - y*u.Z}
	}
	for i := range trueSteps + 1 {
		s := s0 + (s1-s0)*float64(i)/trueSteps
		if in := laid(c.Vault.Intrados.Get().At(s)); in.Z > a.rise {
			a.rise, a.top = in.Z, in.Y
		}
	}
	a.front, a.back = laid(c.Vault.Intrados.Get().At(s0+(s1-s0)/4)), laid(c.Vault.Behind(s0+(s1-s0)*3/4, c.Vault.Thickness.Get()))
	for _, p := range c.Vault.Band(s0, s1, 0, c.Vault.Thickness.Get()) {
		p = laid(p)
		a.outline = append(a.outline, p)
		a.reach, a.flush = max(a.reach, p.Z), max(a.flush, -p.Y)
	}
	return a
}

// curved reports whether there is an arc to be shown.
func (a trueArc) curved() bool { return a.rise > 1e-3 }

// The room around the true arc on paper, in mm.
const (
	besideArc = 52 // from the panel: running dimensions and their words
	chordRoom = 12 // of the chord's dimension
)

// besidePanel draws the arc right of the panel, to its scale, the chord upright.
func (d *panelOf) besidePanel() {
	corner := paper.Point{X: d.at(d.long, 0).X + besideArc + chordRoom, Y: d.at(0, d.arc/2).Y - d.v.Size(d.shape.chord/2)}
	d.drawArc(draft.Left, draft.Below, func(p curve.Point) paper.Point {
		return paper.Point{X: corner.X + d.v.Size(p.Z), Y: corner.Y + d.v.Size(p.Y)}
	})
}

// drawArc draws the arc as it is laid on paper, with its chord and its rise dimensioned
// at two sides.
func (d *panelOf) drawArc(chord, rise draft.Side, at func(curve.Point) paper.Point) {
	a := d.shape
	var outline []paper.Point
	for _, p := range a.outline {
		outline = append(outline, at(p))
	}
	d.b.In("true-arc", func() {
		d.b.Poly(paper.Poly{Points: outline, Closed: true, Tone: paper.Paper + 2, Stroke: pen.Edge})
		d.b.Line(at(curve.Point{}), at(curve.Point{Y: a.chord}), pen.Centre)
	})
	d.b.Dim(draft.Dim{From: at(curve.Point{}), To: at(curve.Point{Y: a.chord}), Side: chord, Text: "chord " + d.Dim(a.chord)})
	d.b.Dim(draft.Dim{From: at(curve.Point{Y: a.chord}), To: at(curve.Point{Y: a.top, Z: a.rise}), Side: rise, Text: "rise " + d.Dim(a.rise)})
	d.b.Label(draft.Label{Text: d.radii(), Of: at(a.front), Prefer: []draft.Side{draft.Right, draft.Above}})
	d.b.Label(draft.Label{Text: "true arc", Of: at(a.back), Prefer: []draft.Side{draft.Right, draft.Above}})
}

// arcSubject is the drawing of the true arc alone, lying.
func (d *panelOf) arcSubject() *sheet.Subject {
	a, title := d.shape, "Panel, true arc"
	if d.c.Panel.Around.Get() > 1 {
		title = fmt.Sprintf("Panel, true arc of piece %d", d.piece+1)
	}
	return &sheet.Subject{
		Name: "panel", Title: title, About: "The panel in its true shape: its chord, its rise, its radius and the radius of the form.",
		Wide: a.chord + 2*a.flush, High: a.reach, Left: 30, Right: 40, Above: 14, Below: 15,
		Draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			d.b, d.v = b, v
			d.drawArc(draft.Below, draft.Right, func(p curve.Point) paper.Point { return v.At(p.Y+a.flush, p.Z) })
			return nil
		},
	}
}

// radii are those of the intrados and of the form that a laminated rib is bent on; of
// a curve that is not one arc the tightest.
func (d *panelOf) radii() string {
	v, out := d.c.Vault, "R "
	if !v.Shape().OneArc {
		out = "tightest R "
	}
	out += d.Dim(v.TightestRadius.Get())
	if n := d.c.Laminations(); n > 1 && v.Shape().OneArc {
		out += "\nform R " + d.Dim(timber.FormRadius(v.Radius.Get(), n))
	}
	return out
}
