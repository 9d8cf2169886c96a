package layout

import (
	"math"
	"slices"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
)

// weigh finds the heaviest piece of an arch, which the panel is.
func (c *Ceiling) weigh() {
	p := &c.Panel
	p.arch = Derive(c, func() (out []weighed) {
		for k := range p.Around.Get() {
			out = append(out, c.weighed(k))
		}
		return out
	})
	heaviest := Derive(c, func() int {
		if p.Around.Get() == 1 {
			return 0 // whatever it weighs
		}
		return heaviestOf(p.arch.Get())
	})
	p.Pieces = Derive(c, func() []Piece {
		pieces := slices.Clone(p.arch.Get()[heaviest.Get()].pieces)
		for i := range pieces {
			pieces[i].From = pieces[i].From.Or(heaviest.From())
		}
		return pieces
	})
	p.Parts = Derive(c, func() []Part { return c.parts(p.arch.Get()) })
	p.Mass = named(c, "panel.mass", func() float64 { return p.arch.Get()[heaviest.Get()].mass })
	p.Most = named(c, "panel.mass.most", func() float64 { return p.arch.Get()[heaviest.Get()].most })
	p.Centre = Derive(c, func() curve.Point { return p.arch.Get()[heaviest.Get()].centre })
	p.Outline = Derive(c, func() curve.Region {
		s0, s1 := c.part(heaviest.Get())
		if s0 == 0 && s1 == c.Vault.Arc.Get() {
			return c.Vault.Figure.Get()
		}
		return c.Vault.Band(s0, s1, 0, c.Vault.Thickness.Get())
	})
	c.boxPanel()
}

// heaviestOf is the first of those that weigh alike, as pieces that mirror each other
// do.
func heaviestOf(arch []weighed) (at int) {
	for k, one := range arch {
		if quantity.Over(one.mass, arch[at].mass) {
			at = k
		}
	}
	return at
}

// boxPanel is the box of the panel's outline.
func (c *Ceiling) boxPanel() {
	p := &c.Panel
	p.Width = named(c, "panel.width", func() float64 {
		low, high := p.Outline.Get().Bounds()
		return high.Y - low.Y
	})
	p.Height = named(c, "panel.height", func() float64 {
		if p.Around.Get() == 1 {
			return c.Vault.Crown.Get() // the outline's corners may miss it
		}
		low, high := p.Outline.Get().Bounds()
		return high.Z - low.Z
	})
}

// part is where along the arc the k-th piece of an arch from the left begins and
// ends.
func (c *Ceiling) part(k int) (s0, s1 float64) {
	s0, s1 = float64(k)*c.Panel.Arc.Get(), float64(k+1)*c.Panel.Arc.Get()
	if k == c.Panel.Around.Get()-1 {
		s1 = c.Vault.Arc.Get()
	}
	return s0, s1
}

// weighed is a piece of an arch with its masses.
type weighed struct {
	pieces []Piece
	points []Piece // rails each by itself, where pieces has those that are alike once, and fittings
	mass   float64
	uneven float64 // what fittings add to twice the load of the edge rib that they load more
	most   float64
	centre curve.Point
}

func (c *Ceiling) weighed(k int) (w weighed) {
	t := drawings.Get().(*stretch)
	defer drawings.Put(t)
	for _, part := range []func(s0, s1 float64) []Piece{
		func(s0, s1 float64) []Piece { return c.ribPieces(t.of(c.Vault, s0, s1), c.fullRibs(), c.halfRibs()) },
		func(s0, s1 float64) []Piece { return c.Rails(s0, s1, c.bays()) },
		func(s0, s1 float64) []Piece {
			return []Piece{c.skinPiece(t.of(c.Vault, s0, s1), c.Panel.EndLength.Get(), 1)}
		},
		func(s0, s1 float64) []Piece { return c.tenonPieces(s0, s1, min(1, c.Panel.Along.Get()-1)) },
		func(s0, s1 float64) []Piece { return c.strapPieces(s0, s1, 1) },
		c.fittingPieces,
	} {
		var pieces []Piece
		from := c.Recorded(func() { pieces = part(c.part(k)) })
		for i := range pieces {
			pieces[i].From = from
		}
		w.pieces = append(w.pieces, pieces...)
	}
	w.total()
	return w
}

// total works out the masses of the pieces, and lists those that are alike once.
func (w *weighed) total() {
	for _, p := range w.pieces {
		switch p.Kind {
		case Rail, HalfRail:
			w.points = append(w.points, p)
		case Let:
			w.uneven += (2*p.Share - 1) * p.Mass
			p.Mass *= 2 * p.Share
			w.points = append(w.points, p)
		}
	}
	w.pieces = merged(w.pieces)
	for _, piece := range w.pieces {
		m := piece.Mass * float64(piece.Count)
		w.mass += m
		w.most += piece.Most() * float64(piece.Count)
		w.centre.Y += m * piece.Centre.Y
		w.centre.Z += m * piece.Centre.Z
	}
	w.centre.Y /= w.mass
	w.centre.Z /= w.mass
}

// alike is how near the volumes of two pieces are, by themselves, to be of one
// kind: far above round-off, far below what a shop cuts to.
const alike = 1e-6

// merged lists pieces of one kind once; their centre is the mean.
func merged(pieces []Piece) []Piece {
	var out []Piece
next:
	for _, p := range pieces {
		for i := range out {
			had := &out[i]
			if had.Kind == p.Kind && had.Material == p.Material && math.Abs(had.Volume-p.Volume) < alike*p.Volume {
				n := float64(had.Count + p.Count)
				had.Centre.Y = (had.Centre.Y*float64(had.Count) + p.Centre.Y*float64(p.Count)) / n
				had.Centre.Z = (had.Centre.Z*float64(had.Count) + p.Centre.Z*float64(p.Count)) / n
				had.Count += p.Count
				had.From = had.From.Or(p.From)
				continue next
			}
		}
		out = append(out, p)
	}
	return out
}
