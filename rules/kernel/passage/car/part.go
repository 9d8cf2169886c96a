package car

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// extents is how far something reaches along Y and along Z; empty if its low is
// above its high.
type extents struct{ y, z [2]float64 }

var nowhere = extents{[2]float64{math.Inf(1), math.Inf(-1)}, [2]float64{math.Inf(1), math.Inf(-1)}}

func (s *extents) take(v space.Vec) {
	s.y = [2]float64{min(s.y[0], v.Y), max(s.y[1], v.Y)}
	s.z = [2]float64{min(s.z[0], v.Z), max(s.z[1], v.Z)}
}

// holds reports whether a box of half sizes about a place is within the extents.
func (s *extents) holds(y, z, ry, rz float64) bool {
	return y-ry >= s.y[0] && y+ry <= s.y[1] && z-rz >= s.z[0] && z+rz <= s.z[1]
}

// halves are two parts of a body at a pose whose origin is at 0 along Y and Z:
// that within a wall, from before to after along X, and all that is past before.
type halves struct {
	b             *passage.Body
	t             space.Turn
	x             float64 // of the origin
	before, after float64
	wall, past    extents
	tree          *passage.Boundary
}

// parts measures the parts of the body at a turn with its origin at x.
func parts(b *passage.Body, t space.Turn, x, before, after float64) halves {
	p := halves{b: b, t: t, x: x, before: before, after: after, wall: nowhere, past: nowhere, tree: b.Edges()}
	p.node(0)
	return p
}

func (p *halves) node(i int) {
	n := &p.tree.Nodes[i]
	h := p.b.Half()
	x := p.x + n.Centre.X*p.t[0].Y + n.Centre.Y*p.t[0].Z
	rx := n.Radius + h*math.Abs(p.t[0].X)
	if x+rx < p.before {
		return
	}
	y, z := n.Centre.X*p.t[1].Y+n.Centre.Y*p.t[1].Z, n.Centre.X*p.t[2].Y+n.Centre.Y*p.t[2].Z
	ry, rz := n.Radius+h*math.Abs(p.t[1].X), n.Radius+h*math.Abs(p.t[2].X)
	if p.past.holds(y, z, ry, rz) && (x-rx > p.after || p.wall.holds(y, z, ry, rz)) {
		return
	}
	if n.Second != 0 {
		p.node(i + 1)
		p.node(n.Second)
		return
	}
	section := p.b.Section()
	var left, right space.Vec
	for k := n.From; k <= n.To; k++ {
		q := section[k%len(section)]
		l, r := p.place(space.Vec{X: -h, Y: q.X, Z: q.Y}), p.place(space.Vec{X: h, Y: q.X, Z: q.Y})
		p.edge(l, r)
		if k > n.From {
			p.edge(left, l)
			p.edge(right, r)
		}
		left, right = l, r
	}
}

func (p *halves) place(v space.Vec) space.Vec {
	return space.Vec{X: p.x + v.Dot(p.t[0]), Y: v.Dot(p.t[1]), Z: v.Dot(p.t[2])}
}

// edge takes what of an edge is in either part.
func (p *halves) edge(a, b space.Vec) {
	if a.X > b.X {
		a, b = b, a
	}
	if b.X < p.before {
		return
	}
	if a.X < p.before {
		a = a.Add(b.Minus(a).Times((p.before - a.X) / (b.X - a.X)))
	}
	p.past.take(a)
	p.past.take(b)
	if a.X > p.after {
		return
	}
	p.wall.take(a)
	if b.X > p.after {
		b = a.Add(b.Minus(a).Times((p.after - a.X) / (b.X - a.X)))
	}
	p.wall.take(b)
}
