package opening

import (
	"math"
	"slices"
	"sync"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// knot is a place on the way of a section through a wall.
type knot struct {
	s, turn float64
	within
}

// The grid on which a way is looked for: stations along the middle line, and
// angles off its chord.
const threadStations = 72

var threadTurns = [...]float64{-0.32, -0.24, -0.17, -0.12, -0.08, -0.05, -0.025, 0, 0.025, 0.05, 0.08, 0.12, 0.17, 0.24, 0.32}

// Thread pushes any band along its own middle line through an opening. False where
// there is no such way, or no budget for it, which proves nothing.
//
// Method. In the plane of the section the wall is a slab; at each place along the
// middle line and angle off its chord the part of the section in the slab takes up
// some width. The way from wholly before to wholly beyond whose greatest width is
// least is looked for on a grid; then its angles are settled where it is wide, and
// its steps are halved until two neighbours together take up no more than the
// widest place. The slab is thicker by the wrap, and the width with the wrap by the
// length goes into the opening as the theorem of Carver has it. Derived.
//
// The margin, in m, is that from the sides of the opening; all that is outside of
// the wall keeps the same from its faces, up to Facing.
func Thread(b *passage.Body, d Door, budget *passage.Budget) (passage.Motion, bool) {
	if !budget.Spend(threading) {
		return passage.Motion{}, false
	}
	m, ok := threadKeeping(b, Facing, d)
	if ok && m.Margin >= Facing {
		return m, true
	}
	m, ok = threadKeeping(b, 0, d)
	if !ok || m.Margin < 0 {
		return m, ok
	}
	lo, hi := 0.0, Facing
	m.Margin = 0
	for hi-lo > passage.Settled {
		mid := (lo + hi) / 2
		if n, ok := threadKeeping(b, mid, d); ok && n.Margin >= mid {
			lo, m = mid, n
			m.Margin = mid
		} else {
			hi = mid
		}
	}
	return m, true
}

// threading is what following a middle line costs, in cells of the covers.
const threading = 500

// Facing is the most that a margin says about the faces of a wall beside an
// opening, in m.
const Facing = 0.02

// threadKeeping is Thread with a distance over the wrap kept from the faces.
func threadKeeping(b *passage.Body, off float64, d Door) (passage.Motion, bool) {
	t := newTrack(b, d.Wall+2*off)
	if t == nil {
		return passage.Motion{}, false
	}
	fits := func(need float64) Fit {
		return d.fit(need+2*b.Wrap(), 2*b.Half()+2*b.Wrap())
	}
	w := t.least(func(need float64) bool { return fits(need).Margin >= off })
	if w.way == nil {
		return passage.Motion{}, false
	}
	fit := fits(w.need)
	m := passage.Motion{Way: passage.Threaded3, Margin: fit.Margin, Angle: fit.Angle, Depth: max(0, w.depth+2*b.Wrap()), Side: w.side + 2*b.Wrap()}
	m.Follow = func() []space.Pose { return t.poses(w.way, w.need+2*b.Wrap(), fit.Angle, d.Width, d.Height, d.Wall) }
	return m, true
}

// least is the way that needs least width. Where the way along the chord of the line at
// every place is enough, no other is looked for.
func (t *track) least(enough func(need float64) bool) threadWay {
	for _, bent := range [2]bool{false, true} {
		if w := knownOf(t.b).threads.way(t, bent); w.way != nil && (bent || enough(w.need)) {
			return w
		}
	}
	return threadWay{}
}

// threads are the ways of a body along its middle line that were looked for: none
// depends on the opening's width or height.
type threads struct {
	mu sync.Mutex
	of map[threadKey]threadWay
}

// threadKey is half of a wall's thickness, and whether ways off the line's chord are
// looked for.
type threadKey struct {
	half float64
	bent bool
}

// threadWay is a way with the width that it needs, and the free depth on each side of the
// wall and width beside the opening that it takes, all of the bare body.
type threadWay struct {
	way               []knot
	need, depth, side float64
}

// way is the one that needs least width.
func (c *threads) way(t *track, bent bool) threadWay {
	c.mu.Lock()
	defer c.mu.Unlock()
	key := threadKey{t.half, bent}
	had, ok := c.of[key]
	if !ok {
		turns := threadTurns[7:8]
		if bent {
			turns = threadTurns[:]
		}
		if had.way = t.coarse(turns); had.way != nil {
			had.way, had.need = t.refine(had.way)
			had.depth, had.side = t.room(had.way)
		}
		if c.of == nil || len(c.of) >= mostThreads {
			c.of = map[threadKey]threadWay{}
		}
		c.of[key] = had
	}
	return had
}

// mostThreads is how many ways are kept: a margin up to Facing is halved so often, for
// some thicknesses of wall.
const mostThreads = 200

func (t *track) knot(s, turn float64) knot {
	return knot{s, turn, inSlab(t.b, t.line(s, turn), t.half)}
}

// gridKnot is a knot of the grid with the least greatest width of a way to it.
type gridKnot struct {
	knot
	worst     float64
	row, turn int // where the way comes from; -1 at its beginning
}

// come takes the way through a neighbour, if it is better.
func (k *gridKnot) come(from *gridKnot, row, turn int) {
	if w := max(from.worst, from.union(k.within).width()); w < k.worst {
		k.worst, k.row, k.turn = w, row, turn
	}
}

// coarse is the way of least greatest width on the grid, from the line's end to
// its beginning. It may change its angle at a station, and goes on to the next
// at a neighbouring angle.
func (t *track) coarse(turns []float64) []knot {
	n := len(turns)
	total := t.length[len(t.length)-1]
	over := t.half + 0.05*total
	rows := make([][]gridKnot, threadStations+1)
	best, bestAt := math.Inf(1), [2]int{}
	for i := range rows {
		s := total + over - (total+2*over)*float64(i)/threadStations
		row := make([]gridKnot, n)
		rows[i] = row
		for j, turn := range turns {
			k := gridKnot{knot: t.knot(s, turn), worst: math.Inf(1), row: -1}
			if k.before {
				k.worst = 0
			}
			for d := max(0, j-1); d <= min(n-1, j+1) && i > 0; d++ {
				k.come(&rows[i-1][d], i-1, d)
			}
			row[j] = k
		}
		for j := 1; j < n; j++ {
			row[j].come(&row[j-1], i, j-1)
		}
		for j := n - 2; j >= 0; j-- {
			row[j].come(&row[j+1], i, j+1)
		}
		for j := range row {
			if row[j].beyond && row[j].worst < best {
				best, bestAt = row[j].worst, [2]int{i, j}
			}
		}
	}
	if math.IsInf(best, 1) {
		return nil
	}
	var way []knot
	for i, j := bestAt[0], bestAt[1]; i >= 0; {
		k := &rows[i][j]
		way = append(way, k.knot)
		i, j = k.row, k.turn
	}
	slices.Reverse(way)
	return way
}

// The refinement of a way: a knot is settled within an angle, where it is wider than a
// share of the widest. A step that comes near the widest is halved until nothing moves
// further than stepSmooth in it, and down to stepLeast where more of the section comes in
// at the wall's faces than rises with bendRise of what moves: a corner that is in the wall
// between two knots alone.
const (
	settleTurn  = 0.04
	settleShare = 0.7
	stepSmooth  = 10e-3
	stepLeast   = 1e-4
	bendRise    = 0.5
)

// stepped is the diameter of a body, in m, up to which those lengths hold; for a larger one
// they grow in proportion.
const stepped = 10

// coarser is how much longer the steps of the body are.
func (t *track) coarser() float64 { return max(1, t.b.Diameter()/stepped) }

// settlings is how deep between two knots a further one is settled.
const settlings = 24

// refine settles a way's angles where it is wide and halves its steps, until what takes
// up most between two neighbours and half way is the width that it gives.
func (t *track) refine(way []knot) ([]knot, float64) {
	need := widestKnot(way)
	for i, k := range way {
		if k.width() > settleShare*need {
			way[i] = t.settled(k)
		}
	}
	need = widestKnot(way)
	out := way[:1:1]
	var halve func(a, c knot, depth int)
	halve = func(a, c knot, depth int) {
		m := t.knot((a.s+c.s)/2, (a.turn+c.turn)/2)
		if m.width() > need {
			// A settled knot need not lie between the two: steps end since it is not
			// settled again and again.
			if s := t.settled(m); depth < settlings && s.width() < m.width() {
				m = s
			}
			need = max(need, m.width())
		}
		moved := t.moved(a, c)
		u := a.union(m.within).union(c.within).width()
		if u <= need+passage.Settled && t.smooth(m, u, need, moved) || moved < stepLeast*t.coarser() {
			need = max(need, u)
			out = append(out, m, c)
			return
		}
		halve(a, m, depth+1)
		halve(m, c, depth+1)
	}
	for _, k := range way[1:] {
		halve(out[len(out)-1], k, 0)
	}
	return out, need
}

// smooth reports whether between two knots, m half way, nothing takes up more than need:
// what is in the wall there is in a wall at m that is thicker by what moves, and has moved
// by as much.
func (t *track) smooth(m knot, u, need, moved float64) bool {
	w := t.thicker(m.s, m.turn, moved).width()
	return w+2*moved <= need || moved <= stepSmooth*t.coarser() && w <= u+bendRise*moved
}

// thicker measures a thicker wall at a place: what is not far beside what is in
// the wall moves in and out of it no faster than it grows, and what is far shows
// before it is in.
func (t *track) thicker(s, turn, by float64) within { return inSlab(t.b, t.line(s, turn), t.half+by) }

// moved is no less than how far a point of the section is from the wall's line
// half way between two knots, against what it is at either.
func (t *track) moved(a, c knot) float64 {
	f, g := t.line(a.s, a.turn).forward, t.line(c.s, c.turn).forward
	return 0.5*math.Abs(a.s-c.s) + 0.51*math.Hypot(f.X-g.X, f.Y-g.Y)*math.Hypot(t.b.Wide(), t.b.High())
}

func widestKnot(way []knot) float64 {
	w := 0.0
	for _, k := range way {
		w = max(w, k.width())
	}
	return w
}

// settled is the knot at the same place whose width is least near its angle.
func (t *track) settled(k knot) knot {
	best := k
	lo, hi := k.turn-settleTurn, k.turn+settleTurn
	for hi-lo > 1e-5 {
		a, c := t.knot(k.s, lo+(hi-lo)/3), t.knot(k.s, hi-(hi-lo)/3)
		for _, m := range [2]knot{a, c} {
			if !m.before && !m.beyond && m.width() < best.width() {
				best = m
			}
		}
		if a.width() < c.width() {
			hi = c.turn
		} else {
			lo = a.turn
		}
	}
	return best
}

// room is the free depth that a way takes on each side of the wall, from its face and
// below nothing where it takes none, and the free width to one side from the other edge
// of the opening.
func (t *track) room(way []knot) (depth, side float64) {
	b := t.b
	for _, k := range way {
		l := t.line(k.s, k.turn)
		along := func(x, y float64) float64 { return space.Dot(b.Furthest(x, y).Minus(l.at), space.Point{X: x, Y: y}) }
		f := l.forward
		depth = max(depth, along(f.X, f.Y), along(-f.X, -f.Y))
		if k.width() > 0 {
			side = max(side, k.hi+along(f.Y, -f.X), along(-f.Y, f.X)-k.lo)
		}
	}
	return depth - t.half, side
}

// poses are those of a way: the line's plane is the wall's middle one.
func (t *track) poses(way []knot, need, angle, a, h, wall float64) []space.Pose {
	var out []space.Pose
	b := t.b
	long := need > 2*b.Half()+2*b.Wrap()
	place := func(s, turn, middle float64) {
		l := t.line(s, turn)
		forward, across := space.Vec{Y: l.forward.X, Z: l.forward.Y}, space.Vec{Y: -l.forward.Y, Z: l.forward.X}
		side := space.Vec{X: 1}
		if long {
			side = across
		}
		r := inOpening(forward, side, angle, a < h)
		p := space.Vec{Y: l.at.X, Z: l.at.Y}.Add(across.Times(middle))
		out = append(out, space.Pose{Turn: r, At: space.Vec{X: wall/2 - p.Dot(r[0]), Y: a/2 - p.Dot(r[1]), Z: h/2 - p.Dot(r[2])}})
	}
	middle := 0.0
	for i := len(way) - 1; i > 0; i-- { // the middle of the first part within the wall
		if u := way[i].union(way[i-1].within); u.width() > 0 {
			middle = (u.lo + u.hi) / 2
		}
	}
	for i := 1; i < len(way); i++ {
		p, q := way[i-1], way[i]
		if u := p.union(q.within); u.width() > 0 {
			middle = (u.lo + u.hi) / 2
		}
		f, g := t.line(p.s, p.turn).forward, t.line(q.s, q.turn).forward
		n := int(math.Ceil(max(math.Abs(p.s-q.s)/0.01, math.Hypot(f.X-g.X, f.Y-g.Y)/passage.TurnStep, 1)))
		for k := range n + 1 {
			part := float64(k) / float64(n)
			place(p.s+part*(q.s-p.s), p.turn+part*(q.turn-p.turn), middle)
		}
	}
	return out
}
