package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var (
	cut    = paper.Stroke{Pen: paper.Heavy}
	bold   = paper.Stroke{Pen: paper.Bold}
	edge   = paper.Stroke{Pen: paper.Medium}
	fine   = paper.Stroke{Pen: paper.Fine}
	hair   = paper.Stroke{Pen: paper.Hair}
	centre = paper.Stroke{Pen: paper.Hair, Dash: paper.Centre}
	beyond = paper.Stroke{Pen: paper.Fine, Dash: paper.Beyond}
	hidden = paper.Stroke{Pen: paper.Fine, Dash: paper.Hidden}
	above  = paper.Stroke{Pen: paper.Hair, Dash: paper.Beyond}
)

// sectionOf keeps what the section is drawn from.
type sectionOf struct {
	Input
	c       *layout.Ceiling
	b       *draft.Board
	v       draft.View
	wall    float64 // between a wall and the springing
	framing float64 // height of its underside over the springing, NaN if it is not known
	floor   float64 // below the springing, as it is drawn
	broken  bool    // the room is higher than it is drawn
	places  map[int]paper.Point
}

// tallest is how much of the room is drawn under the springing, by the span.
const tallest = 0.75

// section is the cross section of the room.
func section(in Input) (*subject, error) {
	c := in.ceiling()
	d := &sectionOf{Input: in, c: c, wall: (c.Room.Width.Get() - c.Vault.Span.Get()) / 2, framing: math.NaN(), floor: c.Room.Height.Get()}
	if most := tallest * c.Vault.Span.Get(); d.floor > most {
		d.floor, d.broken = most, true
	}
	top := c.Vault.Crown.Get()
	if above := c.Room.Above; above.Given() {
		d.framing = top + above.Get()
		top = d.framing + framingShown
	}
	return &subject{
		name: "section", title: "Cross section",
		about: fmt.Sprintf("The vault of %s span and %s rise in its room of %s width, with ribs, rails, skin and straps.",
			in.length(c.Vault.Span.Get()), in.length(c.Vault.Rise.Get()), in.length(c.Room.Width.Get())),
		wide: max(c.Vault.Width.Get(), c.Room.Width.Get()), high: top + d.floor,
		left: 30, right: 38, above: 24, below: 22, best: 20,
		shows: []string{"vault", "room.width", "room.height", "room.above", "springing", "rib", "rail", "skin", "strap", "ledger", "edge", "moisture", "panels.form"},
		notes: []paper.Note{{Title: "How it is drawn", Lines: []string{"The plane is S on the plan; it looks to the far end."}}, cutNote},
		draw:  d.draw,
	}, nil
}

// framingShown is how much of the framing is drawn, in m: its depth is not in
// the spec.
const framingShown = 0.12

func (d *sectionOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	c := d.c
	d.b, d.places = b, map[int]paper.Point{}
	// The view's origin is on the floor at the left; here it is the springing.
	d.v = draft.View{Origin: v.At(max(d.wall, (c.Vault.Width.Get()-c.Vault.Span.Get())/2), d.floor), Scale: v.Scale}
	b.In("vault", d.vault)
	b.In("straps", d.straps)
	d.vaultDims()
	b.Figure()
	b.In("room", d.room)
	d.roomDims()
	d.bite()
	return d.places
}

