package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Shares are, from -1 to 1, how far each of a cell's three sides turns the body, the
// same for all its places and all axes (see swings), and how deep it is in its step.
type Shares [4]float64

func (s *Shares) dot(t *Shares) float64 { return s[0]*t[0] + s[1]*t[1] + s[2]*t[2] + s[3]*t[3] }

// most is the most that shares make of s.
func (s *Shares) most() float64 {
	return math.Abs(s[0]) + math.Abs(s[1]) + math.Abs(s[2]) + math.Abs(s[3])
}

// Slope bounds a coordinate of a place over a cell of turns: with the shares s it is
// at least low + by·s and at most high + by·s.
type Slope struct {
	low, high float64
	By        Shares // in m
}

// Slope is that of a vector far long along an axis, m in the middle.
func (s *Swings) Slope(axis int, v space.Vec, m, far float64) Slope {
	out := Slope{low: m - s.second*(far+m), high: m + s.second*(far-m)}
	for i, d := range s.of[axis] {
		out.By[i] = v.Dot(d)
	}
	return out
}

// Bounds are those for all shares.
func (s *Slope) Bounds() Bounds {
	by := s.By.most()
	return Bounds{s.low - by, s.high + by}
}

// less is what is left of one by another.
func (s *Slope) less(o *Slope) Slope {
	out := Slope{low: s.low - o.high, high: s.high - o.low}
	for i := range out.By {
		out.By[i] = s.By[i] - o.By[i]
	}
	return out
}

// plus is the sum of so many of one and so many of another.
func (s *Slope) plus(n float64, o *Slope, m float64) Slope {
	out := Slope{low: n*s.low + m*o.low, high: n*s.high + m*o.high}
	if n < 0 {
		out.low, out.high = out.low+n*(s.high-s.low), out.high-n*(s.high-s.low)
	}
	if m < 0 {
		out.low, out.high = out.low+m*(o.high-o.low), out.high-m*(o.high-o.low)
	}
	for i := range out.By {
		out.By[i] = n*s.By[i] + m*o.By[i]
	}
	return out
}

// limit is what a place leaves of the way up to a limit above it, up - by·s, and down
// to one below it, down + by·s.
type limit struct {
	up, down float64
	by       Shares
}

// Where the slopes are asked.
const (
	// slackShare is the share of what the body swings up to which they are: of more than
	// that they seldom take all away.
	slackShare = 0.5
	// roomsOfSlopes is how many intervals cost what they do.
	roomsOfSlopes = 3
)

// roomInCell is what is left at most in the cell that is seen, at depths from lo to
// hi, and what is left in the middle of it, if that is known to be something.
func (t *inTree) roomInCell(lo, hi float64) (most, at float64) {
	p := t.part(t.cell, lo, hi)
	if most = t.left(&p); most < 0 || most > slackShare*t.swings {
		return most, none
	}
	t.slopes.look(&p, t.probes.rows)
	t.rooms += roomsOfSlopes
	less, at := t.slopes.most()
	return min(most, less), at
}

// slopes are the places that are past the door or in it for certain.
//
// Theorem. At a turn and a depth in the cell, what is left across is at most what
// the highest place leaves above and the lowest one below. Each of those is linear
// in the shares but for the slack of its slope, and so is what the foremost place
// leaves before the end. What is left is then at most any mean of such functions,
// and a mean that is below nothing for all shares blocks the cell. A mean over two
// feet of an arch is the middle between them, which hardly moves when the arch
// rolls, though each of its feet does. Derived.
type slopes struct {
	of     [][3]Slope // of each probe
	pieces [][2]Slope // of the way from one side of the door to the other
	limits [3][]limit // along the three axes
	length float64
	door   [2][2]float64
	inside [2][2]float64
}

// look takes what is past the door and in it.
func (s *slopes) look(p *parted, rows [][]int32) {
	for k := range s.limits {
		s.limits[k] = s.limits[k][:0]
	}
	mid, half := (p.lo+p.hi)/2, (p.hi-p.lo)/2
	for i, kind := range p.kinds {
		of := &s.of[i]
		of[0].By[3] = half
		if up := s.length - mid - of[0].low; up < of[0].By.most() {
			s.limits[0] = append(s.limits[0], limit{up, math.Inf(1), of[0].By})
		}
		if kind > 0 {
			for k, in := range s.inside {
				a := &of[k+1]
				s.limits[k+1] = append(s.limits[k+1], limit{in[1] - a.low, a.high - in[0], a.By})
			}
		}
	}
	for _, row := range rows {
		s.row(p, row, mid)
	}
}

// row takes where one row crosses the door.
func (s *slopes) row(p *parted, row []int32, mid float64) {
	last := 0
	for at, j := range row {
		kind := p.kinds[j]
		if kind == 0 {
			continue
		}
		if at > 0 && kind*p.kinds[row[last]] < 0 {
			s.pieces = s.pieces[:0]
			for i := last; i < at; i++ {
				s.cross(row[i], row[i+1], mid)
			}
			s.inDoor()
		}
		last = at
	}
}

