// Package section draws the cross section of the room, and the section of a rib.
package section

import (
	"fmt"
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
)

// sectionOf keeps what the section is drawn from.
type sectionOf struct {
	sheet.Input
	c       *layout.Ceiling
	b       *draft.Board
	v       draft.View
	wall    float64 // between a wall and the springing
	framing float64 // height of its underside over the springing, NaN if it is not known
	deep    float64 // of the framing, as it is drawn
	floor   float64 // below the springing, as it is drawn
	broken  bool    // the room is higher than it is drawn
	places  map[int]paper.Point
}

// tallest is how much of the room is drawn under the springing, by the span.
const tallest = 0.75

// Cross is the cross section of the room.
func Cross(in sheet.Input) (*sheet.Subject, error) {
	c := in.Ceiling()
	d := &sectionOf{Input: in, c: c, wall: (c.Room.Width.Get() - c.Vault.Span.Get()) / 2, framing: math.NaN(), floor: c.Room.Height.Get()}
	if most := tallest * c.Vault.Span.Get(); d.floor > most {
		d.floor, d.broken = most, true
	}
	top := c.Vault.Crown.Get()
	if above := c.Room.Above; above.Given() {
		d.framing, d.deep = top+above.Get(), max(framingShown, d.lap())
		top = d.framing + d.deep
	}
	return &sheet.Subject{
		Name: "section", Title: "Cross section",
		About: fmt.Sprintf("The vault of %s span and %s rise in its room of %s width, with ribs, rails, skin and straps.",
			in.Length(c.Vault.Span.Get()), in.Length(c.Vault.Rise.Get()), in.Length(c.Room.Width.Get())),
		Wide: max(c.Vault.Width.Get(), c.Room.Width.Get()), High: top + d.floor,
		Left: 30, Right: d.levelsWide(), Above: 30, Below: 22, Best: 20,
		Shows: []string{"vault", "room.width", "room.height", "room.above", "springing", "rib", "rail", "skin", "strap", "ledger", "edge", "moisture", "panels.form"},
		Notes: []paper.Note{{Title: "How it is drawn", Lines: d.howDrawn()}, pen.Legend},
		Draw:  d.draw,
	}, nil
}

// framingShown is how deep the framing is drawn at least, in m: its depth is not in
// the spec. A lap that is longer makes it deeper.
const framingShown = 0.12

// howDrawn says how the section is read, and what of it is not in the spec.
func (d *sectionOf) howDrawn() []string {
	c := d.c
	out := []string{"The plane is S on the plan; the view is toward the far end. Levels are above the finished floor."}
	if d.broken {
		out = append(out, "The walls are broken: the room is higher than it is drawn.")
	}
	var usual []string
	for _, of := range []struct {
		drawn bool
		what  string
	}{
		{c.Room.Above.Given(), "the depth of the framing"},
		{c.Ledger.Projection.Given(), "the depth of the ledgers"},
		{c.Edge.Cover.Given(), "the thickness and the height of the moulding"},
		{c.Room.Framing.Runs.Get() == "along" && c.Room.Framing.Spacing.Given() && !c.Room.Framing.Member.Given(), "the width of the framing's members"},
		{d.screwed() && !c.Strap.Screws.Spacing.Given(), "the spacing of the screws"},
	} {
		if of.drawn {
			usual = append(usual, of.what)
		}
	}
	if len(usual) > 0 {
		out = append(out, "The spec does not state "+strings.Join(usual, ", ")+": drawn at a usual size.")
	}
	if c.Survey.Given() {
		out = append(out, "Gaps and levels are those of the room as drawn, not as measured.")
	}
	return out
}

func (d *sectionOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	// The view's origin is on the floor at the left; here it is the springing.
	d.v = draft.View{Origin: v.At(max(d.wall, d.over()), d.floor), Scale: v.Scale}
	b.In("levels", d.levels)
	b.Figure()
	b.In("vault", d.vault)
	d.ribMark()
	b.In("blocking", d.blocking)
	b.In("straps", d.straps) // their names have less room than the framing's
	b.In("screws", d.screws)
	b.In("framing", d.members)
	d.vaultDims()
	b.Figure()
	b.In("room", d.room)
	b.In("ledgers", d.ledgers)
	b.In("moulding", d.moulding)
	d.roomDims()
	d.saidOfAll()
	d.bite()
	return d.places
}

