package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
)

// blocking draws a piece between two members wherever a strap misses both.
func (d *planOf) blocking() {
	c, f := d.c, d.c.Room.Framing
	if !blocks(c) {
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
			bay, missed := bay(c, line)
			key := [2]int{bay, i} // the two straps at a seam share a piece
			if f.Runs.Get() == "along" {
				key[0] = int(math.Round(other * 10))
			}
			if !missed || done[key] {
				continue
			}
			done[key] = true
			piece := d.block(bay, other)
			d.b.Poly(paper.Poly{Points: piece, Closed: true, Stroke: hidden})
			if first == nil {
				first = piece
			}
		}
	}
	if first != nil {
		d.b.Label(draft.Label{Text: d.blockingSaid(), Of: first[0], Prefer: []draft.Side{draft.Above}})
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

// blocks reports whether the spec says enough to tell which straps miss the framing.
func blocks(c *layout.Ceiling) bool {
	f, fixing := c.Room.Framing, c.Strap.Fixing
	return c.Strap.Given() && fixing.Top.Given() && fixing.Bottom.Given() && f.Spacing.Given() && f.Offset.Given() && f.Member.Given()
}

// memberLines are the middles of the framing's members, in m from the wall that its
// offset is from, to the wall opposite: at most 400.
func memberLines(c *layout.Ceiling) (out []float64) {
	f, first, end := c.Room.Framing, 0.0, c.Room.Length.Get()
	if f.Offset.Given() {
		first = f.Offset.Get()
	}
	if f.Runs.Get() == "along" {
		end = c.Room.Width.Get()
	}
	for i := range 400 {
		at := first + float64(i)*f.Spacing.Get()
		if at > end+onEdge {
			break
		}
		out = append(out, at)
	}
	return out
}

// bay is the one between two members that a line lies in, and whether it misses both.
func bay(c *layout.Ceiling, line float64) (n int, missed bool) {
	f, off := c.Room.Framing, c.OffMember(line)
	if c.Strap.Fixing.Top.Get() == "side" {
		missed = math.Abs(off-(f.Member.Get()+c.Strap.Thickness.Get())/2) > c.FaceMost()
	} else {
		missed = off > f.Member.Get()/2
	}
	return int(math.Floor((line - f.Offset.Get()) / f.Spacing.Get())), missed
}

// blockingSaid names the blocking as the spec has it.
func (in Input) blockingSaid() string {
	if f := in.ceiling().Room.Framing; f.Blocking.Given() && f.Blocking.Get() {
		return "blocking where a strap\nmisses the framing"
	}
	return "a strap misses the framing here:\nno blocking is stated"
}
