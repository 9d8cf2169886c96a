package corner

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// turnNode is a cell of turns with what the body's clearances are at its middle,
// and what they are nowhere in it.
type turnNode struct {
	free, in, on             float64
	freeMost, inMost, onMost float64
}

// turnTree looks for a way through all turns around a corner.
type turnTree struct {
	turns.Mesh
	b     *passage.Body
	c     Corner
	nodes []turnNode // of the mesh's cells
	maps  []turns.Alike
	to    turns.Ways // nodes

	motion passage.Motion // that was found
}

// anyTurn decides a corner over all turns.
//
// Method. The corner is the same at all heights, so that a turn is free
// somewhere exactly if the body is low enough and its plan is; the places that
// are free at one turn are joined, and the freest is hard against both outer
// walls. So the body passes exactly if a turn at which it comes in and one at
// which it goes on are joined by free turns. Cells of turns are blocked if no
// turn in them is free. The cheapest way through cells that are not blocked, from
// one where it may come in to one where it may go on, is looked for; on it the
// cells whose middle is not free are cut in eight. If there is no way, no motion
// exists. If the middles of a whole way are free and so are the turns between,
// it is a motion.
func anyTurn(b *passage.Body, c Corner, budget *passage.Budget) passage.Decision {
	t := newTurnTree(b, c)
	if !t.Begin(fronts(b), turns.FirstCuts, budget) {
		return passage.Decision{Outcome: passage.Undecided, RanOut: true}
	}
	for {
		cells, through := t.doubtful()
		if through {
			return passage.Decision{Outcome: passage.Passes, Motion: t.motion}
		}
		if len(cells) == 0 {
			return passage.Decision{Outcome: passage.Cannot, Bound: passage.TurnCover}
		}
		for _, i := range cells {
			if !t.Cut(i, turns.AllSides, budget) {
				return passage.Decision{Outcome: passage.Undecided, RanOut: true}
			}
		}
	}
}

func newTurnTree(b *passage.Body, c Corner) *turnTree {
	t := &turnTree{b: b, c: c, maps: symmetry(b)}
	t.nodes = make([]turnNode, fronts(b))
	t.Price = 1
	t.Glued = [4]turns.Alike{turns.Same, turns.MirrorX, turns.MirrorY, turns.HalfZ}
	if !b.Mirrored() {
		t.Glued = [4]turns.Alike{turns.Same, turns.Same, turns.MirrorY, turns.MirrorY}
	}
	t.Measure = func(_ int, c turns.Cube) bool {
		n := t.look(c)
		t.nodes = append(t.nodes, n)
		return n.freeMost < 0
	}
	return t
}

func fronts(b *passage.Body) int {
	if b.Mirrored() {
		return 1
	}
	return 2
}

// look works out a cell.
func (t *turnTree) look(c turns.Cube) turnNode {
	turn := c.Turn()
	h := Hold(t.b, t.c, turn)
	n := turnNode{free: h.Free, in: h.in, on: h.on}
	r := c.Radius()
	n.freeMost, n.inMost, n.onMost = mostWithin(t.b, t.c, turn, h, r, r)
	return n
}

// cost is that of going through a cell: the more that is in doubt, the more.
func (n *turnNode) cost() float64 {
	if n.free >= 0 {
		return 0.05
	}
	return 1
}

// doubtful are the cells to be cut next, those in doubt on the way of least cost, or there
// is a motion. A cell whose middle is free costs little.
func (t *turnTree) doubtful() (cells []int, through bool) {
	t.to.Clear(len(t.nodes))
	for i := range t.nodes {
		n := &t.nodes[i]
		if t.Cells[i].Kids > 0 || t.Cells[i].Blocked || n.inMost < 0 {
			continue
		}
		cost := n.cost()
		if n.in < 0 {
			cost++
		}
		t.to.Reach(i, -1, cost)
	}
	goesOn := func(i int) bool { return t.nodes[i].onMost >= 0 }
	return t.to.Doubtful(1, goesOn, t.goOn, t.inDoubt)
}