// vault draws the members and the skin, the nearer over the farther.
func (d *sectionOf) vault() {
	c, vault := d.c, d.c.Vault
	fill := func(r layout.Region, t paper.Tone, s paper.Stroke) {
		d.b.Poly(paper.Poly{Points: lay(d.v, r), Closed: true, Tone: t, Stroke: s})
	}
	fill(vault.Band(0, vault.Arc.Get(), 0, c.Rib.Depth.Get()), paper.Paper+1, edge)
	if c.Rib.Lamination.Get() > 0 && d.v.Size(c.Rib.Lamination.Get()) > 0.8 {
		for i := 1.0; i < c.Laminations(); i++ {
			at := i * c.Rib.Lamination.Get()
			d.b.Poly(paper.Poly{Points: parallel(d.v, c, at), Stroke: hair})
		}
	}
	d.skin(fill)
	for j := range c.Grid.Around.Get() + 1 {
		s := vault.Arc.Get() * float64(j) / float64(c.Grid.Around.Get())
		left, right := j > 0, j < c.Grid.Around.Get()
		rail := func(left, right bool, g grain) {
			r := vault.RailSection(s, c.Rail, left, right)
			fill(r, paper.Paper, edge)
			d.b.Items(hatch(lay(d.v, r), g))
		}
		if vault.Mitred(s) {
			rail(true, false, endOther)
			left = false
		}
		rail(left, right, endGrain)
	}
	if onArc(c) {
		mid := d.v.At(vault.Span.Get()/2, vault.Rise.Get()-vault.Radius.Get())
		d.b.Arc(paper.Arc{C: mid, R: d.v.Size(vault.Radius.Get()), From: -math.Pi/2 - vault.HalfAngle.Get(), To: -math.Pi/2 + vault.HalfAngle.Get(), Stroke: bold})
	} else {
		d.b.Poly(paper.Poly{Points: parallel(d.v, c, 0), Stroke: bold})
	}
	for k := 1; k < c.Panel.Around.Get(); k++ { // the seams along the axis
		s := float64(k) * c.Panel.Arc.Get()
		at, back := vault.Behind(s, 0), vault.Behind(s, vault.Thickness.Get())
		d.b.Line(d.v.At(at.Y, at.Z), d.v.At(back.Y, back.Z), cut)
	}
}

