package car

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/turns"
)

// fibre is a cell of turns with the depths that the body may have at them.
type fibre struct {
	depth float64 // of one of its steps
	open  []step  // that are not blocked
	first int     // of its runs
	runs  int
	// widest is the side of the cell over which the body swings furthest.
	widest int
	small  bool // it swings too little for more cuts to tell much
}

// step is an interval of depths of a cell.
type step struct {
	index int32
	most  float64 // that may be left in it
	at    float64 // that is left in its middle, as far as it is known; +Inf where it is all before the door
}

// run is an interval of depths of a cell that is not blocked.
type run struct {
	cell      int
	low, high float64
	in, out   bool
	free      bool    // at the middle turn some depth is free
	most      float64 // that may be left at any of its depths
	best      float64 // the depth of that
	weight    float64 // how nearly it is blocked, up to 1
}

// inTree looks for a way into a car through cells of turns and depths.
type inTree struct {
	turns.Mesh
	b            *passage.Body
	c            Car
	probes       probes
	far          float64 // of a probe from the origin
	fibres       []fibre
	all          []run
	cell, middle turns.Seen
	kinds        []int8
	slopes       slopes
	swings       float64    // of the cell that is looked at
	rooms        int        // that were worked out and not paid
	depths       depths     // in which a way is looked for
	ways         turns.Ways // to runs
}

// How the search goes.
const (
	firstDepths = 4
	// Before ways are looked for again so many cells are cut, or this share of all.
	leastCuts = 12
	cutShare  = 16
	// roomsACell is how many intervals cost what one cell of a budget does; a cell costs
	// what so many do besides its own.
	roomsACell  = 60
	roomsOfCell = 24
	// smallSwing is how far, in m, the body swings over a cell that is not cut.
	smallSwing = 0.012
	// nearby is the share of a cell about its middle in which it is asked whether the
	// body is free: at the middle itself an edge may lie along the door by chance.
	nearby = 0.125
	// freeCost is that of going through a run that is free.
	freeCost = 0.01
)

func newInTree(b *passage.Body, c Car) *inTree {
	off := min(turns.ProbeCoarse, b.Wrap()/2)
	b = b.Coarse(off).Wrapped(b.Wrap() - off)
	t := &inTree{b: b, c: c, probes: newProbes(b)}
	n := len(t.probes.at)
	t.cell, t.middle, t.kinds = make(turns.Seen, n), make(turns.Seen, n), make([]int8, n)
	for _, p := range t.probes.at {
		t.far = max(t.far, math.Sqrt(p.Square))
	}
	t.depths = depths{-t.far - 0.01, c.Length + t.far}
	g := b.Wrap()
	t.slopes = slopes{
		of:     make([][3]turns.Slope, n),
		length: c.Length - g,
		door:   [2][2]float64{{c.Left + g, c.Left + c.DoorWidth - g}, {c.Sill + g, c.Sill + c.DoorHeight - g}},
		inside: [2][2]float64{{g, c.Width - g}, {g, c.Height - g}},
	}
	t.Measure = t.look
	t.Glued = [4]turns.Alike{turns.Same, turns.Same, turns.Same, turns.Same}
	if b.Mirrored() {
		t.Glued = [4]turns.Alike{turns.Same, turns.Same, turns.HalfZ, turns.HalfZ}
	}
	return t
}

// enclosed proves, if it can, that no motion takes the body into a car: that between
// the ends of an interval of depths, or from its beginning to where it is wholly
// inside, it can't go.
//
// Method. A cell is a cell of turns with intervals of how far the body's origin
// is in. An interval is blocked if at no turn and depth of it there is a place
// across at which what is past the door is between the walls, and what is in the
// door between its sides. If no way through cells that are not blocked leads from
// wholly inside to wholly outside, no motion does. On each way that there is,
// the cell that is most nearly blocked is cut in two across the side over which the
// body swings furthest, and its depths in two where they are as coarse as that.
//
// The body has fewer corners than the true one and is within a distance of it,
// which is taken off the wrap. Derived.
func enclosed(b *passage.Body, c Car, within depths, budget *passage.Budget) (proven, ranOut bool) {
	if budget.Spent() {
		return false, true
	}
	t := newInTree(b, c)
	t.depths = depths{max(t.depths[0], within[0]), min(t.depths[1], within[1])}
	whole, fronts := fibre{depth: (t.depths[1] - t.depths[0]) / firstDepths}, 4
	for i := range firstDepths {
		whole.open = append(whole.open, step{index: int32(i), most: math.Inf(1)})
	}
	if t.b.Mirrored() {
		fronts = 2
	}
	for range fronts {
		t.fibres = append(t.fibres, whole)
	}
	if !t.Begin(fronts, turns.FirstCuts, budget) {
		return false, true
	}
	for {
		cells, through := t.doubtful()
		if len(cells) == 0 || through {
			return !through, through
		}
		for _, i := range cells {
			if !t.Cut(i, t.fibres[i].widest, budget) || !budget.Spend(t.rooms/roomsACell) {
				return false, true
			}
			t.rooms %= roomsACell
		}
	}
}

