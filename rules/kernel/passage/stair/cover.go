package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// halfCover looks for turns at which the body may be half way around the wall between
// two flights.
//
// Theorem. On its way from one flight to the other a place P that is fixed to the body
// is once in the middle plane of the wall. At that instant what of the body is in the
// wall's thickness is over the landing, all is between the outer walls and before the
// landing's end, and all is between floor and soffit: in the flight that comes up no
// lower than its treads and no higher than its soffit, over the way on no lower than
// the landing and no higher than the soffit of a flight that rises. If that can be at
// no turn and with P nowhere, there is no motion. Derived.
//
// The body has fewer corners than the true one and is within a distance of it, which
// is taken off the wrap.
type halfCover struct {
	*probes
	s    Stair
	wall float64 // half of its thickness
}

// probes are places of a body from P.
type probes struct {
	b    *passage.Body
	at   []turns.Probe
	rows [][]int32
	even bool // P is on the line of symmetry of the body's section
	seen turns.Seen
}

// How the cover goes.
const (
	// stairStep is how far probes along the outline are apart at most, in m, and
	// alongStair how many there are along the length.
	stairStep  = 0.25
	alongStair = 5
	// stairPlace is over how much of the landing's length, in m, P is looked at in one,
	// and stairPlaces how many of these there are at most.
	stairPlace  = 0.15
	stairPlaces = 16
	// cellsATurn is how many cells of a budget one of the cover costs.
	cellsATurn = 3
)

// newProbes are those of the body with fewer corners, at most so far apart along the outline
// and so many along the length; even says that P is on the line of symmetry of the section,
// if that has one.
func newProbes(b *passage.Body, p space.Point, even bool, step float64, along int) *probes {
	off := min(turns.ProbeCoarse, b.Wrap()/2)
	c := b.Coarse(off).Wrapped(b.Wrap() - off)
	h := &probes{b: c, even: even && b.Mirrored() && c.Mirrored()}
	if h.even {
		p.X = 0
	}
	chain := c.Chain(step)
	for i := range along {
		x := c.Half() * (2*float64(i)/float64(along-1) - 1)
		row := make([]int32, 0, len(chain)+1)
		for j, q := range chain {
			v := space.Vec{X: x, Y: q.X - p.X, Z: q.Y - p.Y}
			h.at = append(h.at, turns.Probe{Vec: v, Square: v.Dot(v)})
			row = append(row, int32(i*len(chain)+j))
		}
		h.rows = append(h.rows, append(row, row[0]))
	}
	for j := range chain {
		row := make([]int32, along)
		for i := range row {
			row[i] = int32(i*len(chain) + j)
		}
		h.rows = append(h.rows, row)
	}
	h.seen = make(turns.Seen, len(h.at))
	return h
}

// all reports whether every turn is out.
func (h *probes) all(out func() bool, budget *passage.Budget) (proven, ranOut bool) {
	var open []turns.Cube
	for front := range 4 {
		if h.even && front > 1 {
			break // a half turn about the body's z brings the first two to the front
		}
		open = append(open, turns.Cube{Front: front, Cell: space.Cell{Half: [3]float64{1, 1, 1}}})
	}
	for len(open) > 0 {
		c := open[len(open)-1]
		open = open[:len(open)-1]
		if !budget.Spend(cellsATurn) {
			return false, true
		}
		if widest := h.see(c); !out() {
			if h.still(c); c.Tiny() || !out() {
				return false, false // at this turn it may be half way
			}
			open = append(open, cutAcross(c, widest)...)
		}
	}
	return true, false
}

// cutAcross cuts a cube in two across one of its sides.
func cutAcross(c turns.Cube, side int) []turns.Cube {
	c.Half[side] /= 2
	a, b := c, c
	a.At[side] -= c.Half[side]
	b.At[side] += c.Half[side]
	return []turns.Cube{a, b}
}

// see works out the probes over all of a cell, and gives across which of its sides the body
// swings furthest.
func (h *probes) see(c turns.Cube) int {
	turn, a, away := c.Turn(), c.Radius(), c.Swings()
	var by [3]float64
	for i, v := range h.at {
		far := math.Sqrt(v.Square)
		for k, e := range turn {
			m := v.Dot(e)
			l := away.Slope(k, v.Vec, m, far)
			h.seen[i][k] = turns.TurnBounds(a, m, v.Square).Both(l.Bounds())
			for side := range by {
				by[side] = max(by[side], math.Abs(l.By[side]))
			}
		}
	}
	return turns.Widest(by)
}

