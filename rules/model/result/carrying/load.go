package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/layout"
)

// load is how many panels a vehicle takes, arches nested into each other, and
// how many loads they make. Panels lie as they hang, either way round, or lean on
// edge; one that goes in only in another way is a load by itself.
func (p *panel) load(c *layout.Ceiling, way *Way, inside layout.Box) {
	if way.Outcome != passage.Passes {
		return
	}
	wrap := p.wrap
	b := boxed{c: c, wrap: wrap, wide: c.Panel.Width.Get() + 2*wrap, high: c.Panel.Height.Get() + 2*wrap, long: c.Panel.EndLength.Get() + 2*wrap}
	best := b.leaning(inside)
	for _, way := range b.nested(inside) {
		if way.count() >= best.count() {
			best = way
		}
	}
	way.Load = max(1, best.count())
	way.Loads = (c.Panel.Count.Get() + way.Load - 1) / way.Load
	way.stowed = func() (out []Pose) {
		for _, at := range best.places(inside.Length.Get(), c.Panel.Count.Get()) {
			out = append(out, p.seen(Pose{Plane: Floor}, at))
		}
		return out
	}
}

// stowage is a load: so many panels of one way round along the vehicle, across it
// and over each other, each so far from the next.
type stowage struct {
	turn                space.Turn
	along, across, over int
	pitch               space.Vec
	high                float64 // of the lowest panel's middle
}

func (s stowage) count() int { return s.along * s.across * s.over }

// places are those of the first panels, from the front end and the floor.
func (s stowage) places(length float64, most int) (out []space.Pose) {
	for n := range min(most, s.along*s.across*s.over) {
		i, j, k := n/(s.across*s.over), n/s.over%s.across, n%s.over
		at := space.Vec{X: length - (float64(i)+0.5)*s.pitch.X, Y: (float64(j) + 0.5) * s.pitch.Y, Z: s.high + float64(k)*s.pitch.Z}
		out = append(out, space.Pose{Turn: s.turn, At: at})
	}
	return out
}

// boxed is the wrapped panel as its box.
type boxed struct {
	c                *layout.Ceiling
	wrap             float64
	wide, high, long float64
}

// nested are arches in stacks, both ways round: along the vehicle by their width,
// and by their length.
func (b boxed) nested(inside layout.Box) (out []stowage) {
	w, h, n := b.wide, b.high, b.long
	length, width, room := inside.Length.Get(), inside.Width.Get(), height(inside.Height)
	for _, way := range []stowage{
		{turn: space.Turn{{Y: 1}, {X: -1}, {Z: 1}}, pitch: space.Vec{X: w, Y: n}},
		{turn: space.Turn{{X: 1}, {Y: 1}, {Z: 1}}, pitch: space.Vec{X: n, Y: w}},
	} {
		if way.pitch.Y <= width && h <= room && !math.IsInf(room, 1) {
			way.pitch.Z, way.high = b.pitch(h), h/2
			way.along, way.across, way.over = int(length/way.pitch.X), int(width/way.pitch.Y), 1+int((room-h)/way.pitch.Z)
			out = append(out, way)
		}
	}
	return out
}

// pitch is how far one panel lies over the next, in m, at most the panel's own
// height. Nested arches shifted by s stand s·cos φ apart at their ends, φ the slope
// there. Derived.
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

// leaning panels stand on edge, axis upright, and lean on a side.
func (b boxed) leaning(inside layout.Box) stowage {
	if b.long > height(inside.Height) || b.high > inside.Width.Get() || b.wide > inside.Length.Get() {
		return stowage{}
	}
	return stowage{
		turn: space.Turn{{Y: 1}, {Z: 1}, {X: 1}}, along: 1, across: int(inside.Width.Get() / b.high), over: 1,
		pitch: space.Vec{X: b.wide, Y: b.high}, high: b.long / 2,
	}
}
