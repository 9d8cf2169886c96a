package section

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

// lap is that of a strap at each end; nothing where the spec has none.
func (d *sectionOf) lap() float64 {
	if l := d.c.Strap.Lap; l.Given() {
		return l.Get()
	}
	return 0
}

// straps draws each with its laps: along the rib's back or down its side, up the side
// of the framing or along its underside.
func (d *sectionOf) straps() {
	c, strap := d.c, d.c.Strap
	if math.IsNaN(d.framing) || !strap.Given() {
		return
	}
	for i, share := range strap.Stations.Get() {
		s := share * c.Vault.Arc.Get()
		back := c.Vault.Behind(s, c.Vault.Thickness.Get())
		y, foot := back.Y, back.Z
		d.b.Line(d.v.At(y, foot), d.v.At(y, d.framing), pen.Bold)
		d.b.Line(d.v.At(y-0.012, foot), d.v.At(y+0.012, foot), pen.Edge)
		if d.lap() > 0 {
			d.b.Poly(paper.Poly{Points: d.lapBelow(s), Stroke: pen.Bold})
			d.b.Poly(paper.Poly{Points: d.lapAbove(y), Stroke: pen.Bold})
		}
		d.b.Label(draft.Label{
			Text: fmt.Sprintf("strap %d at %s,\n%s", i+1, d.Format(quantity.Share(share).Value()), d.Length(c.StrapLength(share))),
			Of:   d.v.At(y, (foot+d.framing)/2), Prefer: []draft.Side{draft.Right, draft.Left},
		})
		d.AtStation(d.places, d.v.At(y, foot), strap.Stations.Place(i))
	}
}

// onBack and underneath report how the spec has a strap fixed; where it does not say,
// the strap is drawn straight on.
func (d *sectionOf) onBack() bool {
	return d.c.Strap.Fixing.Bottom.Given() && d.c.Strap.Fixing.Bottom.Get() == "back"
}

func (d *sectionOf) underneath() bool {
	return d.c.Strap.Fixing.Top.Given() && d.c.Strap.Fixing.Top.Get() == "underside"
}

// lapBelow is the lap on the rib, as the shop's patterns have it: half of it on each
// side along the back, else from the back down, square to the intrados.
func (d *sectionOf) lapBelow(s float64) []paper.Point {
	from, to := d.beside(s, 0, 0), d.beside(s, 0, d.lap())
	if d.onBack() {
		from, to = d.beside(s, -d.lap()/2, 0), d.beside(s, d.lap()/2, 0)
	}
	return []paper.Point{d.v.At(from.Y, from.Z), d.v.At(to.Y, to.Z)}
}

// lapAbove is that on the framing.
func (d *sectionOf) lapAbove(y float64) []paper.Point {
	if d.underneath() {
		return []paper.Point{d.v.At(y-d.lap()/2, d.framing), d.v.At(y+d.lap()/2, d.framing)}
	}
	return []paper.Point{d.v.At(y, d.framing), d.v.At(y, d.framing+d.lap())}
}

// screwed reports whether the screws of a strap can be drawn.
func (d *sectionOf) screwed() bool {
	_, _, ok := shop.ScrewRow(d.c)
	fixing := d.c.Strap.Fixing
	return ok && !math.IsNaN(d.framing) && fixing.Top.Given() && fixing.Bottom.Given()
}

// strapsSaid is what is said of all straps: what their lengths are, their laps, their
// screws and the faces that these are in, of what the spec has.
func (d *sectionOf) strapsSaid() string {
	st := d.c.Strap
	if math.IsNaN(d.framing) || !st.Given() || len(st.Stations.Get()) == 0 {
		return ""
	}
	text := "each strap: length between fixings"
	if d.c.Survey.Given() {
		text += ", as drawn"
	}
	if st.Lap.Given() {
		text += ",\nlaps " + d.Length(st.Lap.Get()) + " on rib and framing"
	}
	if s := st.Screws; s.Given() && s.Count.Given() && s.Diameter.Given() {
		text += fmt.Sprintf(",\n%d screws of %s", s.Count.Get(), d.Length(s.Diameter.Get()))
		if s.Penetration.Given() {
			text += ", " + d.Length(s.Penetration.Get()) + " in the wood"
		}
		text += ", at each end"
	}
	if f := st.Fixing; f.Top.Given() && f.Bottom.Given() {
		text += fmt.Sprintf(",\non the framing's %s and the rib's %s", f.Top.Get(), map[string]string{"side": "side", "back": "back", "seam": "face at the seam"}[f.Bottom.Get()])
	}
	return text
}