// still works out the probes at the middle of a cell.
func (h *probes) still(c turns.Cube) {
	turn := c.Turn()
	for i, v := range h.at {
		for k, e := range turn {
			m := v.Dot(e)
			h.seen[i][k] = turns.Bounds{Low: m, High: m}
		}
	}
}

// out reports whether none of the turns that are seen can be.
func (h *halfCover) out() bool {
	g := h.b.Wrap()
	front := none
	for i := range h.seen {
		front = max(front, h.seen[i][1].Low)
	}
	y, z := turns.Bounds{Low: none, High: h.s.Length - g - front}, turns.Bounds{Low: none, High: math.Inf(1)}
	for _, row := range h.rows {
		h.inWall(row, func(p *beside) {
			if g+p.low < -h.s.walled() {
				return // it may be past the end of the wall
			}
			y.Low = max(y.Low, g-p.y)
			z = z.Both(turns.Bounds{Low: g - p.z.High, High: h.s.Headroom - g - p.z.Low})
		})
	}
	if y.Low > y.High || z.Low > z.High || h.pastWalls(y.Low) {
		return true
	}
	if math.IsInf(y.Low, 0) {
		return false
	}
	n := min(stairPlaces, 1+int((y.High-y.Low)/stairPlace))
	step := (y.High - y.Low) / float64(n)
	for i := range n {
		lo := y.Low + step*float64(i)
		if !h.noHeight(turns.Bounds{Low: lo, High: lo + step}, z) {
			return false
		}
	}
	return true
}

// beside is what a place somewhere on a run of probes is: no further on than y and no less
// than low, and as high as z.
type beside struct {
	y, low float64
	z      turns.Bounds
	on     bool
}

func (r *beside) add(p *[3]turns.Bounds) {
	if r.on {
		r.y, r.low, r.z = max(r.y, p[1].High), min(r.low, p[1].Low), turns.Bounds{Low: min(r.z.Low, p[2].Low), High: max(r.z.High, p[2].High)}
	}
}

// inWall takes places of a row that are in the wall's thickness for certain: between a
// probe that is not past it and one that is not before it there is one.
func (h *halfCover) inWall(row []int32, take func(*beside)) {
	var left, right beside
	for _, j := range row {
		p := &h.seen[j]
		left.add(p)
		right.add(p)
		if p[0].High <= h.wall {
			left = beside{p[1].High, p[1].Low, p[2], true}
			if right.on {
				take(&right)
			}
		}
		if p[0].Low >= -h.wall {
			if left.on {
				take(&left)
			}
			right = beside{p[1].High, p[1].Low, p[2], true}
		}
	}
}

// noHeight reports whether nothing is left between floor and soffit of the heights z of
// P, P being at y along the landing.
func (h *halfCover) noHeight(y, z turns.Bounds) bool {
	g, slope := h.b.Wrap(), h.s.slope()
	for i := range h.seen {
		p := &h.seen[i]
		near, far := y.Low+p[1].Low, y.High+p[1].High
		floor, soffit := 0.0, h.s.Headroom
		switch {
		case p[0].Low > 0 && near >= -h.s.walled():
			floor = h.s.treadOn(-far)
		case near < 0:
			floor = h.s.tread(near)
		}
		switch {
		case near < -h.s.walled():
			soffit = math.Inf(1)
		case p[0].High < 0:
			soffit += slope * max(-h.s.run(), min(0, far))
		case near < 0:
			soffit += h.s.Rise - slope*near
		}
		if z = z.Both(turns.Bounds{Low: floor + g - p[2].High, High: soffit - g - p[2].Low}); z.Low > z.High {
			return true
		}
	}
	return false
}

// pastWalls reports whether a place of the body is past an outer wall, P being at y or
// further on. The walls are as long as the flights.
func (h *halfCover) pastWalls(y float64) bool {
	side := h.s.Across/2 - h.b.Wrap()
	for i := range h.seen {
		p := &h.seen[i]
		if (p[0].Low > side || p[0].High < -side) && y+p[1].Low >= -h.s.walled() {
			return true
		}
	}
	return false
}
