package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// plank is the two lesser sides of a straight bar that lies inside the body.
type plank struct{ less, more float64 }

// The bars that are looked for: about so many stations of the middle line, from
// a least length on by steps.
const (
	plankStations = 9
	plankFirst    = 0.03
	plankGrowth   = 1.08
)

// planks are the bars inside the body that matter: of each length the clear
// height of the section about a station, by the body's length. Those that are
// within another are left out.
func (b *Body) planks() []plank {
	var out []plank
	n := 2 * b.half
	add := func(l, t float64) {
		p := plank{min(l, t, n), l + t + n - min(l, t, n) - max(l, t, n)}
		for i := 0; i < len(out); i++ {
			if out[i].less >= p.less && out[i].more >= p.more {
				return
			}
			if out[i].less <= p.less && out[i].more <= p.more {
				out[i] = out[len(out)-1]
				out = out[:len(out)-1]
				i--
			}
		}
		out = append(out, p)
	}
	if b.isBox() {
		add(b.wide, b.high)
		return out
	}
	middle := b.middle()
	for i := range plankStations {
		if len(middle) == 0 {
			break
		}
		at := middle[(2*i+1)*len(middle)/(2*plankStations)]
		for l := plankFirst; ; l *= plankGrowth {
			t := b.clearHeight(at, l)
			if t <= 0 {
				break
			}
			add(l, t)
		}
	}
	return out
}

// isBox reports whether the section is a rectangle, level.
func (b *Body) isBox() bool {
	if len(b.hull) != 4 {
		return false
	}
	for _, p := range b.section {
		if math.Abs(p.X) < b.wide/2-AlikeShare*b.wide && math.Abs(p.Y) < b.high/2-AlikeShare*b.high {
			return false
		}
	}
	for _, p := range b.hull {
		if math.Abs(math.Abs(p.X)-b.wide/2) > AlikeShare*b.wide || math.Abs(math.Abs(p.Y)-b.high/2) > AlikeShare*b.high {
			return false
		}
	}
	return true
}

// clearHeight is that of the section over a length l of the tangent about a
// station; 0 where the tangent leaves the section.
func (b *Body) clearHeight(m Station, l float64) float64 {
	up, down := math.Inf(1), math.Inf(1)
	normal := space.Point{X: -m.Tangent.Y, Y: m.Tangent.X}
	n := len(b.section)
	last := b.section[n-1].Minus(m.At)
	x0, y0 := space.Dot(last, m.Tangent), space.Dot(last, normal)
	for _, p := range b.section {
		q := p.Minus(m.At)
		x1, y1 := space.Dot(q, m.Tangent), space.Dot(q, normal)
		if lo, hi, ok := clipped(x0, y0, x1, y1, l/2); ok {
			switch {
			case lo > 0:
				up = min(up, lo)
			case hi < 0:
				down = min(down, -hi)
			default:
				return 0
			}
		}
		x0, y0 = x1, y1
	}
	if math.IsInf(up, 1) || math.IsInf(down, 1) {
		return 0
	}
	return up + down
}

// clipped is the range of y of the part of an edge within |x| ≤ half.
func clipped(x0, y0, x1, y1, half float64) (lo, hi float64, ok bool) {
	if x0 > x1 {
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	if x1 < -half || x0 > half {
		return 0, 0, false
	}
	ya, yb := y0, y1
	if x0 < -half {
		ya = y0 + (y1-y0)*(-half-x0)/(x1-x0)
	}
	if x1 > half {
		yb = y0 + (y1-y0)*(half-x0)/(x1-x0)
	}
	return min(ya, yb), max(ya, yb), true
}

// Barred reports whether a bar inside the body does not go through an opening of a
// by h, in m, all in the wrap. True proves that no motion takes the body through;
// false proves nothing.
//
// Theorem. Let a straight bar d1 ≤ d2 ≤ d3 be inside a body. If d1 by d2 does not
// go into the opening, turned in its plane as need be, no motion whatever takes the
// body through. For let the bar's middle be in the plane of the opening, as it is
// at some instant. Seen by the duality of norms, the bar's section with the plane
// has along the opening's first side at least the width d1·cos ω + d2·sin ω, or d2
// alone, and along the second d1·sin ω + d2·cos ω, or d2 alone, ω the angle in the
// plane between that side and the bar's edge: so d1 by d2, turned by ω or not at
// all, goes into the opening. Derived.
func (b *Body) Barred(a, h float64) bool {
	a, h = a-2*b.wrap, h-2*b.wrap
	a, h = max(a, h), min(a, h)
	for _, p := range b.bands() {
		if h <= 0 || !fits(p.more, p.less, a, h) {
			return true
		}
	}
	return false
}

// Station is a place on the section's middle line.
type Station struct{ At, Tangent space.Point }

// sharp is the sine of the least corner that ends a side: above the steps in
// which a curve is drawn, below the corners of a foot.
const sharp = 0.06

// stations is the middle line of a band: half way between each place of one of
// its long sides and the boundary opposite. A side runs from one sharp corner
// outward to the next; along the hollow side there is none.
func (b *Body) stations() []Station {
	n := len(b.section)
	orient := math.Copysign(1, space.SignedArea(b.section))
	direction := func(i int) (space.Point, float64) {
		d := b.section[(i+1)%n].Minus(b.section[i%n])
		l := math.Hypot(d.X, d.Y)
		return space.Point{X: d.X / l, Y: d.Y / l}, l
	}
	first, longest := 0, 0.0
	for i := range n {
		before, _ := direction(i + n - 1)
		d, l := direction(i)
		if space.Cross(before, d)*orient <= sharp {
			continue
		}
		for k := i + 1; k < i+n; k++ {
			next, step := direction(k)
			if space.Cross(d, next)*orient > sharp {
				break
			}
			d, l = next, l+step
		}
		if l > longest {
			first, longest = i, l
		}
	}
	var out []Station
	for l, k := 0.0, first; l < longest-1e-9; k++ {
		d, step := direction(k)
		p, q := b.section[k%n], b.section[(k+1)%n]
		at := space.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2}
		inward := space.Point{X: -d.Y * orient, Y: d.X * orient}
		if t := b.opposite(at, inward); !math.IsInf(t, 1) {
			out = append(out, Station{space.Point{X: at.X + inward.X*t/2, Y: at.Y + inward.Y*t/2}, d})
		}
		l += step
	}
	return out
}

// opposite is how far it is from a place of the boundary straight to the other
// side.
func (b *Body) opposite(at, dir space.Point) float64 {
	least := math.Inf(1)
	last := b.section[len(b.section)-1].Minus(at)
	for _, p := range b.section {
		q := p.Minus(at)
		u, v := space.Cross(dir, last), space.Cross(dir, q)
		if u*v <= 0 && u != v {
			f := u / (u - v)
			if t := space.Dot(dir, last) + f*(space.Dot(dir, q)-space.Dot(dir, last)); t > 1e-6 {
				least = min(least, t)
			}
		}
		last = q
	}
	return least
}
