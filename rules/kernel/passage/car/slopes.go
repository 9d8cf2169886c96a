package car

import (
	"math"

	"dryfit/rules/kernel/passage/turns"
)

// limit is what a place leaves of the way up to a limit above it, up - by·s, and down
// to one below it, down + by·s.
type limit struct {
	up, down float64
	by       turns.Shares
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
	less, at := turns.Most(t.slopes.least)
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
	of     [][3]turns.Slope // of each probe
	pieces [][2]turns.Slope // of the way from one side of the door to the other
	limits [3][]limit       // along the three axes
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
		if up := s.length - mid - of[0].Low; up < of[0].By.Most() {
			s.limits[0] = append(s.limits[0], limit{up, math.Inf(1), of[0].By})
		}
		if kind > 0 {
			for k, in := range s.inside {
				a := &of[k+1]
				s.limits[k+1] = append(s.limits[k+1], limit{in[1] - a.Low, a.High - in[0], a.By})
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
func (s *slopes) cross(i, j int32, mid float64) {
	a, b := &s.of[i], &s.of[j]
	if at, ok := turns.Crossing(a, b, 0, -mid); ok {
		s.pieces = append(s.pieces, [2]turns.Slope{at[1], at[2]})
		return
	}
	s.pieces = append(s.pieces, [2]turns.Slope{a[1], a[2]}, [2]turns.Slope{b[1], b[2]})
}

// inDoor adds a place in the door that is one of the pieces, or between two of them
// that are next to each other.
func (s *slopes) inDoor() {
	for k, in := range s.door {
		var by turns.Shares
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
			low, high = min(low, b.Low-off), max(high, b.High+off)
		}
		s.limits[k+1] = append(s.limits[k+1], limit{in[1] - low, high - in[0], by})
	}
}

// least is the least plane at some shares.
func (s *slopes) least(at *turns.Shares) turns.Plane {
	var out turns.Plane
	best := math.Inf(1)
	for k := range s.limits {
		up, down := math.Inf(1), math.Inf(1)
		highest, lowest := &limit{}, &limit{}
		for i := range s.limits[k] {
			l := &s.limits[k][i]
			by := l.by.Dot(at)
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
		out.At = highest.up + lowest.down
		for n := range out.By {
			out.By[n] = lowest.by[n] - highest.by[n]
		}
	}
	if math.IsInf(best, 1) {
		out.At = best
	}
	return out
}
