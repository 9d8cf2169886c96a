package stair

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// confined bounds the room that a body has on a stair with a place P of it in an area of
// the plan, at all turns of a cell.
//
// Theorem. Each probe of the body leaves P so much up to the soffit and down to the floor,
// and each wall leaves it so much across. What is left is at most the sum of any two
// opposite ones, and what P's area leaves to one wall. All of them are linear in the shares
// of the cell's sides and of the area's, but for the slack of their slopes. A mean of them
// that is below nothing for all shares leaves no room at any turn and place. Derived.
type confined struct {
	*probes
	s    Stair
	wrap []float64  // of each probe, for it may be outside the true body
	near [][2]int32 // the ends of the edge that is nearest to P, of each row around the section

	cell, middle sight
	sight        // that is looked at
	area         area
	sides        []int8 // of the wall: -1 beside the flight that comes up, 1 beside the other, 0 not known
	up, down     [3]bounding
}

// bounding are planes. At each of the shares the least one bounds what is left; those that
// are the least nowhere are left out.
type bounding struct {
	of   []turns.Plane
	most float64 // that the least one is at most
}

func (b *bounding) clear() { b.of, b.most = b.of[:0], math.Inf(1) }

// take adds a plane if it may be the least one at some shares.
func (b *bounding) take(p turns.Plane) {
	if most := p.Most(); 2*p.At-most <= b.most {
		b.of, b.most = append(b.of, p), min(b.most, most)
	}
}

// trim leaves out those that are not the least one at any shares.
func (b *bounding) trim() {
	kept := b.of[:0]
	for i := range b.of {
		if p := &b.of[i]; 2*p.At-p.Most() <= b.most {
			kept = append(kept, *p)
		}
	}
	b.of = kept
}

// lowest is the plane that is the least at some shares, nil if there is none.
func (b *bounding) lowest(at *turns.Shares) (best *turns.Plane) {
	less := math.Inf(1)
	for i := range b.of {
		if v := b.of[i].At + b.of[i].By.Dot(at); v < less {
			less, best = v, &b.of[i]
		}
	}
	return best
}

// sight is what the coordinates of each probe are from P.
type sight struct {
	slopes [][3]turns.Slope
	bounds turns.Seen
}

// How far apart the probes of a confined body are.
const (
	confinedStep  = 0.4 // m, at most, along the outline
	confinedAlong = 2   // along the length
)

// newConfined is that of a body, nil if it has no middle line.
func newConfined(b *passage.Body, s Stair) *confined {
	m := b.Middle()
	if len(m) == 0 {
		return nil
	}
	c := &confined{probes: newProbes(b, m[len(m)/2].At, true, confinedStep, confinedAlong), s: s}
	n := len(c.at)
	c.cell = sight{make([][3]turns.Slope, n), make(turns.Seen, n)}
	c.middle = sight{make([][3]turns.Slope, n), make(turns.Seen, n)}
	c.sides = make([]int8, n)
	c.wrap = wrapsOf(b, c.b.Chain(confinedStep))
	for _, row := range c.rows[:confinedAlong] {
		c.near = append(c.near, c.nearest(row))
	}
	return c
}

// wrapsOf is what the wrap of a body has about each of some places of one with fewer corners,
// at both of its ends: all of it at a place within the true section, else less by how far
// outside it is.
func wrapsOf(b *passage.Body, places []space.Point) (out []float64) {
	for range confinedAlong {
		for _, at := range places {
			out = append(out, b.Wrap()-space.FromRegion(b.Section(), at))
		}
	}
	return out
}

// wrapAlong is what the wrap has about the straight way between two probes: their own along
// the length, and what the body with fewer corners has around the section.
func (c *confined) wrapAlong(i, k int32) float64 {
	if c.at[i].Y == c.at[k].Y && c.at[i].Z == c.at[k].Z {
		return c.wrap[i]
	}
	return c.b.Wrap()
}

// nearest are the ends of the edge of a row that is nearest to P.
func (c *confined) nearest(row []int32) (best [2]int32) {
	least := math.Inf(1)
	for k := 1; k < len(row); k++ {
		a, b := c.at[row[k-1]], c.at[row[k]]
		if d := space.NearestSquare(space.Point{X: a.Y, Y: a.Z}, space.Point{X: b.Y, Y: b.Z}); d < least {
			least, best = d, [2]int32{row[k-1], row[k]}
		}
	}
	return best
}

