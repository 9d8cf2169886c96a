package passage

import (
	"cmp"
	"math"
	"slices"
)

// slabPlaces are the places of the middle line, as shares of it, at which the
// part of the body within a wall is looked at.
var slabPlaces = []float64{0.5, 0.3, 0.12}

// tooWide proves, if it can, that no motion takes the body through an opening.
//
// Theorem. On any way from one side of an endless wall to the other, every point
// P of the body is at some instant in the wall's middle plane. What is then
// within half of the wall's thickness of that plane is in the opening, with its
// wrap; so is what is up to half of the wrap further out, with √3/2 of it. So if
// for one P that part is larger than the opening at every turn, no motion
// exists. Derived.
//
// Method. Cells of turns, P at x = 0. Of each ruling of the section's outline the
// part that is within the wall for the whole cell counts, and of each of its ends
// no less than what the cell leaves of it along the opening's sides.
func (b *Body) tooWide(d Door, budget *Budget) (proven, ranOut bool) {
	for _, at := range b.slabs() {
		proven, out := b.slabCover(d, at, 1).all(budget)
		if proven {
			return true, false
		}
		ranOut = ranOut || out
	}
	return false, ranOut
}

func (b *Body) slabCover(d Door, at slabPlace, lean float64) *slabCover {
	return &slabCover{b: b, d: d, half: d.Wall/2 + b.wrap/2, wraps: math.Sqrt(3) * b.wrap, lean: lean, slabPlace: at}
}

// slabPoints is about how many of the outline's corners are looked at: fewer
// prove less, and nothing wrong.
const slabPoints = 96

// slabCover is the search for one P.
type slabCover struct {
	b     *Body
	d     Door
	half  float64 // of the wall, with half of the wrap
	wraps float64 // √3 of the wrap
	lean  float64 // turns count at which the length rises by this share of itself or less
	slabPlace
}

// slabPlace is one P.
type slabPlace struct {
	at   Point
	from []slabPoint // the nearest first
	even bool        // P is on the section's line of symmetry
}

// slabPoint is a corner of the outline from P, and how far it is.
type slabPoint struct {
	Point
	far float64
}

// placesInWall are those of the slabPlaces.
func (b *Body) placesInWall() []slabPlace {
	m := b.middle()
	if len(m) == 0 {
		return nil
	}
	var out []slabPlace
	for _, share := range slabPlaces {
		out = append(out, b.placeInWall(m[int(share*float64(len(m)-1)+0.5)].at, b.mirrored && share == 0.5))
	}
	return out
}

func (b *Body) placeInWall(p Point, even bool) slabPlace {
	if even {
		p.X = 0
	}
	step := max(1, len(b.section)/slabPoints)
	from := make([]slabPoint, 0, len(b.section)/step+1)
	for i := 0; i < len(b.section); i += step {
		v := b.section[i].minus(p)
		from = append(from, slabPoint{v, math.Hypot(v.X, v.Y)})
	}
	slices.SortStableFunc(from, func(a, b slabPoint) int { return cmp.Compare(a.far, b.far) })
	return slabPlace{p, from, even}
}

// all reports whether every turn is out.
func (c *slabCover) all(budget *Budget) (proven, ranOut bool) {
	open := c.b.turnsOf(c.even)
	for len(open) > 0 {
		cell := open[len(open)-1]
		open = open[:len(open)-1]
		if !budget.spend(1) {
			return false, true
		}
		t := cell.quaternion().turn()
		if c.steep(t, cell.radius()) || c.out(t, cell.radius()) {
			continue
		}
		if still := (angle{0, 1}); !c.steep(t, still) && !c.out(t, still) {
			return false, false // at this turn it does go in
		}
		h := cell.halves()
		open = append(open, h[0], h[1])
	}
	return true, false
}

// steep reports whether at every turn within an angle of one the length rises by
// more than the turns that count let it.
func (c *slabCover) steep(t Turn, a angle) bool {
	rise := min(1, math.Abs(t[2].X))
	return a.cos > 0 && a.least(rise, 1) > c.lean
}

// reached is the least of what is certainly within the wall along one side of
// the opening.
type reached struct{ high, low float64 }

// take counts a place that is m along the side, l2 the square of how far it is.
func (r *reached) take(m, l2 float64, a angle) {
	if m*a.cos > r.high || a.cos < 0 {
		r.high = max(r.high, a.least(m, l2))
	}
	if m*a.cos < r.low || a.cos < 0 {
		r.low = min(r.low, -a.least(-m, l2))
	}
}

// out reports whether the part within the wall is too large at every turn within
// an angle of one.
func (c *slabCover) out(t Turn, a angle) bool {
	sin := a.sin
	if a.cos < 0 {
		sin = 1
	}
	across, up := reached{none, math.Inf(1)}, reached{none, math.Inf(1)}
	for _, q := range c.from {
		k := c.half - q.far*sin
		if k < 0 {
			break
		}
		at := q.X*t[0].Y + q.Y*t[0].Z
		for _, side := range [2]float64{1, -1} {
			lo, hi, ok := within2(side*t[0].X, at, sin, k, c.b.half)
			if !ok {
				continue
			}
			for _, x := range [2]float64{lo, hi} {
				x *= side
				l2 := x*x + q.far*q.far
				across.take(x*t[1].X+q.X*t[1].Y+q.Y*t[1].Z, l2, a)
				up.take(x*t[2].X+q.X*t[2].Y+q.Y*t[2].Z, l2, a)
			}
		}
		if across.high-across.low+c.wraps > c.d.Width || up.high-up.low+c.wraps > c.d.Height {
			return true
		}
	}
	return false
}

// within2 is the range of x from 0 to most with |x·u + c| + x·s ≤ k.
func within2(u, c, s, k, most float64) (lo, hi float64, ok bool) {
	lo, hi = 0, most
	for _, sign := range [2]float64{1, -1} {
		f, r := sign*u+s, k-sign*c // x·f ≤ r
		switch {
		case f > 0:
			hi = min(hi, r/f)
		case f < 0:
			lo = max(lo, r/f)
		case r < 0:
			return 0, 0, false
		}
	}
	return lo, hi, lo <= hi
}
