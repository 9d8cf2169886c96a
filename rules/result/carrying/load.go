package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/layout"
)

// load is how many panels a vehicle takes, arches nested into each other, and
// how many loads they make. Panels lie as they hang, either way round, or lean on
// edge; one that goes in only in another way is a load by itself.
func (p *panel) load(way *Way, inside layout.Box) {
	if way.Outcome != passage.Passes {
		return
	}
	way.Load = max(1, p.nested(inside), p.leaning(inside))
	way.Loads = (p.c.Panel.Count.Get() + way.Load - 1) / way.Load
}

// box is the wrapped panel's: its width, its height and its length.
func (p *panel) box() (w, h, n float64) {
	g := 2 * p.wrap
	return p.c.Panel.Width.Get() + g, p.c.Panel.Height.Get() + g, p.c.Panel.EndLength.Get() + g
}

func (p *panel) nested(inside layout.Box) (most int) {
	w, h, n := p.box()
	pitch := p.pitch(h)
	length, width, room := inside.Length.Get(), inside.Width.Get(), height(inside.Height)
	for _, way := range [][2]float64{{w, n}, {n, w}} {
		if way[1] <= width && h <= room && !math.IsInf(room, 1) {
			stacks := int(length/way[0]) * int(width/way[1])
			most = max(most, stacks*(1+int((room-h)/pitch)))
		}
	}
	return most
}

// pitch is how far one panel lies over the next. Nested arches shifted by s stand
// s·cos φ apart at their ends, φ the slope there.
func (p *panel) pitch(h float64) float64 {
	c, thick := p.c, p.c.Vault.Thickness.Get()+2*p.wrap
	if math.IsInf(c.Vault.TightestRadius.Get(), 1) {
		return thick
	}
	half := c.Panel.Arc.Get() / c.Vault.Radius.Get() / 2
	if cos := math.Cos(min(half, c.Vault.HalfAngle.Get())); c.Vault.Shape().OneArc && cos > 0 {
		return min(h, thick/cos)
	}
	return h
}

// leaning panels stand on edge, axis level, and lean on a side.
func (p *panel) leaning(inside layout.Box) int {
	w, h, n := p.box()
	if n <= height(inside.Height) && h <= inside.Width.Get() && w <= inside.Length.Get() {
		return int(inside.Width.Get() / h)
	}
	return 0
}
