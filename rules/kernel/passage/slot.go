package passage

import "math"

// line is the middle plane of a wall as the section sees it: a point of it, and
// the direction in which the section is moved through.
type line struct{ at, forward Point }

// extent is what of a section is within a wall: from lo to hi across the
// direction of motion, from the line's point; none where it is before or beyond.
type within struct {
	lo, hi         float64
	before, beyond bool
}

func (w within) width() float64 {
	if w.before || w.beyond {
		return 0
	}
	return w.hi - w.lo
}

// union is what two neighbours on a way take up together.
func (w within) union(v within) within {
	switch {
	case w.before || w.beyond:
		return v
	case v.before || v.beyond:
		return w
	}
	return within{lo: min(w.lo, v.lo), hi: max(w.hi, v.hi)}
}

// slab measures the part of the section within half of a wall's thickness of a
// line.
func (b *Body) slab(l line, half float64) within {
	s := slabSearch{b: b, l: l, half: half, across: Point{-l.forward.Y, l.forward.X}, t: b.edges()}
	s.out = within{lo: math.Inf(1), hi: math.Inf(-1)}
	s.node(0)
	if math.IsInf(s.out.lo, 1) {
		if dot(b.section[0].minus(l.at), l.forward) < 0 {
			return within{before: true}
		}
		return within{beyond: true}
	}
	return s.out
}

type slabSearch struct {
	b      *Body
	l      line
	across Point
	half   float64
	t      *boundary
	out    within
}

func (s *slabSearch) node(i int) {
	n := &s.t.nodes[i]
	c := n.centre.minus(s.l.at)
	x, y := dot(c, s.l.forward), dot(c, s.across)
	if math.Abs(x) > s.half+n.radius || y-n.radius >= s.out.lo && y+n.radius <= s.out.hi {
		return
	}
	if n.second != 0 {
		s.node(i + 1)
		s.node(n.second)
		return
	}
	section := s.b.section
	p := section[n.from%len(section)].minus(s.l.at)
	x0, y0 := dot(p, s.l.forward), dot(p, s.across)
	for k := n.from; k < n.to; k++ {
		q := section[(k+1)%len(section)].minus(s.l.at)
		x1, y1 := dot(q, s.l.forward), dot(q, s.across)
		if lo, hi, ok := clipped(x0, y0, x1, y1, s.half); ok {
			s.out.lo, s.out.hi = min(s.out.lo, lo), max(s.out.hi, hi)
		}
		x0, y0 = x1, y1
	}
}

// track is the middle line of a band as a way for a wall's middle plane, run on
// straight past both ends. It goes backwards along the line, so that the section
// moves forward through the wall.
type track struct {
	b      *Body
	points []Point
	length []float64 // along the line up to each point
	half   float64   // of the wall, with the wrap
}

func (b *Body) track(wall float64) *track {
	m := b.middle()
	if len(m) < 3 {
		return nil
	}
	t := &track{b: b, half: wall/2 + b.wrap, points: make([]Point, 0, len(m)), length: make([]float64, 0, len(m))}
	sum := 0.0
	for i, s := range m {
		if i > 0 {
			sum += math.Hypot(s.at.X-m[i-1].at.X, s.at.Y-m[i-1].at.Y)
		}
		t.points = append(t.points, s.at)
		t.length = append(t.length, sum)
	}
	return t
}

// at is the place at a length along the line, which may be past either end.
func (t *track) at(s float64) Point {
	n := len(t.points)
	k := searchUp(t.length, s)
	k = min(max(k, 1), n-1)
	p, q := t.points[k-1], t.points[k]
	f := (s - t.length[k-1]) / (t.length[k] - t.length[k-1])
	return Point{p.X + f*(q.X-p.X), p.Y + f*(q.Y-p.Y)}
}

// searchUp is the first index whose value is above x.
func searchUp(list []float64, x float64) int {
	lo, hi := 0, len(list)
	for lo < hi {
		if mid := (lo + hi) / 2; list[mid] > x {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}

// line is the wall at a length along the track, square to the chord of the line
// over the wall, but for an angle.
func (t *track) line(s, turn float64) line {
	p, q := t.at(s-t.half), t.at(s+t.half)
	d := q.minus(p)
	l := math.Hypot(d.X, d.Y)
	sin, cos := math.Sincos(turn)
	d = Point{d.X / l, d.Y / l}
	return line{t.at(s), Point{d.X*cos - d.Y*sin, d.X*sin + d.Y*cos}}
}