// cross adds where the way from one probe to another, or the straight line that it is
// on, crosses the door.
//
// With x of the first and d the rise from the second to it, what crosses is the share
// f = x/d on the way. The place at f in the middle of the cell, f₀, is then N along X
// past the door, and what crosses is at y + N·r across, y being that of the place and
// r the slope of the way, which is r₀ in the middle: no further than |N|·|r - r₀| from
// y + N·r₀, which is linear in the shares but for its slack. Derived.
func (s *slopes) cross(i, j int32, mid float64) {
	a, b := &s.of[i], &s.of[j]
	dx := b[0].less(&a[0])
	d := dx.Bounds()
	if d.Low <= 0 && d.High >= 0 {
		s.pieces = append(s.pieces, [2]Slope{a[1], a[2]}, [2]Slope{b[1], b[2]})
		return
	}
	d0 := (dx.low + dx.high) / 2
	f := min(2, max(-1, -(mid+(a[0].low+a[0].high)/2)/d0))
	n := a[0].plus(1-f, &b[0], f)
	n.low, n.high = n.low+mid, n.high+mid
	far := n.Bounds()
	most := max(math.Abs(far.Low), math.Abs(far.High))
	var out [2]Slope
	for k := range out {
		dy := b[k+1].less(&a[k+1])
		r, off := dy.over(d0, d)
		at := a[k+1].plus(1-f, &b[k+1], f)
		out[k] = at.plus(1, &n, r)
		out[k].low, out[k].high = out[k].low-most*off, out[k].high+most*off
	}
	s.pieces = append(s.pieces, out)
}

// over is -1 times what a coordinate is over another one, d and in the middle d0, which
// is not nothing: in the middle, and how far off that it is at most.
func (s *Slope) over(d0 float64, d Bounds) (r, off float64) {
	y := s.Bounds()
	r = -(s.low + s.high) / 2 / d0
	for _, u := range [2]float64{y.Low, y.High} {
		for _, v := range [2]float64{d.Low, d.High} {
			off = max(off, math.Abs(-u/v-r))
		}
	}
	return r, off
}

// inDoor adds a place in the door that is one of the pieces, or between two of them
// that are next to each other.
func (s *slopes) inDoor() {
	for k, in := range s.door {
		var by Shares
		for i := range s.pieces {
			for n := range by {
				by[n] += s.pieces[i][k].By[n] / float64(len(s.pieces))
			}
		}
		low, high := math.Inf(1), math.Inf(-1)
		for i := range s.pieces {
			b := &s.pieces[i][k]
			off := 0.0
			for n := range by {
				off += math.Abs(b.By[n] - by[n])
			}
			low, high = min(low, b.low-off), max(high, b.high+off)
		}
		s.limits[k+1] = append(s.limits[k+1], limit{in[1] - low, high - in[0], by})
	}
}

// plane is a linear function of the shares, at + by·s.
type plane struct {
	at float64
	by Shares
}

// most is its greatest value.
func (p *plane) most() float64 { return p.at + p.by.most() }

// planes is how many planes are mixed at most.
const planes = 6

// most is what is left at most, and in the middle. The bound is by a mean of planes,
// each of which is the least one where the mean before it is greatest. It ends where
// something is left.
func (s *slopes) most() (most, at float64) {
	mean := s.least(&Shares{})
	at = mean.at
	if at >= 0 {
		return mean.most(), at
	}
	for range planes {
		if most = mean.most(); most < 0 {
			break
		}
		var far Shares
		for i, d := range mean.by {
			if d != 0 {
				far[i] = math.Copysign(1, d)
			}
		}
		next := s.least(&far)
		if next.at+next.by.dot(&far) >= 0 {
			break
		}
		mean = mixed(mean, next)
		if mean.most() > most-Settled {
			break
		}
	}
	return mean.most(), at
}

// least is the least plane at some shares.
func (s *slopes) least(at *Shares) plane {
	var out plane
	best := math.Inf(1)
	for k := range s.limits {
		up, down := math.Inf(1), math.Inf(1)
		highest, lowest := &limit{}, &limit{}
		for i := range s.limits[k] {
			l := &s.limits[k][i]
			by := l.by.dot(at)
			if v := l.up - by; v < up {
				up, highest = v, l
			}
			if v := l.down + by; v < down {
				down, lowest = v, l
			}
		}
		if k == 0 {
			down, lowest = 0, &limit{}
		}
		if up+down >= best {
			continue
		}
		best = up + down
		out.at = highest.up + lowest.down
		for n := range out.by {
			out.by[n] = lowest.by[n] - highest.by[n]
		}
	}
	if math.IsInf(best, 1) {
		out.at = best
	}
	return out
}

// mixed is the mean of two planes whose greatest value is the least: there one of
// its slopes is nothing, or it is one of the two.
func mixed(a, b plane) plane {
	best := a
	take := func(f float64) {
		if !(f > 0 && f <= 1) {
			return
		}
		m := plane{at: a.at + f*(b.at-a.at)}
		for n := range m.by {
			m.by[n] = a.by[n] + f*(b.by[n]-a.by[n])
		}
		if m.most() < best.most() {
			best = m
		}
	}
	take(1)
	for n := range a.by {
		take(a.by[n] / (a.by[n] - b.by[n]))
	}
	return best
}