// look works out the probes over a cell and at its middle: the side across which the body
// swings furthest, as a bit, and how far it does over all of them.
func (c *confined) look(cell turns.Cube) (widest int, swing float64) {
	turn, away := cell.Turn(), cell.Swings()
	var by [3]float64
	for i, v := range c.at {
		far := math.Sqrt(v.Square)
		for k, e := range turn {
			m := v.Dot(e)
			l := away.Slope(k, v.Vec, m, far)
			c.cell.slopes[i][k], c.cell.bounds[i][k] = l, l.Bounds()
			c.middle.slopes[i][k], c.middle.bounds[i][k] = turns.Slope{Low: m, High: m}, turns.Bounds{Low: m, High: m}
			for side := range by {
				by[side] = max(by[side], math.Abs(l.By[side]))
			}
		}
	}
	return 1 << turns.Widest(by), by[0] + by[1] + by[2]
}

// most is what is left at most with P in an area, below nothing if that can't be.
func (c *confined) most(a area) float64 {
	c.sight = c.cell
	return c.room(a)
}

// about is the share of an area about its middle in which it is asked whether the body may
// be there: at the middle itself an edge may lie along a step by chance.
const about = 0.125

// inMiddle is what is left at most at the middle turn with P about the middle of an area.
func (c *confined) inMiddle(a area) float64 {
	c.sight = c.middle
	less := func(b turns.Bounds) turns.Bounds {
		mid, half := (b.Low+b.High)/2, about*(b.High-b.Low)/2
		return turns.Bounds{Low: mid - half, High: mid + half}
	}
	return c.room(area{less(a.x), less(a.y)})
}

// contractions is how often an area is made less by what is found in it.
const contractions = 2

func (c *confined) room(a area) float64 {
	c.area = a
	if c.s.Turn != Straight {
		for range contractions {
			if !c.contract() {
				return -1
			}
		}
	}
	for k := range c.up {
		c.up[k].clear()
		c.down[k].clear()
	}
	switch c.s.Turn {
	case Straight:
		c.straight()
	case Quarter:
		c.quarter()
	default:
		c.halfTurn()
	}
	for k := range c.up {
		if most := c.up[k].most + c.down[k].most; most < 0 {
			return most
		}
	}
	for k := range c.up {
		c.up[k].trim()
		c.down[k].trim()
	}
	most, _ := turns.Most(c.least)
	return most
}

// least is the plane that leaves the least at some shares.
func (c *confined) least(at *turns.Shares) turns.Plane {
	best := turns.Plane{At: math.Inf(1)}
	less := math.Inf(1)
	take := func(planes ...*turns.Plane) {
		sum := turns.Plane{}
		for _, p := range planes {
			sum.At += p.At
			for n := range sum.By {
				sum.By[n] += p.By[n]
			}
		}
		if v := sum.At + sum.By.Dot(at); v < less {
			less, best = v, sum
		}
	}
	for k := range c.up {
		up, down := c.up[k].lowest(at), c.down[k].lowest(at)
		if up != nil && down != nil {
			take(up, down)
		}
		if k == upright || c.s.Turn == Straight {
			continue // where P is this way is not given
		}
		if up != nil {
			take(up)
		}
		if down != nil {
			take(down)
		}
	}
	return best
}

// upright is the axis of heights.
const upright = 2

// form is the coordinates of a probe: across and along with P in the area, and the height
// from P.
func (c *confined) form(i int32) (f [3]turns.Slope) {
	f = c.slopes[i]
	for k, b := range [2]turns.Bounds{c.area.x, c.area.y} {
		mid := (b.Low + b.High) / 2
		f[k].Low, f[k].High, f[k].By[3+k] = f[k].Low+mid, f[k].High+mid, (b.High-b.Low)/2
	}
	return f
}

// place is where a probe is at least and at most in plan.
func (c *confined) place(i int) (x, y turns.Bounds) {
	b := &c.bounds[i]
	return turns.Bounds{Low: c.area.x.Low + b[0].Low, High: c.area.x.High + b[0].High},
		turns.Bounds{Low: c.area.y.Low + b[1].Low, High: c.area.y.High + b[1].High}
}

// below says that a coordinate is no more than most.
func (c *confined) below(axis int, f *turns.Slope, most float64) {
	p := turns.Plane{At: most - f.Low}
	for n, d := range f.By {
		p.By[n] = -d
	}
	c.up[axis].take(p)
}

// above says that a coordinate is no less than least.
func (c *confined) above(axis int, f *turns.Slope, least float64) {
	c.down[axis].take(turns.Plane{At: f.High - least, By: f.By})
}

// lessRise is a height less what a line rises over another coordinate.
func lessRise(z, along *turns.Slope, by float64) turns.Slope {
	if by == 0 {
		return *z
	}
	return z.Plus(1, along, -by)
}
