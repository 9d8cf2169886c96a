package joint

import (
	"math"

	"dryfit/rules/layout"
)

// stock is the half member that a tenon is let into, clear of the reveal.
type stock struct {
	name, key string  // "half rib", "rib.width"
	width     float64 // which way the mortise goes in
	depth     float64 // of plain wood at the seam, across the curve
	seam      float64 // length of the seam in one piece of the arch
	count     int     // seams of this kind
}

// stocks are the half ribs at the seams around the arc, and the half rails at
// those along the axis, as far as there are such seams.
func stocks(c *layout.Ceiling) []stock {
	var out []stock
	if n := c.Seam.Count.Get(); n > 0 {
		out = append(out, stock{"half rib", "rib.width", c.Rib.Width.Get() / 2, ribDepth(c), c.Panel.Arc.Get(), n})
	}
	if n := c.Seam.EdgeSeams.Get(); n > 0 {
		out = append(out, stock{"half rail", "rail.width", c.Rail.Width.Get() / 2, c.Rail.Depth.Get() - groove(c), c.Panel.Length.Get(), n})
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

// ribDepth is the depth that all layers have which a tenon goes into from the
// seam, which lies in the middle of the rib.
func ribDepth(c *layout.Ceiling) float64 {
	from, to := 0.0, c.Rib.Depth.Get()
	at := -c.Rib.Width.Get() / 2
	for _, l := range c.RibLayers.Get() {
		if near := math.Max(0, math.Max(at, -(at+l.Width))); near < c.Seam.Tenon.Length.Get()/2 {
			from, to = math.Max(from, l.From), math.Min(to, l.To)
		}
		at += l.Width
	}
	return to - from - groove(c)
}

// lesser is the stock's thickness, by the trade's word: its lesser size.
func (s stock) lesser() float64 { return math.Min(s.width, s.depth) }
