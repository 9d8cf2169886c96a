package car

import (
	"container/heap"
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// hole is an opening with what is behind it: a wall from 0 to deep along X with
// an opening in it, and an inside, which may be endless.
type hole struct {
	y, z     [2]float64 // of the opening
	deep     float64
	inY, inZ [2]float64 // of the inside
	length   float64    // of the inside, from X = 0
}

// entry looks for a way in while the body turns about one direction. Its two
// unknowns are that angle, and how far the foremost point is in. Both places
// across are then intervals, which the parts of the body in the wall and behind
// it leave.
type entry struct {
	b      *passage.Body
	h      hole
	turn   func(angle float64) space.Turn
	from   float64
	dx     float64
	angles int
	depths int
	rows   [][]entryNode // by depth, none where nothing was looked at
	budget *passage.Budget
	keep   float64 // margin that steps are checked to leave
}

// The grid of an entry.
const (
	entryAngles = 72
	entryDepths = 40
	// entrySlack is by how much more than its wrap a body is taken to be near the
	// wall: steps in which no point moves further than that both ways are checked
	// at their ends.
	entrySlack = 0.03
	// entryShort is a step, in m, that is not halved any more.
	entryShort = 0.0015
)

// entryNode is the body at an angle and a depth: the places of its origin across
// that leave it its wrap, and what is left of the narrower one.
type entryNode struct {
	seen   bool
	done   bool
	inside bool
	state
	worst float64
	from  int
}

// state is a pose but for its place across, with the places that are free.
type state struct {
	turn   space.Turn
	x      float64
	y, z   [2]float64
	margin float64
}

// state works out the free places at a turn with the foremost point at depth d.
func (e *entry) state(t space.Turn, d float64) state {
	g := e.b.Wrap()
	front := e.b.Reach(t[0]).Dot(t[0])
	s := state{turn: t, x: d - front}
	p := parts(e.b, t, s.x, -g-entrySlack, e.h.deep+g+entrySlack)
	place := func(wall, past, door, in [2]float64) ([2]float64, float64) {
		lo, hi := math.Inf(-1), math.Inf(1)
		if wall[0] <= wall[1] {
			lo, hi = door[0]+g-wall[0], door[1]-g-wall[1]
		}
		if past[0] <= past[1] {
			lo, hi = max(lo, in[0]+g-past[0]), min(hi, in[1]-g-past[1])
		}
		return [2]float64{lo, hi}, (hi - lo) / 2
	}
	var my, mz float64
	s.y, my = place(p.wall.y, p.past.y, e.h.y, e.h.inY)
	s.z, mz = place(p.wall.z, p.past.z, e.h.z, e.h.inZ)
	s.margin = min(my, mz, e.h.length-g-d)
	return s
}

// shrunk is an interval less the same at both ends.
func shrunk(i [2]float64, by float64) [2]float64 { return [2]float64{i[0] + by, i[1] - by} }

func common(a, b [2]float64) ([2]float64, bool) {
	c := [2]float64{max(a[0], b[0]), min(a[1], b[1])}
	return c, c[0] <= c[1]
}

// step checks the way from one state to another, the places across unchanged:
// no point moves further than moved. Both ends leave half of that around the
// body, or the step is halved. It gives the states on the way.
func (e *entry) step(a, b state) ([]state, bool) {
	moved := math.Abs(a.x-b.x) + a.turn.Apart(b.turn)*e.b.Diameter()/2
	by := moved/2 + e.keep
	if by <= entrySlack && a.margin >= by && b.margin >= by {
		_, oky := common(shrunk(a.y, by), shrunk(b.y, by))
		_, okz := common(shrunk(a.z, by), shrunk(b.z, by))
		if oky && okz {
			return []state{b}, true
		}
	}
	if moved < entryShort || !e.budget.Spend(1) {
		return nil, false
	}
	t := a.turn.Between(b.turn, 0.5)
	x := (a.x + b.x) / 2
	m := e.state(t, x+e.b.Reach(t[0]).Dot(t[0]))
	if m.margin < 0 {
		return nil, false
	}
	first, ok := e.step(a, m)
	if !ok {
		return nil, false
	}
	second, ok := e.step(m, b)
	return append(first, second...), ok
}

// node is that at an angle and a depth.
func (e *entry) node(i int) *entryNode {
	row := &e.rows[i%e.depths]
	if *row == nil {
		*row = make([]entryNode, e.angles)
	}
	return &(*row)[i/e.depths]
}

// way looks for a way from outside to wholly inside: best first, by the least
// margin on the way to a node.
func (e *entry) way() ([]state, float64) {
	e.rows = make([][]entryNode, e.depths)
	open := &turns.WayHeap{}
	reach := func(i, from int, worst float64) {
		n := e.node(i)
		if !n.seen {
			if !e.budget.Spend(1) {
				return
			}
			angle := e.from + 2*math.Pi*float64(i/e.depths)/float64(entryAngles)
			d := e.depth(i % e.depths)
			t := e.turn(angle)
			n.seen, n.state, n.from, n.worst = true, e.state(t, d), -1, none
			n.inside = d-e.b.Width(t[0]) >= e.b.Wrap()+e.h.deep
		}
		w := min(worst, n.margin)
		if w < 0 || n.done || w <= n.worst {
			return
		}
		n.worst, n.from = w, from
		heap.Push(open, turns.WayEnd{Node: i, Cost: -w})
	}
	for a := range e.angles {
		reach(a*e.depths, -1, math.Inf(1))
	}
	for open.Len() > 0 {
		top := heap.Pop(open).(turns.WayEnd)
		n := e.node(top.Node)
		if n.done {
			continue
		}
		if n.from >= 0 {
			if _, ok := e.step(e.node(n.from).state, n.state); !ok {
				n.worst = none
				continue
			}
		}
		n.done = true
		if n.inside {
			return e.followed(e.path(top.Node))
		}
		a, d := top.Node/e.depths, top.Node%e.depths
		for da := -1; da <= 1; da++ {
			for dd := -1; dd <= 1; dd++ {
				if k := d + dd; k >= 0 && k < e.depths && (da != 0 || dd != 0) {
					j := a + da
					if e.angles == entryAngles {
						j = (j + e.angles) % e.angles
					} else if j < 0 || j >= e.angles {
						continue
					}
					reach(j*e.depths+k, top.Node, n.worst)
				}
			}
		}
	}
	return nil, none
}

// deepest is the place furthest in of all that were reached, or -1.
func (e *entry) deepest() int {
	at := -1
	for a := range e.angles {
		for d, row := range e.rows {
			if row == nil || !row[a].done {
				continue
			}
			if i := a*e.depths + d; at < 0 || row[a].x > e.node(at).x {
				at = i
			}
		}
	}
	return at
}

// depth is that of a node's row; the first is outside, the last as far in as
// there is room, or wholly beyond.
func (e *entry) depth(k int) float64 {
	return -e.b.Wrap() - entrySlack - 1e-3 + e.dx*float64(k)
}

// path is the nodes on the way to one.
func (e *entry) path(i int) []state {
	var out []state
	for ; i >= 0; i = e.node(i).from {
		out = append(out, e.node(i).state)
	}
	slices.Reverse(out)
	return out
}

// followed is all the states on a way of which some are given, with the greatest
// margin up to opening.Facing that all its steps leave.
func (e *entry) followed(given []state) ([]state, float64) {
	e.budget = &passage.Budget{Cells: following * len(given)}
	follow := func() []state {
		out := given[:1:1]
		for _, next := range given[1:] {
			more, ok := e.step(out[len(out)-1], next)
			if !ok {
				return nil
			}
			out = append(out, more...)
		}
		return out
	}
	way, kept := follow(), 0.0
	for lo, hi := 0.0, opening.Facing; way != nil && hi-lo > 5*passage.Settled; {
		e.keep = (lo + hi) / 2
		if better := follow(); better != nil {
			way, kept, lo = better, e.keep, e.keep
		} else {
			hi = e.keep
		}
	}
	return way, kept
}

// following is the cells that following a way may take for each state that is
// given: many more than it takes.
const following = 2000

// leaning is a search with a body direction v along a direction of the opening's
// plane all the time, at an angle from across towards up.
func leaning(b *passage.Body, h hole, lean float64, v space.Vec, budget *passage.Budget) *entry {
	e := &entry{b: b, h: h, angles: entryAngles, depths: entryDepths, budget: budget}
	sin, cos := math.Sincos(lean)
	e.turn = func(angle float64) space.Turn {
		t := space.About(v, angle) // v is the third axis, square to the other two
		return space.Turn{t[0], t[2].Times(cos).Add(t[1].Times(sin)), t[2].Times(sin).Minus(t[1].Times(cos))}
	}
	end := min(h.length-b.Wrap(), h.deep+2*b.Diameter())
	e.dx = (end - e.depth(0)) / float64(e.depths-1)
	return e
}

// placed gives each state its places across: those of a step do for both of its
// ends, and between two steps the body moves across.
func placed(states []state) []space.Pose {
	var out []space.Pose
	middle := func(i [2]float64) float64 {
		if math.IsInf(i[0], 0) || math.IsInf(i[1], 0) {
			return min(max(0, i[0]), i[1])
		}
		return (i[0] + i[1]) / 2
	}
	for i := 1; i < len(states); i++ {
		a, b := states[i-1], states[i]
		y, _ := common(a.y, b.y)
		z, _ := common(a.z, b.z)
		for _, s := range [2]state{a, b} {
			out = append(out, space.Pose{Turn: s.turn, At: space.Vec{X: s.x, Y: middle(y), Z: middle(z)}})
		}
	}
	return out
}
