package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// Standing is the least height, in m, that a room has to have somewhere for the bare
// body to come from on edge, its length upright, to where its length is level.
//
// With the vertical u in the body's axes its height is n·|u_x| + √(1 − u_x²)·w, n its
// length and w the width of its section in some direction, which is no less than the
// section's least width s. On the way |u_x| takes every value from 1 to 0, and at
// n/√(n² + s²) that is √(n² + s²). Derived.
func Standing(b *passage.Body) float64 { return math.Hypot(2*b.Half(), b.Own().Across) }

// standingRise is the share of itself by which the length rises where the body is as high
// as that at the least.
func standingRise(b *passage.Body) float64 { return 2 * b.Half() / Standing(b) }

// StandsUpright proves, if it can, that the bare body cannot be brought through an
// opening into a room of a height, in m, with its length level in the end: that it
// comes through the opening only on edge, and cannot be stood down in the room.
// Before the wall nothing is taken to be in the way. The wall's thickness must be
// known.
//
// Theorem. Let r be the length's rise at which the body is as high as Standing, and P
// a point of it. At first P is before the wall's middle plane; in the end it is beyond
// it, and the length level. So at some instant either P comes into the plane with the
// length's rise at most r, or the rise comes down to r with P beyond the plane. If
// none of these places of the body is free, there is no motion. The first are those
// of a cover of turns with P in the wall. Of the second, those with all of the body
// in the room are not free because it is higher than the room; of the others, what is
// certainly within the wall must go into the opening, and what is certainly beyond it
// into the room. Derived.
func StandsUpright(b *passage.Body, d Door, high float64, budget *passage.Budget) (proven, ranOut bool) {
	if Standing(b) <= high {
		return false, false
	}
	b = b.Wrapped(0)
	for _, at := range knownOf(b).places() {
		c := newSlabCover(b, d, at, standingRise(b))
		ok, out := c.all(budget)
		if ok {
			ok, out = (&standCover{slabCover: c, high: high}).all(budget)
		}
		if ok {
			return true, false
		}
		ranOut = ranOut || out
	}
	return false, ranOut
}

// standCover is the search through the places of the body with P beyond the wall's
// middle plane and its length on the way down.
type standCover struct {
	*slabCover
	high float64 // of the room
}

// standCell is a box of such places: the body's roll about its length, its yaw about
// the vertical, and where the wall's middle plane is from P, each a middle and a half.
type standCell struct{ roll, yaw, plane [2]float64 }

// turn is that of the cell's middle. By mirror images the other turns with that rise
// are as wide, as high and as far beyond the wall.
func (c *standCover) turn(cell standCell) space.Turn {
	up := c.lean
	level := math.Sqrt(1 - up*up)
	sr, cr := math.Sincos(cell.roll[0])
	sy, cy := math.Sincos(cell.yaw[0])
	rolled := func(v space.Vec) space.Vec { return space.Vec{X: v.X, Y: v.Y*cr - v.Z*sr, Z: v.Y*sr + v.Z*cr} }
	u, f, g := rolled(space.Vec{X: up, Y: level}), rolled(space.Vec{X: -level, Y: up}), rolled(space.Vec{Z: 1})
	in := f.Times(cy).Add(g.Times(sy))
	return space.Turn{in, u.Cross(in), u}
}

// turnedBy is an angle, in rad.
func turnedBy(a float64) space.Angle {
	if a >= math.Pi {
		return space.Angle{Sin: 0, Cos: -1}
	}
	sin, cos := math.Sincos(a)
	return space.Angle{Sin: sin, Cos: cos}
}

// tiny reports whether each side of the cell is too short to be cut.
func (s standCell) tiny() bool { return max(s.roll[1], s.yaw[1], s.plane[1]) < space.LeastHalf }

// halves cuts the cell where the body moves furthest over it, far being its furthest
// point's distance from P.
func (s standCell) halves(far float64) [2]standCell {
	a, b := s, s
	cut := func(p, q *[2]float64) {
		p[1] /= 2
		q[1] = p[1]
		p[0] -= p[1]
		q[0] += q[1]
	}
	switch {
	case s.plane[1] >= far*max(s.roll[1], s.yaw[1]):
		cut(&a.plane, &b.plane)
	case s.roll[1] >= s.yaw[1]:
		cut(&a.roll, &b.roll)
	default:
		cut(&a.yaw, &b.yaw)
	}
	return [2]standCell{a, b}
}

