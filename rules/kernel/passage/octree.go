package passage

import (
	"container/heap"
	"math"

	"dryfit/rules/kernel/passage/space"
)

// turnNode is a cell of turns with what the body's clearances are at its middle,
// and what they are nowhere in it.
type turnNode struct {
	free, in, on             float64
	freeMost, inMost, onMost float64
}

// turnTree looks for a way through all turns around a corner.
type turnTree struct {
	mesh
	b     *Body
	c     Corner
	nodes []turnNode // of the mesh's cells
	maps  []alike
}

// firstCuts is how often the cubes are cut in eight before anything is looked
// for: coarser cells block nothing.
const firstCuts = 2

// anyTurn decides a corner over all turns.
//
// Method. The corner is the same at all heights, so that a turn is free
// somewhere exactly if the body is low enough and its plan is; the places that
// are free at one turn are joined, and the freest is hard against both outer
// walls. So the body passes exactly if a turn at which it comes in and one at
// which it goes on are joined by free turns. Cells of turns are blocked if no
// turn in them is free. Ways through cells that are not blocked, from one where
// it may come in to one where it may go on, are looked for; on each the cells
// whose middle is not free are cut in eight. If there is no way, no motion
// exists. If the middles of a whole way are free and so are the turns between,
// it is a motion.
func (b *Body) anyTurn(c Corner, budget *Budget) Decision {
	t := newTurnTree(b, c)
	if !t.begin(fronts(b), firstCuts, budget) {
		return Decision{Outcome: Undecided, RanOut: true}
	}
	for {
		ways := t.ways()
		if len(ways) == 0 {
			return Decision{Outcome: Cannot, Bound: TurnCover}
		}
		cut := map[int]bool{}
		var order []int
		mark := func(i int) {
			if !cut[i] {
				cut[i] = true
				order = append(order, i)
			}
		}
		for _, way := range ways {
			doubtful := false
			for k, i := range way {
				n := &t.nodes[i]
				if n.free < 0 || k == 0 && n.in < 0 || k == len(way)-1 && n.on < 0 {
					doubtful = true
					mark(i)
				}
			}
			if doubtful {
				continue
			}
			m, stuck := t.follow(way)
			if stuck < 0 {
				return Decision{Outcome: Passes, Motion: m}
			}
			mark(way[stuck])
			mark(way[max(0, stuck-1)])
		}
		for _, i := range order {
			if !t.cut(i, allSides, budget) {
				return Decision{Outcome: Undecided, RanOut: true}
			}
		}
	}
}

func newTurnTree(b *Body, c Corner) *turnTree {
	t := &turnTree{b: b, c: c, maps: b.symmetry()}
	t.nodes = make([]turnNode, fronts(b))
	t.price = 1
	t.glued = [4]alike{same, mirrorX, mirrorY, halfZ}
	if !b.mirrored {
		t.glued = [4]alike{same, same, mirrorY, mirrorY}
	}
	t.measure = func(_ int, c Cube) bool {
		n := t.look(c)
		t.nodes = append(t.nodes, n)
		return n.freeMost < 0
	}
	return t
}

func fronts(b *Body) int {
	if b.mirrored {
		return 1
	}
	return 2
}

// look works out a cell.
func (t *turnTree) look(c Cube) turnNode {
	turn := c.Turn()
	h := t.b.Hold(t.c, turn)
	n := turnNode{free: h.Free, in: h.in, on: h.on}
	r := c.Radius()
	n.freeMost, n.inMost, n.onMost = t.b.most(t.c, turn, h, r, r)
	return n
}

// waysAtOnce is how many ways that share no cell are looked for before cells are
// cut.
const waysAtOnce = 6

// ways are some of the shortest ways through cells that are not blocked. A cell
// whose middle is free costs little.
func (t *turnTree) ways() [][]int {
	used := make([]bool, len(t.nodes))
	var out [][]int
	for range waysAtOnce {
		way := t.shortest(used)
		if way == nil {
			break
		}
		for _, i := range way {
			used[i] = true
		}
		out = append(out, way)
	}
	return out
}

// cost is that of going through a cell: the more that is in doubt, the more.
func (n *turnNode) cost() float64 {
	if n.free >= 0 {
		return 0.05
	}
	return 1
}

