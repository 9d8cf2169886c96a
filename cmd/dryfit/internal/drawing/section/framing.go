package section

import (
	"fmt"
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/framing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/model/layout"
)

// members draws the framing's underside, and its members: cut, or in their run where
// they lie in the section.
func (d *sectionOf) members() {
	if math.IsNaN(d.framing) {
		return
	}
	right, top := d.c.Vault.Span.Get()+d.wall, d.framing+d.deep
	d.b.Line(d.v.At(-d.wall, d.framing), d.v.At(right, d.framing), pen.Cut)
	f := d.c.Room.Framing
	if !f.Spacing.Given() {
		return
	}
	named := d.v.At(-d.wall+(right+d.wall)*0.55, d.framing)
	if f.Runs.Get() == "along" {
		width := memberShown
		if f.Member.Given() {
			width = f.Member.Get()
		}
		for _, y := range d.across() {
			member := d.v.Rectangle(y-width/2, d.framing, y+width/2, top)
			d.b.Poly(paper.Poly{Points: member, Closed: true, Stroke: pen.Fine})
			if d.v.Size(width) >= pen.LeastHatched {
				d.b.Items(pen.Hatch(member, pen.FramingCut))
			}
			if y <= d.c.Vault.Span.Get()*0.6 {
				named = d.v.At(y, top)
			}
		}
	} else {
		d.b.Line(d.v.At(-d.wall, top), d.v.At(right, top), pen.Beyond)
	}
	d.b.Label(draft.Label{Text: "framing", Of: named, Prefer: []draft.Side{draft.Above}})
}

// memberShown is how wide a member is drawn, in m, where the spec does not say.
const memberShown = 0.038

// across are the middles of members that run along the vault, from the left springing.
func (d *sectionOf) across() (out []float64) {
	for _, y := range framing.Members(d.c) {
		out = append(out, y-d.wall)
	}
	return out
}

// framingSaid is the framing as the spec has it.
func (d *sectionOf) framingSaid() string {
	f, text := d.c.Room.Framing, "framing: "
	if math.IsNaN(d.framing) || !f.Spacing.Given() {
		return ""
	}
	if f.Member.Given() {
		text += d.Length(f.Member.Get()) + " "
	}
	if f.Species.Given() {
		text += "of " + f.Species.Get()
	}
	if f.Member.Given() || f.Species.Given() {
		text = strings.TrimRight(text, " ") + ",\n"
	}
	return text + fmt.Sprintf("%s apart, runs %s", d.Length(f.Spacing.Get()), f.Runs.Get())
}

// blocking draws what the straps of the first edge rib beyond the section are fixed
// to where they miss the framing; what the section cuts is hatched.
func (d *sectionOf) blocking() {
	c, f := d.c, d.c.Room.Framing
	rib, plane, ok := d.ribBeyond()
	if math.IsNaN(d.framing) || !framing.Known(c) || !ok {
		return
	}
	top, named := d.framing+d.deep, paper.Point{}
	for _, share := range c.Strap.Stations.Get() {
		y, line := c.Vault.Behind(share*c.Vault.Arc.Get(), c.Vault.Thickness.Get()).Y, c.StrapLine(rib)
		if f.Runs.Get() == "along" {
			line = y + d.wall
		}
		bay, missed := framing.Bay(c, line)
		if !missed {
			continue
		}
		low, high := d.block(bay, y)
		piece := d.v.Rectangle(low, d.framing, high, top)
		d.b.Poly(paper.Poly{Points: piece, Closed: true, Stroke: pen.Fine})
		if f.Runs.Get() == "across" && bay == int(math.Floor((plane-f.Offset.Get())/f.Spacing.Get())) {
			d.b.Items(pen.Hatch(piece, pen.FramingCut))
		}
		if named == (paper.Point{}) {
			named = d.v.At((low+high)/2, top)
		}
	}
	if named != (paper.Point{}) {
		d.b.Label(draft.Label{Text: framing.BlockingText(d.c), Of: named, Prefer: []draft.Side{draft.Above}})
	}
}

// block is from where to where in the section a piece in a bay of the framing lies, for
// a strap at y: as wide as a member, or from one member to the next.
func (d *sectionOf) block(bay int, y float64) (low, high float64) {
	f, half := d.c.Room.Framing, d.c.Room.Framing.Member.Get()/2
	if f.Runs.Get() != "along" {
		return y - half, y + half
	}
	from := f.Offset.Get() + float64(bay)*f.Spacing.Get() - d.wall
	return max(-d.wall, from+half), min(d.c.Room.Width.Get()-d.wall, from+f.Spacing.Get()-half)
}

// ribBeyond is the first edge rib beyond the plane of the section, and where that
// plane is, from the near end wall.
func (d *sectionOf) ribBeyond() (rib layout.EdgeRib, plane float64, ok bool) {
	plane = d.c.NearGap() + (d.c.RibAt(0)+d.c.RibAt(1))/2
	for _, r := range d.c.EdgeRibs() {
		if r.Near >= plane {
			return r, plane, true
		}
	}
	return rib, plane, false
}