// all reports whether no place is free.
func (c *standCover) all(budget *passage.Budget) (proven, ranOut bool) {
	far := c.far()
	deep := (far + c.half) / 2
	whole := standCell{roll: [2]float64{0, math.Pi}, yaw: [2]float64{0, math.Pi}, plane: [2]float64{-deep, deep}}
	if c.even {
		whole.roll[1] /= 2 // the other half is its mirror image
	}
	open := []standCell{whole}
	for len(open) > 0 {
		cell := open[len(open)-1]
		open = open[:len(open)-1]
		if !budget.Spend(1) {
			return false, true
		}
		t := c.turn(cell)
		if c.inRoom(t, cell, far) || c.tooLarge(t, cell) {
			continue
		}
		middle := standCell{roll: [2]float64{cell.roll[0]}, yaw: [2]float64{cell.yaw[0]}, plane: [2]float64{cell.plane[0]}}
		if cell.tiny() || !c.tooLarge(t, middle) {
			return false, false // here it is not shown to be too large
		}
		h := cell.halves(far)
		open = append(open, h[0], h[1])
	}
	return true, false
}

// far is no less than the distance of any point of the body from P.
func (c *standCover) far() float64 {
	far := 0.0
	for _, q := range c.b.Hull() {
		far = max(far, math.Hypot(q.X-c.at.X, q.Y-c.at.Y))
	}
	return math.Hypot(far, c.b.Half())
}

// inRoom reports whether all of the body is beyond the wall at every place of a cell.
func (c *standCover) inRoom(t space.Turn, cell standCell, far float64) bool {
	back := t[0].Times(-1)
	last := -c.b.Reach(back).Dot(back) - c.at.X*t[0].Y - c.at.Y*t[0].Z
	return last-far*(cell.roll[1]+cell.yaw[1]) >= cell.plane[0]+cell.plane[1]+c.half
}

// tooLarge reports whether at every place of a cell what is in the wall is larger
// than the opening, or what is beyond it higher than the room. A roll moves no ruling
// along itself, and a yaw changes no height.
func (c *standCover) tooLarge(t space.Turn, cell standCell) bool {
	roll, both := turnedBy(cell.roll[1]), turnedBy(cell.roll[1]+cell.yaw[1])
	across, up, above := turns.Reached{High: none, Low: math.Inf(1)}, turns.Reached{High: none, Low: math.Inf(1)}, turns.Reached{High: none, Low: math.Inf(1)}
	for _, q := range c.from {
		at := q.X*t[0].Y + q.Y*t[0].Z - cell.plane[0]
		slack := cell.plane[1] + q.far*(cell.roll[1]+cell.yaw[1])
		for _, side := range [2]float64{1, -1} {
			u := side * t[0].X
			if lo, hi, ok := within2(u, at, cell.yaw[1], c.half-slack, c.b.Half()); ok {
				for _, x := range [2]float64{side * lo, side * hi} {
					across.Take(x*t[1].X+q.X*t[1].Y+q.Y*t[1].Z, x*x+q.far*q.far, both)
					takeHeight(&up, t[2], q, x, roll)
				}
			}
			if lo, hi, ok := beyond(u-cell.yaw[1], at-slack-c.half, c.b.Half()); ok {
				takeHeight(&above, t[2], q, side*lo, roll)
				takeHeight(&above, t[2], q, side*hi, roll)
			}
		}
		if across.High-across.Low > c.d.Width || up.High-up.Low > c.d.Height || above.High-above.Low > c.high {
			return true
		}
	}
	return false
}

// takeHeight counts the height of a point of a ruling that rolls by up to an angle.
func takeHeight(r *turns.Reached, u space.Vec, q slabPoint, x float64, roll space.Angle) {
	m, l2 := q.X*u.Y+q.Y*u.Z, q.far*q.far*(u.Y*u.Y+u.Z*u.Z)
	r.High = max(r.High, x*u.X+roll.Least(m, l2))
	r.Low = min(r.Low, x*u.X-roll.Least(-m, l2))
}

// beyond is the range of x from 0 to most with x·u + c ≥ 0.
func beyond(u, c, most float64) (lo, hi float64, ok bool) {
	lo, hi = 0, most
	switch {
	case u > 0:
		lo = max(lo, -c/u)
	case u < 0:
		hi = min(hi, -c/u)
	case c < 0:
		return 0, 0, false
	}
	return lo, hi, lo <= hi
}