// goOn reaches the cells around the end of a way.
func (t *turnTree) goOn(end turns.WayEnd) {
	for _, j := range t.Cells[end.Node].Near {
		t.to.Reach(j, end.Node, end.Cost+t.nodes[j].cost())
	}
}

// inDoubt are the cells on the way to one of which the middle is not free; if there are none,
// those at which the body is stuck between two. If there are none either, it has a motion.
func (t *turnTree) inDoubt(end int) (cells []int) {
	way := slices.Collect(t.to.Back(end))
	slices.Reverse(way)
	for k, i := range way {
		n := &t.nodes[i]
		if n.free < 0 || k == 0 && n.in < 0 || k == len(way)-1 && n.on < 0 {
			cells = append(cells, i)
		}
	}
	if len(cells) > 0 {
		return cells
	}
	m, stuck := t.follow(way)
	if stuck < 0 {
		t.motion = m
		return nil
	}
	return way[max(0, stuck-1) : stuck+1]
}

// follow checks the turns between the middles of a way; else it says after which
// cell the body is stuck.
func (t *turnTree) follow(way []int) (passage.Motion, int) {
	qs := []space.Quaternion{t.Cells[way[0]].Spread().Unit()}
	margin := min(t.nodes[way[0]].in, t.nodes[way[len(way)-1]].on)
	for k := 1; k < len(way); k++ {
		n := &t.nodes[way[k]]
		q := t.nearest(qs[k-1], t.Cells[way[k]].Spread().Unit())
		least, ok := freeBetween(t.b, t.c, qs[k-1], q, t.nodes[way[k-1]].free, n.free)
		if !ok {
			return passage.Motion{}, k
		}
		margin = min(margin, least)
		qs = append(qs, q)
	}
	m := passage.Motion{Way: passage.Free, Margin: margin, Tilted: true}
	m.Follow = func() []space.Pose { return posesOf(t.b, t.c, between(qs), margin) }
	return m, -1
}

// nearest is the one of the turns alike that is nearest to another.
func (t *turnTree) nearest(q, r space.Quaternion) space.Quaternion {
	best, most := r, -1.0
	for _, m := range t.maps {
		if s := m.Of(r); math.Abs(q.Dot(s)) > most {
			best, most = s, math.Abs(q.Dot(s))
		}
	}
	return best
}

// between are the turns on the way through some, in small steps.
func between(qs []space.Quaternion) []space.Turn {
	out := []space.Turn{qs[0].Turn()}
	for k := 1; k < len(qs); k++ {
		n := int(math.Ceil(qs[k-1].Apart(qs[k]) / passage.TurnStep))
		for i := range n {
			out = append(out, qs[k-1].Between(qs[k], float64(i+1)/float64(n)).Turn())
		}
	}
	return out
}

// shortestTurn is a step, in rad, that is not cut any more.
const shortestTurn = 1e-4

// freeBetween checks the turns from one to another, whose clearances are known:
// over an angle no clearance changes by more than Rate times the body's
// diameter by it. It gives the least clearance seen.
func freeBetween(b *passage.Body, c Corner, q, r space.Quaternion, f, g float64) (float64, bool) {
	angle := q.Apart(r)
	if f+g >= Rate*b.Diameter()*angle {
		return min(f, g), true
	}
	if angle < shortestTurn {
		return 0, false
	}
	mid := q.Between(r, 0.5)
	m := Hold(b, c, mid.Turn()).Free
	if m < 0 {
		return 0, false
	}
	left, ok := freeBetween(b, c, q, mid, f, m)
	if !ok {
		return 0, false
	}
	right, ok := freeBetween(b, c, mid, r, m, g)
	return min(left, right), ok
}

// symmetry is the maps under which a body's turns are alike.
func symmetry(b *passage.Body) []turns.Alike {
	if b.Mirrored() {
		return []turns.Alike{turns.Same, turns.MirrorX, turns.MirrorY, turns.HalfZ}
	}
	return []turns.Alike{turns.Same, turns.MirrorY}
}
