package passage

import (
	"container/heap"
	"math"
	"slices"
)

// fibre is a cell of turns with the depths that the body may have at them.
type fibre struct {
	depth float64 // of one of its steps
	open  []int32 // steps that are not blocked
	first int     // of its runs
	runs  int
}

// run is an interval of depths of a cell that is not blocked.
type run struct {
	cell      int
	low, high float64
	in, out   bool
	free      bool // at the middle turn some depth is free
}

// inTree looks for a way into a car through cells of turns and depths.
type inTree struct {
	mesh
	b            *Body
	c            Car
	probes       probes
	far          float64 // of a probe from the origin
	fibres       []fibre
	all          []run
	cell, middle seen
}

// The beginning of the search, and how many ways are looked for before cells are
// cut.
const (
	firstDepths = 4
	depthWays   = 12
	depthPrice  = 2
)

func newInTree(b *Body, c Car) *inTree {
	off := min(probeCoarse, b.wrap/2)
	b = b.coarse(off).Wrapped(b.wrap - off)
	t := &inTree{b: b, c: c, probes: b.probes()}
	n := len(t.probes.at)
	t.cell, t.middle = make(seen, n), make(seen, n)
	for _, p := range t.probes.at {
		t.far = max(t.far, math.Sqrt(p.square))
	}
	t.measure, t.price = t.look, depthPrice
	t.glued = [4]alike{same, same, same, same}
	if b.mirrored {
		t.glued = [4]alike{same, same, halfZ, halfZ}
	}
	return t
}

// enclosed proves, if it can, that no motion takes the body into a car.
//
// Method. A cell is a cell of turns with intervals of how far the body's origin
// is in. An interval is blocked if at no turn and depth of it there is a place
// across at which what is past the door is between the walls, and what is in the
// door between its sides. If no way through cells that are not blocked leads from
// wholly inside to wholly outside, no motion does. On the ways that there are,
// cells whose middle is not free are cut in eight, and their depths in two.
//
// The body has fewer corners than the true one and is within a distance of it,
// which is taken off the wrap. Derived.
func (b *Body) enclosed(c Car, budget *Budget) (proven, ranOut bool) {
	if budget.spent() {
		return false, true
	}
	t := newInTree(b, c)
	whole, fronts := fibre{depth: (c.Length + t.far - t.low()) / firstDepths}, 4
	for i := range firstDepths {
		whole.open = append(whole.open, int32(i))
	}
	if t.b.mirrored {
		fronts = 2
	}
	for range fronts {
		t.fibres = append(t.fibres, whole)
	}
	if !t.begin(fronts, firstCuts, budget) {
		return false, true
	}
	for ways := t.ways(); len(ways) > 0; ways = t.ways() {
		for _, i := range t.doubtful(ways) {
			if !t.cut(i, budget) {
				return false, true
			}
		}
	}
	return true, false
}

// low is a depth of the origin at which all of the body is outside.
func (t *inTree) low() float64 { return -t.far - 0.01 }

// doubtful are the cells of some ways whose middles are not free, and all of a way
// whose middles are.
func (t *inTree) doubtful(ways [][]int) (cells []int) {
	have := map[int]bool{}
	mark := func(i int) {
		if c := t.all[i].cell; !have[c] {
			have[c] = true
			cells = append(cells, c)
		}
	}
	for _, way := range ways {
		doubt := slices.ContainsFunc(way, func(i int) bool { return !t.all[i].free })
		for _, i := range way {
			if !doubt || !t.all[i].free {
				mark(i)
			}
		}
	}
	return cells
}

// see works out the probes at a turn and within an angle of it.
func (t *inTree) see(turn Turn, a angle) (front, rear float64) {
	front, rear = none, math.Inf(1)
	for i, v := range t.probes.at {
		for k, e := range turn {
			m := v.dot(e)
			t.cell[i][k], t.middle[i][k] = a.bounds(m, v.square), bounds{m, m}
		}
		front, rear = max(front, t.cell[i][0].low), min(rear, t.cell[i][0].high)
	}
	return front, rear
}

