// Package placement lays a straight strip of one width between two measured
// walls. It knows nothing of what the strip is. Lengths are in m; x runs along a
// straight baseline and y square to it, to the right.
package placement

// Reading is one at a place along the baseline.
type Reading struct{ X, Y float64 }

// Course is what was read along the baseline, one reading at least, in ascending
// order. It runs straight between its points, and goes on straight outside them; a
// single one holds everywhere.
type Course []Reading

// At is the course at x, in m: straight between its points, and extrapolated along
// the first or the last stretch outside them. A course of one point is the same
// everywhere. Two points at one x give no finite value between them, and no points
// panic.
func (c Course) At(x float64) float64 {
	if len(c) == 1 {
		return c[0].Y
	}
	i := 1
	for i < len(c)-1 && x > c[i].X {
		i++
	}
	from, to := c[i-1], c[i]
	return from.Y + (x-from.X)*(to.Y-from.Y)/(to.X-from.X)
}

// Slopes are those between neighbouring points, in m per m: none of a single point.
func (c Course) Slopes() []float64 {
	var out []float64
	for i := 1; i < len(c); i++ {
		out = append(out, (c[i].Y-c[i-1].Y)/(c[i].X-c[i-1].X))
	}
	return out
}

// Over are the points of the course on a stretch from one x to another: both ends
// of it, extrapolated where they lie outside, and its own points between them.
// Between two of them the course is straight, so that its extremes on the stretch
// are among them.
func (c Course) Over(from, to float64) Course {
	out := make(Course, 1, len(c)+2)
	out[0] = Reading{from, c.At(from)}
	for _, p := range c {
		if p.X > from && p.X < to {
			out = append(out, p)
		}
	}
	return append(out, Reading{to, c.At(to)})
}

// line is a function of the skew at one skew: its value and its slope there.
type line struct{ v, d float64 }

func (l line) plus(o line) line      { return line{l.v + o.v, l.d + o.d} }
func (l line) less(o line) line      { return line{l.v - o.v, l.d - o.d} }
func (l line) times(f float64) line  { return line{l.v * f, l.d * f} }
func (l line) raised(c float64) line { return line{l.v + c, l.d} }

// highest is the one with the greatest value.
func highest(lines ...line) line {
	top := lines[0]
	for _, l := range lines[1:] {
		if l.v > top.v {
			top = l
		}
	}
	return top
}

// extremes are the least and the greatest of y + turn·b·x over the points.
func (c Course) extremes(turn, b float64) (least, most line) {
	for i, p := range c {
		l := line{p.Y + turn*b*p.X, turn * p.X}
		if i == 0 || l.v < least.v {
			least = l
		}
		if i == 0 || l.v > most.v {
			most = l
		}
	}
	return least, most
}
