package stair

import (
	"math"
	"slices"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// How a climb is looked for.
const (
	// yaws are the turns about an upright that are looked at first.
	yaws = 90
	// mostEnds is from how many berths of a stretch ways down a flight are looked for.
	mostEnds = 20
	// cellsAnEnd is how many cells of a budget such a way costs, and a berth costs one.
	cellsAnEnd = 100
)

// climb looks for a way on which the same direction of the body stays upright on
// the landing.
type climb struct {
	landing
	budget *passage.Budget
	berths [2][]berth              // at the flight that comes up, and as seen from the one that goes on
	next   [2][][]int              // those to which each is joined by free turns
	ends   [2]map[int][]space.Pose // ways down that flight, once they are looked for
}

func (l landing) climb(u space.Vec, budget *passage.Budget) *climb {
	c := &climb{landing: l, budget: budget, ends: [2]map[int][]space.Pose{{}, {}}}
	for i := range yaws {
		t := space.About(u, 2*math.Pi*float64(i)/yaws)
		c.berths[0] = append(c.berths[0], l.berth(t, l.flight()))
		if l.half {
			c.berths[1] = append(c.berths[1], l.berth(l.overhead(t), l.onward()))
		}
	}
	for side := range c.next {
		c.join(side)
	}
	return c
}

// join finds which berths of a side are joined to which.
func (c *climb) join(side int) {
	of := c.berths[side]
	c.next[side] = make([][]int, len(of))
	for i := range of {
		j := (i + 1) % yaws
		if !of[i].ok() || !of[j].ok() {
			continue
		}
		if _, ok := c.turns(&of[i], &of[j], c.side(side)); ok {
			c.next[side][i] = append(c.next[side][i], j)
			c.next[side][j] = append(c.next[side][j], i)
		}
	}
}

// side is the flight that comes up, or the one that goes on.
func (c *climb) side(side int) side {
	if side == 0 {
		return c.flight()
	}
	return c.onward()
}

// end is the way down a flight from a berth, nil if there is none.
func (c *climb) end(side, i int) []space.Pose {
	way, had := c.ends[side][i]
	if !had {
		way = c.down(side, i)
		c.ends[side][i] = way
	}
	return way
}

// down looks for a way down a flight.
func (c *climb) down(side, i int) []space.Pose {
	b, width := c.berths[0][i], c.s.Width
	switch {
	case side == 0:
	case c.half:
		b = c.berths[1][i]
	default:
		at := b
		b = berth{turn: c.overhead(at.turn), x: c.s.Length - at.y, y: c.s.Across - at.x}
		b.z = turns.Bounds{Low: c.s.Headroom - at.z.High, High: c.s.Headroom - at.z.Low}
		width = c.s.Length
	}
	if c.b.Width(b.turn[0]) > width-2*c.off || !c.budget.Spend(cellsAnEnd) {
		return nil
	}
	way := newPitching(c.b, c.side(side), b.turn, c.off).way(b.y, (b.z.Low+b.z.High)/2)
	for k := range way {
		way[k].At.X = b.x
	}
	return way
}

// stretches are the berths of a side that are joined.
func (c *climb) stretches(side int) (out [][]int) {
	seen := make([]bool, len(c.berths[side]))
	for i := range seen {
		if seen[i] || !c.berths[side][i].ok() {
			continue
		}
		out = append(out, c.joinedTo(side, i, seen))
	}
	return out
}

// joinedTo are a berth and those that it is joined to, which are then seen.
func (c *climb) joinedTo(side, i int, seen []bool) []int {
	seen[i] = true
	all := []int{i}
	for k := 0; k < len(all); k++ {
		for _, j := range c.next[side][all[k]] {
			if !seen[j] {
				seen[j] = true
				all = append(all, j)
			}
		}
	}
	return all
}

// way looks for one way from flight to flight.
func (c *climb) way() []space.Pose {
	for _, all := range c.stretches(0) {
		if !c.half {
			if from, to := c.enter(0, all), c.enter(1, all); from >= 0 && to >= 0 {
				return c.whole(from, to, -1, -1)
			}
			continue
		}
		for _, i := range all {
			if !c.crosses(i) {
				continue
			}
			from, to := c.enter(0, all), c.enter(1, c.stretch(1, i))
			if from >= 0 && to >= 0 {
				return c.whole(from, i, i, to)
			}
			if from < 0 {
				break
			}
		}
	}
	return nil
}

// stretch is that of one berth.
func (c *climb) stretch(side, i int) []int {
	for _, all := range c.stretches(side) {
		if slices.Contains(all, i) {
			return all
		}
	}
	return nil
}

// crosses reports whether the body at a yaw is all on the landing.
func (c *climb) crosses(i int) bool {
	return c.b.Width(c.berths[0][i].turn[1]) <= c.s.Length-2*c.off && c.berths[1][i].ok()
}

// enter is a berth of a stretch from which the body goes down the flight, or -1.
func (c *climb) enter(side int, all []int) int {
	step := max(1, len(all)/mostEnds)
	for k := 0; k < len(all); k += step {
		if c.end(side, all[k]) != nil {
			return all[k]
		}
	}
	return -1
}

// whole is the whole motion: up, through the berths of one side, and across; then those
// of the other side as they are seen from there, the other way round.
func (c *climb) whole(from, at, there, to int) []space.Pose {
	out := append([]space.Pose(nil), c.end(0, from)...)
	out = append(out, c.through(0, from, at)...)
	if there < 0 {
		to = at
	}
	beyond := append([]space.Pose(nil), c.end(1, to)...)
	if there >= 0 {
		near, far := &c.berths[0][at], &c.berths[1][there]
		z := near.z.Both(turns.Bounds{Low: c.s.Headroom - far.z.High, High: c.s.Headroom - far.z.Low})
		if z.Low > z.High {
			return nil
		}
		out = append(out, near.pose((z.Low+z.High)/2))
		beyond = append(beyond, c.through(1, to, there)...)
		beyond = append(beyond, far.pose(c.s.Headroom-(z.Low+z.High)/2))
	}
	for k := len(beyond) - 1; k >= 0; k-- {
		out = append(out, c.back(beyond[k]))
	}
	return out
}

// through is the way from one berth of a stretch to another.
func (c *climb) through(side, from, to int) (out []space.Pose) {
	last := map[int]int{to: to}
	for open := []int{to}; len(open) > 0; open = open[1:] {
		for _, j := range c.next[side][open[0]] {
			if _, had := last[j]; !had {
				last[j] = open[0]
				open = append(open, j)
			}
		}
	}
	for i := from; i != to; i = last[i] {
		out = append(out, c.steps(side, i, last[i])...)
	}
	return out
}

// steps are the poses from one berth to one that it is joined to.
func (c *climb) steps(side, from, to int) (out []space.Pose) {
	i, j := from, to
	if j != (i+1)%yaws {
		i, j = j, i
	}
	last, next := c.berths[side][i], c.berths[side][j]
	way, _ := c.turns(&last, &next, c.side(side))
	for k := range way {
		out = append(out, c.sweep(&last, &way[k])...)
		last = way[k]
	}
	if i != from {
		slices.Reverse(out)
	}
	return out
}

// sweep are the poses from one berth to the next at one height, hard against the walls.
func (c *climb) sweep(a, b *berth) (out []space.Pose) {
	z := (b.z.Low + b.z.High) / 2
	n := int(math.Ceil(a.turn.Apart(b.turn)/passage.TurnStep)) + 1
	for i := range n + 1 {
		t := a.turn.Between(b.turn, float64(i)/float64(n))
		out = append(out, space.Pose{Turn: t, At: space.Vec{
			X: c.off - c.b.Reach(t[0].Times(-1)).Dot(t[0]), Y: c.s.Length - c.off - c.b.Reach(t[1]).Dot(t[1]), Z: z,
		}})
	}
	return out
}