// low is the first depth; of all, one at which all of the body is outside.
func (t *inTree) low() float64 { return t.depths[0] }

// doubtful are the cells to be cut next: of the ways of least cost from wholly inside
// to wholly outside, of each the one that is most nearly blocked. There are none
// exactly if there is no way. Of a way on which nothing is in doubt, it is all; where
// those are too small to be cut, there is a way through.
func (t *inTree) doubtful() (cells []int, through bool) {
	t.ways.Clear(len(t.all))
	for i := range t.all {
		if r := &t.all[i]; t.Cells[r.cell].Kids == 0 && r.in {
			t.ways.Reach(i, -1, r.cost())
		}
	}
	outside := func(i int) bool { return t.all[i].out }
	return t.ways.Doubtful(max(leastCuts, len(t.Cells)/cutShare), outside, t.goOn, t.weakest)
}

// goOn reaches the runs beside the end of a way.
func (t *inTree) goOn(end turns.WayEnd) {
	t.beside(end.Node, func(k int) { t.ways.Reach(k, end.Node, end.Cost+t.all[k].cost()) })
}

// weakest is the cell that is most nearly blocked on the way to a run, or all of them.
func (t *inTree) weakest(end int) (cells []int) {
	best := -1
	for i := range t.ways.Back(end) {
		if c := t.all[i].cell; !t.fibres[c].small {
			cells = append(cells, c)
		}
		if !t.all[i].free && (best < 0 || t.all[i].weight > t.all[best].weight) {
			best = i
		}
	}
	if best >= 0 {
		return []int{t.all[best].cell}
	}
	return cells
}

// see works out the probes at the middle of a cell and over all of it.
func (t *inTree) see(c turns.Cube) (out ends) {
	out = ends{front: turns.Bounds{Low: none, High: none}, rear: turns.Bounds{Low: math.Inf(1), High: math.Inf(1)}}
	turn, a, away := c.Turn(), c.Radius(), c.Swings()
	for i, v := range t.probes.at {
		far := math.Sqrt(v.Square)
		for k, e := range turn {
			m := v.Dot(e)
			l := away.Slope(k, v.Vec, m, far)
			t.slopes.of[i][k] = l
			t.cell[i][k], t.middle[i][k] = turns.TurnBounds(a, m, v.Square).Both(l.Bounds()), turns.Bounds{Low: m, High: m}
		}
		x := t.cell[i][0]
		out.front = turns.Bounds{Low: max(out.front.Low, x.Low), High: max(out.front.High, x.High)}
		out.rear = turns.Bounds{Low: min(out.rear.Low, x.Low), High: min(out.rear.High, x.High)}
	}
	return out
}

// ends are how far the foremost probe and the rearmost one are ahead of the origin.
type ends struct{ front, rear turns.Bounds }

// look works out a new cell.
func (t *inTree) look(parent int, c turns.Cube) bool {
	t.rooms += roomsOfCell
	e := t.see(c)
	widest, swing := t.swing(c)
	t.swings = swing
	f := fibre{depth: t.fibres[parent].depth, first: len(t.all), widest: widest, small: swing < smallSwing}
	open := t.fibres[parent].open
	if f.depth > swing/2 {
		f.depth /= 2
		open = halved(open)
	}
	for _, k := range open {
		// What of it is left in the middle the cut cannot have taken.
		if k.at -= 2*swing + f.depth; k.at < 0 {
			lo := t.low() + float64(k.index)*f.depth
			if k.most, k.at = t.most(e, lo, lo+f.depth); k.most < 0 {
				continue
			}
		}
		t.keep(&f, k, e.rear.High)
	}
	t.weigh(&f, swing)
	t.fibres = append(t.fibres, f)
	return len(f.open) == 0
}