// skin draws it, solid where it is too thin to be hatched, else as plies.
func (d *sectionOf) skin(fill func(layout.Region, paper.Tone, paper.Stroke)) {
	s := d.c.Skin
	band := d.c.Vault.Band(0, d.c.Vault.Arc.Get(), s.Setback.Get(), s.Setback.Get()+s.Total())
	if d.v.Size(s.Total()) < thinCut {
		fill(band, paper.Paper+6, fine)
		return
	}
	fill(band, paper.Paper, edge)
	const glueLines = 3
	for k := 1.0; k < glueLines; k++ {
		d.b.Poly(paper.Poly{Points: parallel(d.v, d.c, s.Setback.Get()+s.Total()*k/glueLines), Stroke: hair})
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

// straps draws the framing's underside and each strap up to it.
func (d *sectionOf) straps() {
	c := d.c
	if math.IsNaN(d.framing) {
		return
	}
	d.b.Line(d.v.At(-d.wall, d.framing), d.v.At(c.Vault.Span.Get()+d.wall, d.framing), cut)
	d.members()
	strap := c.Strap
	if !strap.Given() {
		return
	}
	lap := 0.0
	if strap.Lap.Given() {
		lap = strap.Lap.Get()
	}
	drawn := ""
	if c.Survey.Given() {
		drawn = ", as drawn"
	}
	for i, share := range strap.Stations.Get() {
		s := float64(share) * c.Vault.Arc.Get()
		back := c.Vault.Behind(s, c.Vault.Thickness.Get())
		y, foot := back.Y, back.Z
		d.b.Line(d.v.At(y, foot-min(lap, c.Rib.Depth.Get())), d.v.At(y, min(d.framing+lap, d.framing+framingShown)), bold)
		d.b.Line(d.v.At(y-0.012, foot), d.v.At(y+0.012, foot), edge)
		d.b.Label(draft.Label{
			Text: fmt.Sprintf("strap %d at %s\n%s between fixings%s", i+1, d.format(quantity.Share(share).Value()), d.length(c.StrapLength(float64(share))), drawn),
			Of:   d.v.At(y, (foot+d.framing)/2), Prefer: []draft.Side{draft.Right, draft.Left},
		})
		d.atStation(d.places, d.v.At(y, foot), strap.Stations.Place(i))
	}
}

// members draws the framing where it is cut, or its run where it lies in the
// section.
func (d *sectionOf) members() {
	f := d.c.Room.Framing
	top := d.framing + framingShown
	switch {
	case !f.Spacing.Given():
	case f.Runs.Get() == "along":
		width, first := 0.038, 0.0
		if f.Member.Given() {
			width = f.Member.Get()
		}
		if f.Offset.Given() {
			first = f.Offset.Get()
		}
		const most = 400
		for i := range most {
			y := first + float64(i)*f.Spacing.Get() - d.wall
			if y > d.c.Vault.Span.Get()+d.wall {
				break
			}
			member := rectangle(d.v, y-width/2, d.framing, y+width/2, top)
			d.b.Poly(paper.Poly{Points: member, Closed: true, Stroke: fine})
			if d.v.Size(width) >= thinCut {
				d.b.Items(hatch(member, framingCut))
			}
		}
	default:
		d.b.Line(d.v.At(-d.wall, top), d.v.At(d.c.Vault.Span.Get()+d.wall, top), beyond)
	}
}

// room draws the walls and the floor; where the room is higher than it is drawn
// the walls are broken.
func (d *sectionOf) room() {
	c := d.c
	top := c.Vault.Crown.Get()
	if !math.IsNaN(d.framing) {
		top = d.framing + framingShown
	}
	for _, side := range []float64{-1, 1} {
		y := -d.wall
		if side > 0 {
			y = c.Vault.Span.Get() + d.wall
		}
		if !d.broken {
			d.b.Line(d.v.At(y, top), d.v.At(y, -d.floor), cut)
		} else {
			d.brokenLine(y, top, -d.floor)
		}
		if l := c.Ledger; l.Projection.Given() {
			out := -side * l.Projection.Get()
			d.b.Poly(paper.Poly{Points: rectangle(d.v, y, -ledgerShown, y+out, 0), Closed: true, Tone: paper.Paper, Stroke: edge})
			d.b.Items(hatch(rectangle(d.v, y, -ledgerShown, y+out, 0), endGrain))
			d.at(d.places, d.v.At(y+out, -ledgerShown/2), "ledger")
		}
	}
	d.b.Line(d.v.At(-d.wall, -d.floor), d.v.At(c.Vault.Span.Get()+d.wall, -d.floor), cut)
	d.b.Line(d.v.At(-d.wall, 0), d.v.At(c.Vault.Span.Get()+d.wall, 0), centre)
	d.b.Label(draft.Label{Text: "springing", Of: d.v.At(c.Vault.Span.Get()*0.72, 0), Prefer: []draft.Side{draft.Above, draft.Below}})
	if l := c.Ledger; l.Projection.Given() {
		d.b.Label(draft.Label{
			Text: fmt.Sprintf("ledger, %s\nfixed %s raising", d.length(l.Projection.Get()), l.Fixed.Get()),
			Of:   d.v.At(-d.wall+l.Projection.Get(), -ledgerShown), Prefer: []draft.Side{draft.Right, draft.Below},
		})
	}
}

// ledgerShown is how deep a ledger is drawn, in m: its depth is not in the
// spec.
const ledgerShown = 0.06

// brokenLine is an upright line that stands for a longer one.
func (d *sectionOf) brokenLine(y, from, to float64) {
	mid, size := from+(to-from)*0.75, d.v.Scale/1000*3
	points := []paper.Point{d.v.At(y, from), d.v.At(y, mid+size), d.v.At(y+size, mid+size/2), d.v.At(y-size, mid-size/2), d.v.At(y, mid-size), d.v.At(y, to)}
	d.b.Poly(paper.Poly{Points: points, Stroke: cut})
}

func (d *sectionOf) vaultDims() {
	c := d.c
	span, rise := c.Vault.Span.Get(), c.Vault.Rise.Get()
	d.b.Dim(draft.Dim{From: d.v.At(0, 0), To: d.v.At(span, 0), Side: draft.Below, Text: "span " + d.dim(span)})
	if rise > 0 {
		d.b.Dim(draft.Dim{From: d.v.At(span, 0), To: d.v.At(span/2, rise), Side: draft.Right, Text: "rise " + d.dim(rise)})
	}
	if !math.IsNaN(d.framing) {
		d.b.Dim(draft.Dim{From: d.v.At(span/2, d.framing), To: d.v.At(span/2, c.Vault.Crown.Get()), Side: draft.Right, Text: d.dim(c.Room.Above.Get()) + " clear"})
	}
	if !math.IsInf(c.Vault.Radius.Get(), 1) {
		at := c.Vault.Intrados.Get().At(0.6 * c.Vault.Arc.Get())
		text := "R " + d.length(c.Vault.Radius.Get()) + " on the intrados"
		if !onArc(c) {
			text = "R " + d.length(c.Vault.Radius.Get()) + " at the crown,\nthe tightest " + d.length(c.Vault.TightestRadius.Get())
		}
		d.b.Label(draft.Label{Text: text, Of: d.v.At(at.Y, at.Z), Prefer: []draft.Side{draft.Below}})
	}
	members := fmt.Sprintf("rib %s deep, rail %s,\nskin %s at %s from the intrados", d.length(c.Rib.Depth.Get()), d.length(c.Rail.Depth.Get()), d.length(c.Skin.Total()), d.length(c.Skin.Setback.Get()))
	at := c.Vault.Intrados.Get().At(0.27 * c.Vault.Arc.Get())
	d.b.Label(draft.Label{Text: members, Of: d.v.At(at.Y, at.Z), Prefer: []draft.Side{draft.Below}})
	d.b.Label(draft.Label{
		Text: fmt.Sprintf("%d coffers around, %s each on the intrados", c.Grid.Around.Get(), d.length(c.Grid.ModuleAround.Get())),
		Of:   d.v.At(c.Vault.Intrados.Get().At(0.45*c.Vault.Arc.Get()).Y, c.Vault.Intrados.Get().At(0.45*c.Vault.Arc.Get()).Z), Prefer: []draft.Side{draft.Below},
	})
}

func (d *sectionOf) roomDims() {
	c, w := d.c, d.c.Room.Width.Get()
	d.b.Dim(draft.Dim{From: d.v.At(-d.wall, -d.floor), To: d.v.At(c.Vault.Span.Get()+d.wall, -d.floor), Side: draft.Below, Text: "room " + d.dim(w)})
	text := d.dim(c.Room.Height.Get()) + " to the springing"
	if d.broken {
		text += ", broken"
	}
	d.b.Dim(draft.Dim{From: d.v.At(-d.wall, -d.floor), To: d.v.At(-d.wall, 0), Side: draft.Left, Text: text})
}

// bite puts the findings to where they are seen, the narrower keys first.
func (d *sectionOf) bite() {
	c := d.c
	on := func(share, depth float64) paper.Point {
		at := c.Vault.Behind(share*c.Vault.Arc.Get(), depth)
		return d.v.At(at.Y, at.Z)
	}
	d.at(d.places, on(0.5, 0), "vault.rise")
	d.at(d.places, on(0, 0), "springing", "vault.span")
	d.at(d.places, on(0.2, c.Skin.Setback.Get()+c.Skin.Total()), "skin")
	d.at(d.places, on(1/float64(c.Grid.Around.Get()), c.Rail.Depth.Get()/2), "rail")
	d.at(d.places, on(0.3, 0), "rib")
	d.at(d.places, on(0.5, c.Vault.Thickness.Get()), "vault", "room.above", "panels.form")
	if s := c.Strap; len(s.Stations.Get()) > 0 {
		last := float64(s.Stations.Get()[len(s.Stations.Get())-1])
		d.at(d.places, on(last, c.Vault.Thickness.Get()), "strap")
	}
	d.at(d.places, on(0.65, c.Vault.Thickness.Get()), "strap")
	d.at(d.places, d.v.At(-d.wall, -d.floor*0.4), "room.width", "room.height")
	d.at(d.places, d.v.At(c.Vault.Span.Get()+d.wall, 0), "edge", "ledger")
}
