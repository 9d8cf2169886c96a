package strap

import (
	"dryfit/rules/engine"
)

// row is the screws of one end: in one row on the strap's centre line, in the
// middle of its lap.
type row struct {
	count    int
	diameter float64
	lap      float64
	pitch    float64 // between neighbours
	first    float64 // from the lap's end to the first screw
}

// length is that between the outer screws.
func (r row) length() float64 { return float64(r.count-1) * r.pitch }

// rowOf is the row that the spec describes; without strap.screws.spacing its
// screws are even over the lap.
func rowOf(p *engine.Pass) row {
	st := p.Ceiling.Strap
	r := row{count: st.Screws.Count.Get(), diameter: st.Screws.Diameter.Get(), lap: st.Lap.Get()}
	r.pitch = r.lap / float64(r.count)
	if st.Screws.Spacing.Given() {
		r.pitch = st.Screws.Spacing.Get()
	}
	r.first = (r.lap - r.length()) / 2
	return r
}

// entered is how far a screw goes into the wood at one end: what the strap, and
// on a back that the skin covers the skin, leave of its length; without the
// length, its thread. The skin is taken as thin as it may be.
func entered(p *engine.Pass, bottom bool) (depth float64, ok bool) {
	c, s := p.Ceiling, p.Ceiling.Strap.Screws
	if !s.Length.Given() {
		if !s.Penetration.Given() {
			p.Absent("strap.screws.length")
		}
		return s.Penetration.Get(), s.Penetration.Given()
	}
	depth = s.Length.Get() - c.Strap.Thickness.Get()
	if bottom && c.Strap.Fixing.Bottom.Get() == "back" && !c.Skin.Between.Get() {
		depth -= c.Skin.Total() - c.Skin.Spread()
	}
	return depth, true
}

// edgeRib is the width of the rib at a panel's edge, the least of them.
func edgeRib(p *engine.Pass) float64 {
	c := p.Ceiling
	if c.Seam.Count.Get() == 0 && !c.Grid.HalfEnds.Get() {
		return c.Rib.Width.Get()
	}
	return c.Rib.Width.Get() / 2
}

// reveal is how wide and how deep the groove cuts into the arris of the rib at a
// panel's edge, at the seam or toward the coffer.
func reveal(p *engine.Pass) (wide, deep float64) {
	r := p.Ceiling.Grid.Reveal
	switch {
	case !r.Given():
		return 0, 0
	case r.At.Get() == "sides":
		return r.Width.Get(), r.Depth.Get()
	case r.At.Get() == "seam":
		return r.Width.Get() / 2, r.Depth.Get()
	default: // the layers have it
		return 0, 0
	}
}

// face is how deep the side of the rib is that the strap lies on, down to a
// reveal there.
func face(p *engine.Pass) float64 {
	deep := p.Ceiling.Rib.Depth.Get()
	if at := p.Ceiling.Grid.Reveal.At.Get(); p.Ceiling.Grid.Reveal.Given() &&
		(at == "sides" || at == "seam" && p.Ceiling.Strap.Fixing.Bottom.Get() == "seam") {
		deep -= p.Ceiling.Grid.Reveal.Depth.Get()
	}
	return deep
}

// groove is how deep the reveal cuts into the arris at a seam.
func groove(p *engine.Pass) float64 {
	if r := p.Ceiling.Grid.Reveal; r.Given() && r.At.Get() == "seam" {
		return r.Depth.Get()
	}
	return 0
}
