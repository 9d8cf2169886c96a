package plan

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/framing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
)

// blocking draws a piece between two members wherever a strap misses both.
func (d *planOf) blocking() {
	c, f := d.c, d.c.Room.Framing
	if !framing.Known(c) {
		return
	}
	done := map[[2]int]bool{}
	var first []paper.Point
	for _, rib := range c.EdgeRibs() {
		for i, share := range c.Strap.Stations.Get() {
			line, other := c.StrapLine(rib), d.across(float64(share)*c.Vault.Arc.Get())+d.side
			if f.Runs.Get() == "along" {
				line, other = other, line
			}
			bay, missed := framing.Bay(c, line)
			key := [2]int{bay, i} // the two straps at a seam share a piece
			if f.Runs.Get() == "along" {
				key[0] = int(math.Round(other * 10))
			}
			if !missed || done[key] {
				continue
			}
			done[key] = true
			piece := d.block(bay, other)
			d.b.Poly(paper.Poly{Points: piece, Closed: true, Stroke: pen.Hidden})
			if first == nil {
				first = piece
			}
		}
	}
	if first != nil {
		d.b.Label(draft.Label{Text: framing.BlockingText(d.c), Of: first[0], Prefer: []draft.Side{draft.Above}})
	}
}

// block is a piece in a bay of the framing, as wide as a member, at a place along the
// members; it ends at the walls, beyond which there is none.
func (d *planOf) block(bay int, other float64) []paper.Point {
	f, room := d.c.Room.Framing, d.c.Room
	half, from := f.Member.Get()/2, f.Offset.Get()+float64(bay)*f.Spacing.Get()
	low, high := max(0, from+half), from+f.Spacing.Get()-half
	if f.Runs.Get() == "along" {
		high = min(high, room.Width.Get())
		return d.box(other-half-d.near, low-d.side, other+half-d.near, high-d.side)
	}
	high = min(high, room.Length.Get())
	return d.box(low-d.near, other-half-d.side, high-d.near, other+half-d.side)
}
