package opening

import (
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// line is the middle plane of a wall as the section sees it: a point of it, and
// the direction in which the section is moved through.
type line struct{ at, forward space.Point }

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

// inSlab measures the part of the section within half of a wall's thickness of a
// line.
func inSlab(b *passage.Body, l line, half float64) within {
	s := slabSearch{b: b, l: l, half: half, across: space.Point{X: -l.forward.Y, Y: l.forward.X}, t: b.Edges()}
	s.out = within{lo: math.Inf(1), hi: math.Inf(-1)}
	s.node(0)
	if math.IsInf(s.out.lo, 1) {
		if space.Dot(b.Section()[0].Minus(l.at), l.forward) < 0 {
			return within{before: true}
		}
		return within{beyond: true}
	}
	return s.out
}

type slabSearch struct {
	b      *passage.Body
	l      line
	across space.Point
	half   float64
	t      *passage.Boundary
	out    within
}

func (s *slabSearch) node(i int) {
	n := &s.t.Nodes[i]
	c := n.Centre.Minus(s.l.at)
	x, y := space.Dot(c, s.l.forward), space.Dot(c, s.across)
	if math.Abs(x) > s.half+n.Radius || y-n.Radius >= s.out.lo && y+n.Radius <= s.out.hi {
		return
	}
	if n.Second != 0 {
		s.node(i + 1)
		s.node(n.Second)
		return
	}
	section := s.b.Section()
	p := section[n.From%len(section)].Minus(s.l.at)
	x0, y0 := space.Dot(p, s.l.forward), space.Dot(p, s.across)
	for k := n.From; k < n.To; k++ {
		q := section[(k+1)%len(section)].Minus(s.l.at)
		x1, y1 := space.Dot(q, s.l.forward), space.Dot(q, s.across)
		if lo, hi, ok := space.Clip(x0, y0, x1, y1, s.half); ok {
			s.out.lo, s.out.hi = min(s.out.lo, lo), max(s.out.hi, hi)
		}
		x0, y0 = x1, y1
	}
}

// track is the middle line of a band as a way for a wall's middle plane, run on
// straight past both ends. It goes backwards along the line, so that the section
// moves forward through the wall.
type track struct {
	b      *passage.Body
	points []space.Point
	length []float64 // along the line up to each point
	half   float64   // of the wall, with the wrap
}

func newTrack(b *passage.Body, wall float64) *track {
	m := b.Middle()
	if len(m) < 3 {
		return nil
	}
	t := &track{b: b, half: wall/2 + b.Wrap(), points: make([]space.Point, 0, len(m)), length: make([]float64, 0, len(m))}
	sum := 0.0
	for i, s := range m {
		if i > 0 {
			sum += math.Hypot(s.At.X-m[i-1].At.X, s.At.Y-m[i-1].At.Y)
		}
		t.points = append(t.points, s.At)
		t.length = append(t.length, sum)
	}
	return t
}

// at is the place at a length along the line, which may be past either end.
func (t *track) at(s float64) space.Point {
	n := len(t.points)
	k := searchUp(t.length, s)
	k = min(max(k, 1), n-1)
	p, q := t.points[k-1], t.points[k]
	f := (s - t.length[k-1]) / (t.length[k] - t.length[k-1])
	return space.Point{X: p.X + f*(q.X-p.X), Y: p.Y + f*(q.Y-p.Y)}
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
	d := q.Minus(p)
	l := math.Hypot(d.X, d.Y)
	sin, cos := math.Sincos(turn)
	d = space.Point{X: d.X / l, Y: d.Y / l}
	return line{t.at(s), space.Point{X: d.X*cos - d.Y*sin, Y: d.X*sin + d.Y*cos}}
}