// vault draws the members and the skin, the nearer over the farther.
func (d *sectionOf) vault() {
	c, vault := d.c, d.c.Vault
	fill := func(r curve.Region, t paper.Tone, s paper.Stroke) {
		d.b.Poly(paper.Poly{Points: lay(d.v, r), Closed: true, Tone: t, Stroke: s})
	}
	fill(vault.Band(0, vault.Arc.Get(), 0, c.Rib.Depth.Get()), paper.Paper+1, pen.Edge)
	if c.Rib.Lamination.Get() > 0 && d.v.Size(c.Rib.Lamination.Get()) > 0.8 {
		for i := 1.0; i < c.Laminations(); i++ {
			at := i * c.Rib.Lamination.Get()
			d.b.Poly(paper.Poly{Points: parallel(d.v, c, at), Stroke: pen.Hair})
		}
	}
	d.skin(fill)
	for j := range c.Grid.Around.Get() + 1 {
		s := vault.Arc.Get() * float64(j) / float64(c.Grid.Around.Get())
		left, right := j > 0, j < c.Grid.Around.Get()
		rail := func(left, right bool, g pen.Grain) {
			r := vault.RailSection(s, c.Rail, left, right)
			fill(r, paper.Paper, pen.Edge)
			d.b.Items(pen.Hatch(lay(d.v, r), g))
		}
		if vault.Mitred(s) {
			rail(true, false, pen.EndOther)
			left = false
		}
		rail(left, right, pen.EndGrain)
	}
	if c.Vault.Shape().OneArc {
		mid := d.v.At(vault.Span.Get()/2, vault.Rise.Get()-vault.Radius.Get())
		d.b.Arc(paper.Arc{C: mid, R: d.v.Size(vault.Radius.Get()), From: -math.Pi/2 - vault.HalfAngle.Get(), To: -math.Pi/2 + vault.HalfAngle.Get(), Stroke: pen.Bold})
	} else {
		d.b.Poly(paper.Poly{Points: parallel(d.v, c, 0), Stroke: pen.Bold})
	}
	for k := 1; k < c.Panel.Around.Get(); k++ { // the seams along the axis
		s := float64(k) * c.Panel.Arc.Get()
		at, back := vault.Behind(s, 0), vault.Behind(s, vault.Thickness.Get())
		d.b.Line(d.v.At(at.Y, at.Z), d.v.At(back.Y, back.Z), pen.Cut)
	}
}

// skin draws it, solid where it is too thin to be hatched, else as plies.
func (d *sectionOf) skin(fill func(curve.Region, paper.Tone, paper.Stroke)) {
	s := d.c.Skin
	band := d.c.Vault.Band(0, d.c.Vault.Arc.Get(), s.Setback.Get(), s.Setback.Get()+s.Total())
	if d.v.Size(s.Total()) < pen.LeastHatched {
		fill(band, paper.Paper+6, pen.Fine)
		return
	}
	fill(band, paper.Paper, pen.Edge)
	const glueLines = 3
	for k := 1.0; k < glueLines; k++ {
		d.b.Poly(paper.Poly{Points: parallel(d.v, d.c, s.Setback.Get()+s.Total()*k/glueLines), Stroke: pen.Hair})
	}
}

// parallel is a line at a distance behind the intrados.
func parallel(v draft.View, c *layout.Ceiling, d float64) []paper.Point {
	p, err := c.Vault.Intrados.Get().Offset(d)
	if err != nil {
		return nil // outward never folds
	}
	var out []paper.Point
	for _, q := range p.Polyline(layout.BandSteps) {
		out = append(out, v.At(q.Y, q.Z))
	}
	return out
}

// bite puts the findings to where they are seen, the narrower keys first.
func (d *sectionOf) bite() {
	c := d.c
	on := func(share, depth float64) paper.Point {
		at := c.Vault.Behind(share*c.Vault.Arc.Get(), depth)
		return d.v.At(at.Y, at.Z)
	}
	d.At(d.places, on(0.5, 0), "vault.rise")
	d.At(d.places, on(0, 0), "springing", "vault.span")
	d.At(d.places, on(0.18, c.Skin.Setback.Get()+c.Skin.Total()), "skin")
	d.At(d.places, on(1/float64(c.Grid.Around.Get()), c.Rail.Depth.Get()/2), "rail")
	d.At(d.places, on(0.3, 0), "rib")
	d.At(d.places, on(0.5, c.Vault.Thickness.Get()), "vault", "room.above", "panels.form")
	if s := c.Strap; len(s.Stations.Get()) > 0 {
		last := float64(s.Stations.Get()[len(s.Stations.Get())-1])
		d.At(d.places, on(last, c.Vault.Thickness.Get()), "strap")
	}
	d.At(d.places, on(0.65, c.Vault.Thickness.Get()), "strap")
	d.At(d.places, d.v.At(-d.wall, -d.floor*0.4), "room.width", "room.height")
	d.At(d.places, d.v.At(c.Vault.Span.Get()+d.wall, 0), "edge", "ledger")
}

// lay turns a figure of the section, or its like, into corners on paper.
func lay(v draft.View, r curve.Region) []paper.Point {
	out := make([]paper.Point, 0, len(r))
	for _, p := range r {
		out = append(out, v.At(p.Y, p.Z))
	}
	return out
}
