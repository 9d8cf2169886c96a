package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// slabCover is the search for one P.
type slabCover struct {
	b     *passage.Body
	d     Door
	half  float64 // of the wall, with half of the wrap
	wraps float64 // √3 of the wrap
	lean  float64 // turns count at which the length rises by this share of itself or less
	slabPlace
}

// slabPlace is one P.
type slabPlace struct {
	at   space.Point
	from []slabPoint // the nearest first
	even bool        // P is on the section's line of symmetry
}

// slabPoint is a corner of the outline from P, and how far it is.
type slabPoint struct {
	space.Point
	far float64
}

// all reports whether every turn is out.
func (c *slabCover) all(budget *passage.Budget) (proven, ranOut bool) {
	open := turns.CellsOf(c.even)
	for len(open) > 0 {
		cell := open[len(open)-1]
		open = open[:len(open)-1]
		if !budget.Spend(1) {
			return false, true
		}
		t := cell.Quaternion().Turn()
		if c.steep(t, cell.Radius()) || c.out(t, cell.Radius()) {
			continue
		}
		if still := (space.Angle{Sin: 0, Cos: 1}); cell.Tiny() || !c.steep(t, still) && !c.out(t, still) {
			return false, false // at this turn it does go in
		}
		h := cell.Halves()
		open = append(open, h[0], h[1])
	}
	return true, false
}

// steep reports whether at every turn within an angle of one the length rises by
// more than the turns that count let it.
func (c *slabCover) steep(t space.Turn, a space.Angle) bool {
	rise := min(1, math.Abs(t[2].X))
	return a.Cos > 0 && a.Least(rise, 1) > c.lean
}

// out reports whether the part within the wall is too large at every turn within
// an angle of one.
func (c *slabCover) out(t space.Turn, a space.Angle) bool {
	sin := a.Sin
	if a.Cos < 0 {
		sin = 1
	}
	across, up := turns.Reached{High: none, Low: math.Inf(1)}, turns.Reached{High: none, Low: math.Inf(1)}
	for _, q := range c.from {
		k := c.half - q.far*sin
		if k < 0 {
			break
		}
		at := q.X*t[0].Y + q.Y*t[0].Z
		for _, side := range [2]float64{1, -1} {
			lo, hi, ok := within2(side*t[0].X, at, sin, k, c.b.Half())
			if !ok {
				continue
			}
			for _, x := range [2]float64{lo, hi} {
				x *= side
				l2 := x*x + q.far*q.far
				across.Take(x*t[1].X+q.X*t[1].Y+q.Y*t[1].Z, l2, a)
				up.Take(x*t[2].X+q.X*t[2].Y+q.Y*t[2].Z, l2, a)
			}
		}
		if across.High-across.Low+c.wraps > c.d.Width || up.High-up.Low+c.wraps > c.d.Height {
			return true
		}
	}
	return false
}
