package frame

import "slices"

// place names a way to move in the words of the model.
type place struct {
	node      int
	direction Direction
}

// numbering gives every way to move its number: first the free ones, the
// unknowns, then those that a support holds, at free+support.
type numbering struct {
	free   int
	places []place  // of each number
	nodes  [][3]int // numbers by node and direction
	ends   [][6]int // numbers by element: x, y, turning at I, then at J
}

// number numbers the ways to move of a checked model, node after node in an order
// that keeps the band narrow. A free end of an element turns by a number of its
// own, next to those of its node.
func number(m *Model) numbering {
	touching := elementsAt(m)
	n := numbering{nodes: make([][3]int, len(m.Nodes)), ends: make([][6]int, len(m.Elements))}
	take := func(node int, d Direction) int {
		n.places = append(n.places, place{node, d})
		return len(n.places) - 1
	}

	held := make([][3]bool, len(m.Nodes))
	for _, s := range m.Supports {
		held[s.Node][s.Direction-1] = true
	}
	for _, node := range order(m, touching) {
		for d := range 3 {
			if !held[node][d] {
				n.nodes[node][d] = take(node, Direction(d+1))
			}
		}
		for _, e := range touching[node] {
			if el := m.Elements[e]; el.FreeI && el.I == node {
				n.ends[e][2] = take(node, Turning)
			} else if el.FreeJ && el.J == node {
				n.ends[e][5] = take(node, Turning)
			}
		}
	}
	n.free = len(n.places)
	for _, s := range m.Supports {
		n.nodes[s.Node][s.Direction-1] = take(s.Node, s.Direction)
	}

	for e, el := range m.Elements {
		own := n.ends[e]
		i, j := n.nodes[el.I], n.nodes[el.J]
		n.ends[e] = [6]int{i[0], i[1], i[2], j[0], j[1], j[2]}
		if el.FreeI {
			n.ends[e][2] = own[2]
		}
		if el.FreeJ {
			n.ends[e][5] = own[5]
		}
	}
	return n
}

// halfBand is the greatest distance between two unknowns of one element. A spring
// couples unknowns of one node only, which are never further apart.
func (n *numbering) halfBand() int {
	widest := 2
	for _, ids := range n.ends {
		low, high := n.free, 0
		for _, id := range ids {
			if id < n.free {
				low, high = min(low, id), max(high, id)
			}
		}
		widest = max(widest, high-low)
	}
	return min(widest, max(n.free-1, 0))
}

// elementsAt lists the elements that end at each node.
func elementsAt(m *Model) [][]int {
	count := make([]int, len(m.Nodes))
	for _, el := range m.Elements {
		count[el.I]++
		count[el.J]++
	}
	at, room := make([][]int, len(m.Nodes)), make([]int, 2*len(m.Elements))
	for node, n := range count {
		at[node], room = room[:0:n], room[n:]
	}
	for e, el := range m.Elements {
		at[el.I] = append(at[el.I], e)
		at[el.J] = append(at[el.J], e)
	}
	return at
}

// order lists the nodes so that neighbours come close to each other: from a node
// with the fewest elements outward, level by level, for each separate part of the
// frame. Source: Cuthill and McKee, Reducing the bandwidth of sparse symmetric
// matrices, 1969 (from memory).
func order(m *Model, touching [][]int) []int {
	fewestFirst := func(a, b int) int { return len(touching[a]) - len(touching[b]) }
	starts := make([]int, len(m.Nodes))
	for i := range starts {
		starts[i] = i
	}
	slices.SortStableFunc(starts, fewestFirst)

	seen := make([]bool, len(m.Nodes))
	list := make([]int, 0, len(m.Nodes))
	visit := func(node int) {
		if !seen[node] {
			seen[node] = true
			list = append(list, node)
		}
	}
	for _, start := range starts {
		next := len(list)
		for visit(start); next < len(list); next++ {
			node, level := list[next], len(list)
			for _, e := range touching[node] {
				visit(m.Elements[e].I + m.Elements[e].J - node)
			}
			slices.SortStableFunc(list[level:], fewestFirst)
		}
	}
	return list
}