// halved are steps cut in two.
func halved(steps []step) []step {
	out := make([]step, 0, 2*len(steps))
	for _, k := range steps {
		k.index *= 2
		out = append(out, k)
		k.index++
		out = append(out, k)
	}
	return out
}

// most is what is left at most in the cell that is seen, at depths from lo to hi, and
// what is left in the middle of it.
func (t *inTree) most(e ends, lo, hi float64) (most, at float64) {
	switch {
	case hi+e.front.High <= 0: // all of it is before the door
		return math.Inf(1), math.Inf(1)
	case lo+e.front.Low > t.c.Length-t.b.Wrap():
		return none, none
	}
	return t.roomInCell(lo, hi)
}

// keep adds a step that is not blocked to the runs of the cell that is looked at.
func (t *inTree) keep(f *fibre, k step, rear float64) {
	lo := t.low() + float64(k.index)*f.depth
	if f.runs == 0 || t.all[len(t.all)-1].high < lo-f.depth/2 {
		t.all = append(t.all, run{cell: len(t.fibres), low: lo, most: none})
		f.runs++
	}
	f.open = append(f.open, k)
	r := &t.all[len(t.all)-1]
	if k.most > r.most {
		r.most, r.best = k.most, lo+f.depth/2
	}
	r.high = lo + f.depth
	r.out = r.out || k.index == 0
	r.in = r.in || r.high+rear >= t.b.Wrap() || r.high > t.depths[1]-f.depth/2
}

// weigh finds how nearly the runs of the cell that is looked at are blocked.
func (t *inTree) weigh(f *fibre, swing float64) {
	near := (f.depth + swing) * nearby
	for i := f.first; i < len(t.all); i++ {
		r := &t.all[i]
		if r.free = f.small; r.free {
			continue
		}
		mid := (r.low + r.high) / 2
		at := t.room(t.middle, r.best-near, r.best+near)
		if at < 0 && math.Abs(mid-r.best) > near {
			at = max(at, t.room(t.middle, mid-near, mid+near))
		}
		if r.free = at >= 0; !r.free {
			r.weight = -at / (r.most - at)
		}
	}
}

// swing is the side of a cell over which the body swings furthest, as a bit, and how
// far it does over all of them.
func (t *inTree) swing(c turns.Cube) (widest int, all float64) {
	s := c.Swings()
	var by [3]float64
	for _, v := range t.probes.at {
		for _, axis := range s.Of {
			for i, d := range axis {
				by[i] = max(by[i], math.Abs(v.Dot(d)))
			}
		}
	}
	side := 0
	for i, d := range by {
		all += d
		if d > by[side] {
			side = i
		}
	}
	return 1 << side, all
}

// room is what is left at most of what is seen so at depths from lo to hi.
func (t *inTree) room(s turns.Seen, lo, hi float64) float64 {
	p := t.part(s, lo, hi)
	return t.left(&p)
}

// part is the body parted at depths from lo to hi.
func (t *inTree) part(s turns.Seen, lo, hi float64) parted {
	t.rooms++
	empty := turns.Reached{High: none, Low: math.Inf(1)}
	p := parted{Seen: s, lo: lo, hi: hi, kinds: t.kinds, door: [2]turns.Reached{empty, empty}, past: [2]turns.Reached{empty, empty}}
	p.sort()
	for _, row := range t.probes.rows {
		p.row(row)
	}
	return p
}

// left is what is left of the parts that were taken.
func (t *inTree) left(p *parted) float64 {
	g, c := t.b.Wrap(), t.c
	return min(left(p.door[0], p.past[0], c.Left+g, c.Left+c.DoorWidth-g, g, c.Width-g),
		left(p.door[1], p.past[1], c.Sill+g, c.Sill+c.DoorHeight-g, g, c.Height-g))
}

// cost is that of going through a run: the more that is in doubt, the more.
func (r *run) cost() float64 { return freeCost + r.weight }

// beside gives the runs of the cells around that share a depth with one.
func (t *inTree) beside(i int, take func(k int)) {
	r := &t.all[i]
	for _, j := range t.Cells[r.cell].Near {
		f := &t.fibres[j]
		for k := f.first; k < f.first+f.runs; k++ {
			if s := &t.all[k]; s.low <= r.high && s.high >= r.low {
				take(k)
			}
		}
	}
}
