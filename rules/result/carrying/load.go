package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/layout"
)

// load is how many panels a vehicle takes, arches nested into each other, and
// how many loads they make. Panels lie as they hang, either way round, or lean on
// edge; one that goes in only in another way is a load by itself.
func load(c *layout.Ceiling, wrap float64, way *Way, inside layout.Box) {
	if way.Outcome != passage.Passes {
		return
	}
	b := boxed{c: c, wrap: wrap, wide: c.Panel.Width.Get() + 2*wrap, high: c.Panel.Height.Get() + 2*wrap, long: c.Panel.EndLength.Get() + 2*wrap}
	way.Load = max(1, b.nested(inside), b.leaning(inside))
	way.Loads = (c.Panel.Count.Get() + way.Load - 1) / way.Load
}

// boxed is the wrapped panel as its box.
type boxed struct {
	c                *layout.Ceiling
	wrap             float64
	wide, high, long float64
}

func (b boxed) nested(inside layout.Box) (most int) {
	w, h, n := b.wide, b.high, b.long
	pitch := b.pitch(h)
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
func (b boxed) pitch(h float64) float64 {
	c, thick := b.c, b.c.Vault.Thickness.Get()+2*b.wrap
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
func (b boxed) leaning(inside layout.Box) int {
	if b.long <= height(inside.Height) && b.high <= inside.Width.Get() && b.wide <= inside.Length.Get() {
		return int(inside.Width.Get() / b.high)
	}
	return 0
}
