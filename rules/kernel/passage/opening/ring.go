package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// ring is a circle about which the section lies between two radii.
type ring struct {
	centre       space.Point
	inner, outer float64
	from, to     float64 // angles of the section's ends about the centre, from Z towards Y
	thin         bool    // no thicker than a piece of a ring
}

// ringShare is the greatest thickness, by that of the section across its middle
// line, of the ring in which a section counts as a piece of a ring.
const ringShare = 1.5

// ringAbout is the one that the section is a piece of, and false where it is of none.
func ringAbout(b *passage.Body) (ring, bool) {
	r := knownOf(b).ring()
	return r, r.thin && r.inner > b.Wrap()
}

// ringOf is the circle through three places of the middle line and the radii
// between which the section lies about it. A section that is not a piece of a
// ring has one that is much thicker than itself.
func ringOf(b *passage.Body) ring {
	m := b.Middle()
	if len(m) < 3 {
		return ring{}
	}
	// Near a foot that is not cut square the middle line is off the band's own.
	end := len(m) / 6
	c, ok := circumcentre(m[end].At, m[len(m)/2].At, m[len(m)-1-end].At)
	if !ok {
		return ring{}
	}
	r := ring{centre: c, inner: math.Inf(1), from: math.Inf(1), to: math.Inf(-1)}
	mid := m[len(m)/2].At.Minus(c)
	axis := math.Atan2(mid.X, mid.Y)
	last := b.Section()[len(b.Section())-1].Minus(c)
	for _, p := range b.Section() {
		q := p.Minus(c)
		r.inner = min(r.inner, space.NearestSquare(last, q))
		r.outer = max(r.outer, space.Dot(q, q))
		a := math.Remainder(math.Atan2(q.X, q.Y)-axis, 2*math.Pi)
		r.from, r.to = min(r.from, a), max(r.to, a)
		last = q
	}
	r.inner, r.outer = math.Sqrt(r.inner), math.Sqrt(r.outer)
	thick := b.ClearHeight(m[len(m)/2], 1e-9)
	r.from, r.to = r.from+axis, r.to+axis
	r.thin = r.outer-r.inner <= ringShare*thick
	return r
}

func circumcentre(a, b, c space.Point) (space.Point, bool) {
	p, q := b.Minus(a), c.Minus(a)
	d := 2 * space.Cross(p, q)
	if math.Abs(d) < 1e-9*(space.Dot(p, p)+space.Dot(q, q)) {
		return space.Point{}, false
	}
	pp, qq := space.Dot(p, p), space.Dot(q, q)
	return space.Point{X: a.X + (q.Y*pp-p.Y*qq)/d, Y: a.Y + (p.X*qq-q.X*pp)/d}, true
}

// fit lays what is threaded, need wide across its curve and n long, into the
// opening. Where the floor goes on before and beyond it the body is upright: in
// any other way some of it would dip under the floor.
func (d Door) fit(need, n float64) Fit {
	if !d.Floor {
		return RectangleInRectangle(need, n, d.Width, d.Height)
	}
	f := Fit{Margin: min(d.Width-need, d.Height-n) / 2}
	if (n >= need) != (d.Width < d.Height) {
		f.Angle = math.Pi / 2
	}
	return f
}

// lets reports whether what [Door.fit] lays into the opening goes in, without the
// search for how it lies best.
func (d Door) lets(need, n float64) bool {
	if !d.Floor {
		return fits(max(need, n), min(need, n), max(d.Width, d.Height), min(d.Width, d.Height))
	}
	return need <= d.Width && n <= d.Height
}

// alongRing pushes a piece of a ring along its own circle through an opening in
// a wall of thickness t, the circle's centre on the middle plane of the wall. It needs an opening of
//
//	N = Ro − √(Ri² − t²/4)
//
// by the length, in which it is turned as the theorem of Carver has it; both
// radii are of the wrapped body, and the margin is the most that the wrap may
// grow. The other end must not meet the wall on the far side of the circle:
// false where it does, or for no ring.
func alongRing(b *passage.Body, d Door) (passage.Motion, bool) {
	wall := d.Wall
	r, ok := ringAbout(b)
	if !ok {
		return passage.Motion{}, false
	}
	if _, ok := r.need(b.Wrap(), wall); !ok {
		return passage.Motion{}, false
	}
	passes := func(m float64) bool {
		need, ok := r.need(b.Wrap()+m, wall)
		return ok && d.lets(need, 2*(b.Half()+b.Wrap()+m))
	}
	lo, hi := 0.0, min(d.Width, d.Height)
	if !passes(0) {
		lo, hi = -min(d.Width, d.Height, b.Wrap()), 0
	}
	for range marginSteps {
		if mid := (lo + hi) / 2; passes(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	need, _ := r.need(b.Wrap(), wall)
	if lo <= -b.Wrap() {
		lo = d.fit(need, 2*(b.Half()+b.Wrap())).Margin
	}
	tight, _ := r.need(b.Wrap()+lo, wall)
	angle := d.fit(tight, 2*(b.Half()+b.Wrap()+lo)).Angle
	inner, outer := r.inner-b.Wrap(), r.outer+b.Wrap()
	sweep := r.to - r.from + 2*b.Wrap()/inner
	m := passage.Motion{
		Way: passage.Threaded3, Margin: lo, Angle: angle,
		Depth: max(0, outer*math.Sin(min(sweep, math.Pi/2))-wall/2),
		Side:  outer - inner*math.Cos(sweep),
	}
	m.Follow = func() []space.Pose { return ringPoses(b, r, tight, lo, angle, d.Width, d.Height, wall) }
	m.Start = func() space.Turn {
		from, _ := ringArc(b, r, lo, wall)
		t, _ := ringTurn(b, from, tight, lo, angle, d.Width < d.Height)
		return t
	}
	return m, true
}

// need is the opening's width for a ring in a wrap, and false where its other
// end meets the wall.
func (r ring) need(wrap, wall float64) (float64, bool) {
	inner, outer := r.inner-wrap, r.outer+wrap
	if !(wall/2 < inner) {
		return 0, false
	}
	in := math.Asin(wall / 2 / inner)
	clear := math.Asin(min(1, (wall/2+wrap)/r.inner))
	return outer - inner*math.Cos(min(r.to-r.from+2*wrap/inner, in)), r.to-r.from+2*clear < math.Pi
}
