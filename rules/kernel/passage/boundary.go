package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// boundary is a tree over the section's edges: each node's edges lie within a
// circle, so that a search for the least of something can leave whole nodes out.
type boundary struct{ nodes []edgesNode }

// edgesNode holds the edges from one to another, of which a leaf has few. Its
// second child follows; its first is next to it.
type edgesNode struct {
	centre   space.Point
	radius   float64
	from, to int
	second   int // 0 in a leaf
}

// leafEdges is how many edges a leaf has at most.
const leafEdges = 3

func (b *Body) boundaryTree() *boundary {
	t := &boundary{}
	t.grow(b.section, 0, len(b.section))
	return t
}

func (t *boundary) grow(section []space.Point, from, to int) int {
	n := len(section)
	low, high := space.Point{X: math.Inf(1), Y: math.Inf(1)}, space.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for i := from; i <= to; i++ {
		p := section[i%n]
		low = space.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = space.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	node := edgesNode{centre: space.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}, from: from, to: to}
	for i := from; i <= to; i++ {
		p := section[i%n].Minus(node.centre)
		node.radius = max(node.radius, math.Hypot(p.X, p.Y))
	}
	at := len(t.nodes)
	t.nodes = append(t.nodes, node)
	if to-from > leafEdges {
		mid := (from + to) / 2
		t.grow(section, from, mid)
		t.nodes[at].second = t.grow(section, mid, to)
	}
	return at
}

// cornerRoom is the greatest distance G that a point can keep from all walls of
// a corner if the body is that far from both outer walls: A and B are how far
// the inner corner's two faces are beyond the point, were the body hard against
// the outer walls. The faces are then A − G and B − G beyond it, so that G is
//
//	A/2 for A ≥ 2B,  B/2 for B ≥ 2A,  A + B − √(2AB) between.
//
// Below nothing the point is in the wall. G grows with A and with B, together at
// a rate of no more than 2 − √2 and each alone of no more than a half. Derived.
func cornerRoom(a, b float64) float64 {
	switch {
	case a >= 2*b:
		return a / 2
	case b >= 2*a:
		return b / 2
	default:
		return a + b - math.Sqrt(2*a*b)
	}
}

// CornerRate is how fast cornerRoom grows at most if A and B grow together.
const CornerRate = 2 - math.Sqrt2

// edgeRoom is the least cornerRoom on the way from one point to another, and
// where on it. It falls and rises once. On a line whose normal (n1, n2), both
// positive, is d from the origin the least is d/(1 + n1 + n2), at the place that
// is nearest to the corner of the faces; derived.
func edgeRoom(a0, b0, a1, b1 float64) (room, at float64) {
	room = cornerRoom(a0, b0)
	if r := cornerRoom(a1, b1); r < room {
		room, at = r, 1
	}
	da, db := a1-a0, b1-b0
	if da*db >= 0 {
		return room, at
	}
	l := math.Sqrt(da*da + db*db)
	n1, n2 := math.Abs(db)/l, math.Abs(da)/l
	d := n1*a0 + n2*b0
	g := d / (1 + n1 + n2)
	x, y := g*(1+n1), g*(1+n2)
	if d < 0 { // in the wall: where both faces are as far
		x = d / (n1 + n2)
		g, y = x/2, x
	}
	if t := ((x-a0)*da + (y-b0)*db) / (l * l); t > 0 && t < 1 && g < room {
		return g, t
	}
	return room, at
}
