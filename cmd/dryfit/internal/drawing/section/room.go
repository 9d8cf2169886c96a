package section

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
)

// room draws the walls and the floor; where the room is higher than it is drawn
// the walls are broken.
func (d *sectionOf) room() {
	c := d.c
	top := c.Vault.Crown.Get()
	if !math.IsNaN(d.framing) {
		top = d.framing + d.deep
	}
	for _, w := range d.walls() {
		if !d.broken {
			d.b.Line(d.v.At(w.at, top), d.v.At(w.at, -d.floor), pen.Cut)
		} else {
			d.brokenLine(w.at, top, -d.floor)
		}
	}
	d.b.Line(d.v.At(-d.wall, -d.floor), d.v.At(c.Vault.Span.Get()+d.wall, -d.floor), pen.Cut)
	d.b.Line(d.v.At(-d.wall, 0), d.v.At(c.Vault.Span.Get()+d.wall, 0), pen.Centre)
}

// ledgers draws them under the springing, on both walls.
func (d *sectionOf) ledgers() {
	l := d.c.Ledger
	if !l.Projection.Given() {
		return
	}
	for _, w := range d.walls() {
		piece := d.v.Rectangle(w.at, -ledgerShown, w.at+w.in*l.Projection.Get(), 0)
		d.b.Poly(paper.Poly{Points: piece, Closed: true, Tone: paper.Paper, Stroke: pen.Edge})
		d.b.Items(pen.Hatch(piece, pen.EndGrain))
		d.At(d.places, d.v.At(w.at+w.in*l.Projection.Get(), -ledgerShown/2), "ledger")
	}
	d.b.Label(draft.Label{
		Text: fmt.Sprintf("ledger, %s\nfixed %s raising", d.Length(l.Projection.Get()), l.Fixed.Get()),
		Of:   d.v.At(-d.wall+l.Projection.Get(), -ledgerShown), Prefer: []draft.Side{draft.Right, draft.Below},
	})
}

// moulding draws it on both walls under the springing, or under the ledgers: as wide
// as the gap that it can cover.
func (d *sectionOf) moulding() {
	cover, top := d.c.Edge.Cover, 0.0
	if !cover.Given() {
		return
	}
	if d.c.Ledger.Projection.Given() {
		top = -ledgerShown
	}
	wide := min(cover.Get(), d.c.Room.Width.Get()/2)
	for _, w := range d.walls() {
		piece := d.v.Rectangle(w.at, top-mouldingShown, w.at+w.in*wide, top)
		d.b.Poly(paper.Poly{Points: piece, Closed: true, Tone: paper.Paper, Stroke: pen.Edge})
		d.b.Items(pen.Hatch(piece, pen.EndGrain))
	}
	right := d.walls()[1]
	d.b.Label(draft.Label{
		Text: "moulding, covers " + d.Length(cover.Get()),
		Of:   d.v.At(right.at+right.in*wide, top-mouldingShown), Prefer: []draft.Side{draft.Left, draft.Below},
	})
}

// wall is one of the two, and which way the room lies from it.
type wall struct{ at, in float64 }

func (d *sectionOf) walls() [2]wall {
	return [2]wall{{-d.wall, 1}, {d.c.Vault.Span.Get() + d.wall, -1}}
}

// How deep a ledger and how thick a moulding is drawn, in m: neither is in the spec.
const (
	ledgerShown   = 0.06
	mouldingShown = 0.015
)

// brokenLine is an upright line that stands for a longer one.
func (d *sectionOf) brokenLine(y, from, to float64) {
	mid, size := from+(to-from)*0.75, d.v.Scale/1000*3
	points := []paper.Point{d.v.At(y, from), d.v.At(y, mid+size), d.v.At(y+size, mid+size/2), d.v.At(y-size, mid-size/2), d.v.At(y, mid-size), d.v.At(y, to)}
	d.b.Poly(paper.Poly{Points: points, Stroke: pen.Cut})
}