// look works out a new cell.
func (t *inTree) look(parent int, c cube) bool {
	p := &t.fibres[parent]
	front, rear := t.see(c.turn(), c.radius())
	f := fibre{depth: p.depth / 2, first: len(t.all)}
	for _, k := range p.open {
		for _, k := range [2]int32{2 * k, 2*k + 1} {
			lo := t.low() + float64(k)*f.depth
			hi := lo + f.depth
			if k > 0 && (lo+front > t.c.Length-t.b.wrap || t.blocked(t.cell, lo, hi)) {
				continue
			}
			if f.runs == 0 || t.all[len(t.all)-1].high < lo-f.depth/2 {
				t.all = append(t.all, run{cell: len(t.cells), low: lo})
				f.runs++
			}
			f.open = append(f.open, k)
			r := &t.all[len(t.all)-1]
			r.high, r.out, r.in = hi, r.out || k == 0, r.in || hi+rear >= t.b.wrap
		}
	}
	for i := f.first; i < len(t.all); i++ {
		r := &t.all[i]
		mid := (r.low + r.high) / 2
		r.free = r.out || !t.blocked(t.middle, mid, mid)
	}
	t.fibres = append(t.fibres, f)
	return len(f.open) == 0
}

// blocked reports whether nothing that is seen so is free at depths from lo to hi.
func (t *inTree) blocked(s seen, lo, hi float64) bool {
	empty := reached{none, math.Inf(1)}
	p := parted{seen: s, lo: lo, hi: hi, door: [2]reached{empty, empty}, past: [2]reached{empty, empty}}
	g, c := t.b.wrap, t.c
	for _, row := range t.probes.rows {
		p.row(row)
	}
	return left(p.door[0], p.past[0], c.Left+g, c.Left+c.DoorWidth-g, g, c.Width-g) < 0 ||
		left(p.door[1], p.past[1], c.Sill+g, c.Sill+c.DoorHeight-g, g, c.Height-g) < 0
}

// ways are some of the shortest ways out that share nothing.
func (t *inTree) ways() [][]int {
	used := make([]bool, len(t.all))
	var out [][]int
	for range depthWays {
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

// cost is that of going through a run: the more that is in doubt, the more.
func (r *run) cost() float64 {
	if r.free {
		return 0.05
	}
	return 1
}

// shortest is the way of least cost from wholly inside to wholly outside.
func (t *inTree) shortest(used []bool) []int {
	const far = math.MaxFloat64
	to := make([]float64, len(t.all))
	from := make([]int, len(t.all))
	open := &wayHeap{}
	for i := range t.all {
		r := &t.all[i]
		to[i] = far
		if t.cells[r.cell].kids == 0 && !used[i] && r.in {
			to[i], from[i] = r.cost(), -1
			heap.Push(open, wayEnd{i, to[i]})
		}
	}
	for open.Len() > 0 {
		top := heap.Pop(open).(wayEnd)
		if top.cost > to[top.node] {
			continue
		}
		if t.all[top.node].out {
			var way []int
			for i := top.node; i >= 0; i = from[i] {
				way = append(way, i)
			}
			return way
		}
		t.beside(top.node, func(k int) {
			if c := top.cost + t.all[k].cost(); !used[k] && c < to[k] {
				to[k], from[k] = c, top.node
				heap.Push(open, wayEnd{k, c})
			}
		})
	}
	return nil
}

// beside gives the runs of the cells around that share a depth with one.
func (t *inTree) beside(i int, take func(k int)) {
	r := &t.all[i]
	for _, j := range t.cells[r.cell].near {
		f := &t.fibres[j]
		for k := f.first; k < f.first+f.runs; k++ {
			if s := &t.all[k]; s.low <= r.high && s.high >= r.low {
				take(k)
			}
		}
	}
}
