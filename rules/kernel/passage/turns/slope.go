package turns

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Shares are, from -1 to 1, how far each of a cell's three sides turns the body, the
// same for all its places and all axes (see Swings), and how far the body is along its
// step, in one direction or two.
type Shares [5]float64

// Dot is what shares make of s.
func (s *Shares) Dot(t *Shares) float64 {
	return s[0]*t[0] + s[1]*t[1] + s[2]*t[2] + s[3]*t[3] + s[4]*t[4]
}

// Most is the most that shares make of s.
func (s *Shares) Most() float64 {
	return math.Abs(s[0]) + math.Abs(s[1]) + math.Abs(s[2]) + math.Abs(s[3]) + math.Abs(s[4])
}

// Slope bounds a coordinate of a place over a cell of turns: with the shares s it is
// at least Low + By·s and at most High + By·s, in m.
type Slope struct {
	Low, High float64
	By        Shares
}

// Slope is that of a vector v, far long, along one of the world's axes, of which the product
// is m in the middle of the cell.
func (s *Swings) Slope(axis int, v space.Vec, m, far float64) Slope {
	out := Slope{Low: m - s.second*(far+m), High: m + s.second*(far-m)}
	for i, d := range s.Of[axis] {
		out.By[i] = v.Dot(d)
	}
	return out
}

// Bounds are those for all shares.
func (s *Slope) Bounds() Bounds {
	by := s.By.Most()
	return Bounds{s.Low - by, s.High + by}
}

// Less is one less another.
func (s *Slope) Less(o *Slope) Slope {
	out := Slope{Low: s.Low - o.High, High: s.High - o.Low}
	for i := range out.By {
		out.By[i] = s.By[i] - o.By[i]
	}
	return out
}

// Plus is the sum of so many of one and so many of another.
func (s *Slope) Plus(n float64, o *Slope, m float64) Slope {
	out := Slope{Low: n*s.Low + m*o.Low, High: n*s.High + m*o.High}
	if n < 0 {
		out.Low, out.High = out.Low+n*(s.High-s.Low), out.High-n*(s.High-s.Low)
	}
	if m < 0 {
		out.Low, out.High = out.Low+m*(o.High-o.Low), out.High-m*(o.High-o.Low)
	}
	for i := range out.By {
		out.By[i] = n*s.By[i] + m*o.By[i]
	}
	return out
}

// Crossing is where the way from one place to another, or the straight line that it is on,
// crosses a plane across one of the axes, at a coordinate: the slopes along the other two.
// It is not ok where the two places may be as far along as each other.
//
// With x of the first from the plane and d the rise from the second to it, what crosses is
// the share f = x/d on the way. The place at f in the middle of the cell, f₀, is then N along
// the axis past the plane, and what crosses is at y + N·r across, y being that of the place
// and r the slope of the way, which is r₀ in the middle: no further than |N|·|r - r₀| from
// y + N·r₀, which is linear in the shares but for its slack. Derived.
func Crossing(a, b *[3]Slope, axis int, at float64) (out [3]Slope, ok bool) {
	dx := b[axis].Less(&a[axis])
	d := dx.Bounds()
	if d.Low <= 0 && d.High >= 0 {
		return out, false
	}
	d0 := (dx.Low + dx.High) / 2
	f := min(2, max(-1, (at-(a[axis].Low+a[axis].High)/2)/d0))
	n := a[axis].Plus(1-f, &b[axis], f)
	n.Low, n.High = n.Low-at, n.High-at
	far := n.Bounds()
	most := max(math.Abs(far.Low), math.Abs(far.High))
	for k := range out {
		if k == axis {
			continue
		}
		dy := b[k].Less(&a[k])
		r, off := dy.over(d0, d)
		y := a[k].Plus(1-f, &b[k], f)
		out[k] = y.Plus(1, &n, r)
		out[k].Low, out[k].High = out[k].Low-most*off, out[k].High+most*off
	}
	return out, true
}

// over is -1 times what a coordinate is over another one, d and in the middle d0, which
// is not nothing: in the middle, and how far off that it is at most.
func (s *Slope) over(d0 float64, d Bounds) (r, off float64) {
	y := s.Bounds()
	r = -(s.Low + s.High) / 2 / d0
	for _, u := range [2]float64{y.Low, y.High} {
		for _, v := range [2]float64{d.Low, d.High} {
			off = max(off, math.Abs(-u/v-r))
		}
	}
	return r, off
}
