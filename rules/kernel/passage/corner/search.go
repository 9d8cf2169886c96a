package corner

import (
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// search looks for the body's point of least roomAt at a turn.
type search struct {
	b        *passage.Body
	e1, e2   space.Vec
	a, h     float64 // A and B of the body's origin
	least    float64
	at       space.Vec // the point that has it
	section  []space.Point
	boundary *passage.Boundary
}

func (s *search) place(p space.Vec) (a, b float64) { return s.a - p.Dot(s.e1), s.h - p.Dot(s.e2) }

// edge looks along an edge of the body.
func (s *search) edge(p, q space.Vec) {
	a0, b0 := s.place(p)
	a1, b1 := s.place(q)
	if room, t := edgeRoom(a0, b0, a1, b1); room < s.least {
		s.least, s.at = room, p.Add(q.Minus(p).Times(t))
	}
}

// node looks at a node of the boundary, if it may hold less than was found.
func (s *search) node(i int) {
	n := &s.boundary.Nodes[i]
	if n.Second == 0 {
		s.leaf(n)
		return
	}
	first, second := i+1, n.Second
	f, g := s.bound(first), s.bound(second)
	if f > g {
		first, second, f, g = second, first, g, f
	}
	if f < s.least {
		s.node(first)
	}
	if g < s.least {
		s.node(second)
	}
}

// bound is less than the room of any point of a node: that of its centre's
// ruling, less half of its radius.
func (s *search) bound(i int) float64 {
	n := &s.boundary.Nodes[i]
	if s.upright() {
		a := s.a - (n.Centre.X*s.e1.Y + n.Centre.Y*s.e1.Z)
		b := s.h - (n.Centre.X*s.e2.Y + n.Centre.Y*s.e2.Z)
		return roomAt(a, b) - n.Radius/2
	}
	a, b := s.place(space.Vec{X: -s.b.Half(), Y: n.Centre.X, Z: n.Centre.Y})
	room, _ := edgeRoom(a, b, a-2*s.b.Half()*s.e1.X, b-2*s.b.Half()*s.e2.X)
	return room - n.Radius/2
}

// upright reports whether the body's axis is: both its ends are then at one place in
// plan.
func (s *search) upright() bool { return s.e1.X == 0 && s.e2.X == 0 }

// leaf looks at the edges of a leaf at both ends of the body, and at the rulings
// between their corners.
func (s *search) leaf(n *passage.EdgesNode) {
	p := s.section[n.From%len(s.section)]
	for i := n.From; i < n.To; i++ {
		q := s.section[(i+1)%len(s.section)]
		p0, p1 := space.Vec{X: -s.b.Half(), Y: p.X, Z: p.Y}, space.Vec{X: s.b.Half(), Y: p.X, Z: p.Y}
		q0, q1 := space.Vec{X: -s.b.Half(), Y: q.X, Z: q.Y}, space.Vec{X: s.b.Half(), Y: q.X, Z: q.Y}
		s.edge(p0, q0)
		if !s.upright() {
			s.edge(p0, p1)
			s.edge(p1, q1)
		}
		p = q
	}
}
