package section

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/result/shop"
)

// screws draws those at both ends of each strap, where the shop bores for them: their
// heads on a side, else their length in the wood.
func (d *sectionOf) screws() {
	if !d.screwed() {
		return
	}
	v := d.c.Vault
	for _, share := range d.c.Strap.Stations.Get() {
		s := share * v.Arc.Get()
		y := v.Behind(s, v.Thickness.Get()).Y
		for _, off := range d.row() {
			if d.onBack() {
				head, tip := d.beside(s, off, 0), d.beside(s, off, d.inWood())
				d.b.Line(d.v.At(head.Y, head.Z), d.v.At(tip.Y, tip.Z), pen.Hair)
			} else {
				at := d.beside(s, 0, d.lap()/2+off)
				d.head(d.v.At(at.Y, at.Z))
			}
			if d.underneath() {
				d.b.Line(d.v.At(y+off, d.framing), d.v.At(y+off, d.framing+d.inWood()), pen.Hair)
			} else {
				d.head(d.v.At(y, d.framing+d.lap()/2+off))
			}
		}
	}
}

// row are the places of a strap's screws, from the middle of its lap.
func (d *sectionOf) row() (out []float64) {
	first, pitch, _ := shop.ScrewRow(d.c)
	for i := range d.c.Strap.Screws.Count.Get() {
		out = append(out, first+float64(i)*pitch-d.lap()/2)
	}
	return out
}

// beside is a place beside a station's own on the back: along the tangent there, and
// down from the back.
func (d *sectionOf) beside(s, along, down float64) curve.Point {
	on, back := d.c.Vault.Behind(s, 0), d.c.Vault.Behind(s, d.c.Vault.Thickness.Get())
	long := math.Hypot(back.Y-on.Y, back.Z-on.Z)
	ny, nz := (back.Y-on.Y)/long, (back.Z-on.Z)/long
	return curve.Point{Y: back.Y + along*nz - down*ny, Z: back.Z - along*ny - down*nz}
}

// inWood is how far a screw is in it; nothing where the spec does not say.
func (d *sectionOf) inWood() float64 {
	if p := d.c.Strap.Screws.Penetration; p.Given() {
		return p.Get()
	}
	return 0
}

// head is that of a screw, at least so large that it is seen.
func (d *sectionOf) head(at paper.Point) {
	const seen = 0.3
	d.b.Arc(paper.Circle(at, max(seen, d.v.Size(d.c.Strap.Screws.Diameter.Get()/2)), pen.Hair))
}
