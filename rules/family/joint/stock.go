package joint

import (
	"math"

	"dryfit/rules/model/layout"
)

// stock is the half member that a tenon is let into, clear of the reveal.
type stock struct {
	name, key string        // "half rib", "rib.width"
	width     layout.Number // which way the mortise goes in
	depth     layout.Number // of plain wood at the seam, across the curve
	seam      layout.Number // length of the seam in one piece of the arch
}

// stocks are the half ribs at the seams around the arc, and the half rails at
// those along the axis, as far as there are such seams.
func stocks(c *layout.Ceiling) []stock {
	half := func(m layout.Member) layout.Number {
		return layout.Derive(c, func() float64 { return m.Width.Get() / 2 })
	}
	var out []stock
	if c.Seam.Count.Get() > 0 {
		depth := layout.Derive(c, func() float64 {
			from, to := plainRib(c)
			return to - from
		})
		out = append(out, stock{"half rib", "rib.width", half(c.Rib.Member), depth, c.Panel.Arc})
	}
	if c.Seam.EdgeSeams.Get() > 0 {
		depth := layout.Derive(c, func() float64 { return c.Rail.Depth.Get() - groove(c) })
		out = append(out, stock{"half rail", "rail.width", half(c.Rail), depth, c.Panel.Length})
	}
	return out
}

// groove is how deep the reveal cuts into the arris at a seam.
func groove(c *layout.Ceiling) float64 {
	if r := c.Grid.Reveal; r.Given() && r.At.Get() == "seam" {
		return r.Depth.Get()
	}
	return 0
}

// plainRib is from where to where, up from the intrados, all layers have wood
// which a tenon goes into from the seam, which lies in the middle of the rib.
func plainRib(c *layout.Ceiling) (from, to float64) {
	to = c.Rib.Depth.Get()
	at := -c.Rib.Width.Get() / 2
	for _, l := range c.RibLayers.Get() {
		if near := math.Max(0, math.Max(at, -(at+l.Width))); near < c.Seam.Tenon.Length.Get()/2 {
			from, to = math.Max(from, l.From), math.Min(to, l.To)
		}
		at += l.Width
	}
	return from + groove(c), to
}

// lesser is the stock's thickness, by the trade's word: its lesser size.
func (s stock) lesser() float64 { return math.Min(s.width.Get(), s.depth.Get()) }