func (t *turnTree) shortest(used []bool) []int {
	const far = math.MaxFloat64
	to := make([]float64, len(t.nodes))
	from := make([]int, len(t.nodes))
	open := &wayHeap{}
	for i := range t.nodes {
		n := &t.nodes[i]
		to[i] = far
		if t.cells[i].kids == 0 && !t.cells[i].blocked && !used[i] && n.inMost >= 0 {
			to[i], from[i] = n.cost(), -1
			if n.in < 0 {
				to[i]++
			}
			heap.Push(open, wayEnd{i, to[i]})
		}
	}
	for open.Len() > 0 {
		top := heap.Pop(open).(wayEnd)
		if top.cost > to[top.node] {
			continue
		}
		n := &t.nodes[top.node]
		if n.onMost >= 0 {
			var way []int
			for i := top.node; i >= 0; i = from[i] {
				way = append(way, i)
			}
			for a, b := 0, len(way)-1; a < b; a, b = a+1, b-1 {
				way[a], way[b] = way[b], way[a]
			}
			return way
		}
		for _, j := range t.cells[top.node].near {
			if used[j] {
				continue
			}
			if c := top.cost + t.nodes[j].cost(); c < to[j] {
				to[j], from[j] = c, top.node
				heap.Push(open, wayEnd{j, c})
			}
		}
	}
	return nil
}

type wayEnd struct {
	node int
	cost float64
}

type wayHeap []wayEnd

// Len, Less, Swap, Push and Pop make it a heap of container/heap, the cheapest end
// first.
func (h wayHeap) Len() int { return len(h) }

// Swap exchanges two ends.
func (h wayHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Less decides between equal costs by the node, so that the order is the same on
// every machine.
func (h wayHeap) Less(i, j int) bool {
	return h[i].cost < h[j].cost || h[i].cost == h[j].cost && h[i].node < h[j].node
}

// Push appends an end.
func (h *wayHeap) Push(x any) { *h = append(*h, x.(wayEnd)) }

// Pop takes off the last end.
func (h *wayHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// follow checks the turns between the middles of a way; else it says after which
// cell the body is stuck.
func (t *turnTree) follow(way []int) (Motion, int) {
	qs := []space.Quaternion{t.cells[way[0]].spread().Unit()}
	margin := min(t.nodes[way[0]].in, t.nodes[way[len(way)-1]].on)
	for k := 1; k < len(way); k++ {
		n := &t.nodes[way[k]]
		q := t.nearest(qs[k-1], t.cells[way[k]].spread().Unit())
		least, ok := t.b.cornerStep(t.c, qs[k-1], q, t.nodes[way[k-1]].free, n.free)
		if !ok {
			return Motion{}, k
		}
		margin = min(margin, least)
		qs = append(qs, q)
	}
	m := Motion{Way: Free, Margin: margin, Tilted: true}
	m.Follow = func() []space.Pose { return t.b.cornerPoses(t.c, between(qs), margin) }
	return m, -1
}

// nearest is the one of the turns alike that is nearest to another.
func (t *turnTree) nearest(q, r space.Quaternion) space.Quaternion {
	best, most := r, -1.0
	for _, m := range t.maps {
		if s := m.of(r); math.Abs(q.Dot(s)) > most {
			best, most = s, math.Abs(q.Dot(s))
		}
	}
	return best
}

// between are the turns on the way through some, in small steps.
func between(qs []space.Quaternion) []space.Turn {
	out := []space.Turn{qs[0].Turn()}
	for k := 1; k < len(qs); k++ {
		n := int(math.Ceil(qs[k-1].Apart(qs[k]) / TurnStep))
		for i := range n {
			out = append(out, qs[k-1].Between(qs[k], float64(i+1)/float64(n)).Turn())
		}
	}
	return out
}

// shortestTurn is a step, in rad, that is not cut any more.
const shortestTurn = 1e-4

// cornerStep checks the turns from one to another, whose clearances are known:
// over an angle no clearance changes by more than cornerRate times the body's
// diameter by it. It gives the least clearance seen.
func (b *Body) cornerStep(c Corner, q, r space.Quaternion, f, g float64) (float64, bool) {
	angle := q.Apart(r)
	if f+g >= CornerRate*b.diameter*angle {
		return min(f, g), true
	}
	if angle < shortestTurn {
		return 0, false
	}
	mid := q.Between(r, 0.5)
	m := b.Hold(c, mid.Turn()).Free
	if m < 0 {
		return 0, false
	}
	left, ok := b.cornerStep(c, q, mid, f, m)
	if !ok {
		return 0, false
	}
	right, ok := b.cornerStep(c, mid, r, m, g)
	return min(left, right), ok
}
