package hoist

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/result/raising"
)

// drawer draws one frame.
type drawer struct {
	*Arrangement
	b      *draft.Board
	f      *raising.Frame
	places map[string]paper.Point
}

// shown keeps the first place at which something of a table is drawn.
func (d drawer) shown(table string, at paper.Point) {
	if _, had := d.places[table]; !had {
		d.places[table] = at
	}
}

// name writes what a drawing is over it.
func (d drawer) name(at paper.Point, text string) {
	d.b.Write(paper.Text{At: paper.Point{X: at.X, Y: at.Y - 2}, Height: draft.Ordinary, Text: text})
}

// regions draws figures of the model.
func (d drawer) regions(v draft.View, list []curve.Region, tone paper.Tone, s paper.Stroke) {
	for _, r := range list {
		var points []paper.Point
		for _, p := range r {
			points = append(points, v.At(p.Y, p.Z))
		}
		d.b.Poly(paper.Poly{Points: points, Closed: true, Tone: tone, Stroke: s})
	}
}

// side is from a side wall to the springing.
func (d drawer) side() float64 { return (d.c.Room.Width.Get() - d.c.Vault.Span.Get()) / 2 }

// elevation draws the frame as it is seen along the axis, or across the room.
func (d drawer) elevation(v draft.View) {
	title, shift := "elevation, along the axis", d.side()
	if d.f.AcrossRoom {
		low, high := extent(d.f.Elevation, d.f.Ghost)
		title, shift = "elevation, across the room", (d.wide-low.Y-high.Y)/2
	}
	d.name(v.At(0, d.tall), title)
	of := draft.View{Scale: v.Scale, Origin: v.At(shift, 0)}
	d.b.Line(v.At(0, 0), v.At(d.wide, 0), pen.Cut)
	if !d.f.AcrossRoom {
		d.room(of)
	}
	d.regions(of, d.f.Hung, paper.Paper+1, pen.Hair)
	d.regions(of, d.f.Ghost, paper.Clear, pen.Hidden)
	d.regions(of, d.f.Elevation, paper.Paper+3, pen.Bold)
	for _, s := range d.f.Straps {
		d.b.Line(of.At(s.Across, s.From), of.At(s.Across, s.To), pen.Edge)
	}
	d.forks(of)
	at := curve.Point{Y: d.f.Centre.Across, Z: d.f.Centre.Up}
	if d.f.AcrossRoom {
		at.Y = d.f.Centre.Along
	}
	d.mass(of.At(at.Y, at.Z))
}

// room draws the walls, the springing and the framing.
func (d drawer) room(v draft.View) {
	left, right := -d.side(), d.c.Vault.Span.Get()+d.side()
	for _, y := range []float64{left, right} {
		d.b.Line(v.At(y, 0), v.At(y, d.tall), pen.Edge)
	}
	height := d.c.Room.Height.Get()
	d.b.Line(v.At(left, height), v.At(right, height), pen.Centre)
	if above := d.c.Room.Above; above.Given() {
		framing := height + d.c.Vault.Crown.Get() + above.Get()
		d.b.Line(v.At(left, framing), v.At(right, framing), pen.Edge)
	}
}

// forkWide is half the width at which a fork is drawn, in mm: the spec has none.
const forkWide = 2

// forks draws each lift's mast and fork, and its number under the floor.
func (d drawer) forks(v draft.View) {
	last := math.Inf(-1)
	for i, f := range d.f.Forks {
		foot, fork := v.At(f.Across, 0), v.At(f.Across, f.Height)
		d.b.Line(foot, fork, pen.Edge)
		d.shown("lift", fork)
		d.b.Line(paper.Point{X: fork.X - forkWide, Y: fork.Y}, paper.Point{X: fork.X + forkWide, Y: fork.Y}, pen.Cut)
		if foot.X-last > 2*draft.Ordinary {
			d.b.Write(paper.Text{At: paper.Point{X: foot.X, Y: foot.Y + draft.Ordinary + 0.8}, Height: draft.Ordinary, Anchor: paper.Middle, Text: number(i)})
			last = foot.X
		}
	}
}

// massSize is the radius of the sign of the mass centre, in mm.
const massSize = 1.2

// mass draws the sign of the mass centre: a circle with a cross.
func (d drawer) mass(at paper.Point) {
	d.b.Arc(paper.Arc{C: at, R: massSize, To: 2 * math.Pi, Stroke: pen.Hair})
	const arm = 1.6 * massSize
	d.b.Line(paper.Point{X: at.X - arm, Y: at.Y}, paper.Point{X: at.X + arm, Y: at.Y}, pen.Hair)
	d.b.Line(paper.Point{X: at.X, Y: at.Y - arm}, paper.Point{X: at.X, Y: at.Y + arm}, pen.Hair)
}
