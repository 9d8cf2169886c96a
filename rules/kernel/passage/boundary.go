package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Boundary is a tree over the section's edges: each node's edges lie within a
// circle, so that a search for the least of something can leave whole nodes out.
type Boundary struct{ Nodes []EdgesNode }

// EdgesNode holds the edges from one to another, of which a leaf has few. Its
// second child follows; its first is next to it.
type EdgesNode struct {
	Centre   space.Point
	Radius   float64 // in m
	From, To int     // of the corners of the section, round and round
	Second   int     // its index, or 0 in a leaf
}

// leafEdges is how many edges a leaf has at most.
const leafEdges = 3

func (b *Body) boundaryTree() *Boundary {
	t := &Boundary{}
	t.grow(b.section, 0, len(b.section))
	return t
}

func (t *Boundary) grow(section []space.Point, from, to int) int {
	n := len(section)
	low, high := space.Point{X: math.Inf(1), Y: math.Inf(1)}, space.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for i := from; i <= to; i++ {
		p := section[i%n]
		low = space.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = space.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	node := EdgesNode{Centre: space.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}, From: from, To: to}
	for i := from; i <= to; i++ {
		p := section[i%n].Minus(node.Centre)
		node.Radius = max(node.Radius, space.Dot(p, p))
	}
	node.Radius = math.Sqrt(node.Radius)
	at := len(t.Nodes)
	t.Nodes = append(t.Nodes, node)
	if to-from > leafEdges {
		mid := (from + to) / 2
		t.grow(section, from, mid)
		t.Nodes[at].Second = t.grow(section, mid, to)
	}
	return at
}
