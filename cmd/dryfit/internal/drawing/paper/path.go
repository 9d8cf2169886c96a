package paper

import (
	"math"
	"slices"
)

// Piece is one line or arc of a path.
type Piece struct {
	From, To Point
	Bulge    float64
}

// straightest is the bulge below which an arc is drawn as the line that it can't be
// told from.
const straightest = 1e-9

// Pieces are the lines and arcs of the path.
func (p Path) Pieces() []Piece {
	out := make([]Piece, 0, len(p.Steps))
	from := p.From
	for _, s := range p.Steps {
		out = append(out, Piece{from, s.To, s.Bulge})
		from = s.To
	}
	return out
}

// Straight reports whether the piece is a line.
func (s Piece) Straight() bool { return math.Abs(s.Bulge) < straightest }

// Turn is the angle that an arc turns by, over nothing anticlockwise as it is seen.
func (s Piece) Turn() float64 { return 4 * math.Atan(s.Bulge) }

// Circle is that of an arc.
func (s Piece) Circle() (centre Point, radius float64) {
	dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
	k := (1/s.Bulge - s.Bulge) / 4
	return Point{(s.From.X+s.To.X)/2 + k*dy, (s.From.Y+s.To.Y)/2 - k*dx},
		math.Hypot(dx, dy) * (s.Bulge*s.Bulge + 1) / 4 / math.Abs(s.Bulge)
}

// Length is that along the piece.
func (s Piece) Length() float64 {
	if s.Straight() {
		return math.Hypot(s.To.X-s.From.X, s.To.Y-s.From.Y)
	}
	_, r := s.Circle()
	return r * math.Abs(s.Turn())
}

// At is the place at a share of the piece's length.
func (s Piece) At(share float64) Point {
	switch {
	case share == 0:
		return s.From
	case share == 1:
		return s.To
	case s.Straight():
		return Point{s.From.X + share*(s.To.X-s.From.X), s.From.Y + share*(s.To.Y-s.From.Y)}
	}
	c, _ := s.Circle()
	sin, cos := math.Sincos(-share * s.Turn())
	dx, dy := s.From.X-c.X, s.From.Y-c.Y
	return Point{c.X + dx*cos - dy*sin, c.Y + dx*sin + dy*cos}
}

// Tangent is the piece's direction at a share of its length, of length 1.
func (s Piece) Tangent(share float64) Point {
	dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
	d := math.Hypot(dx, dy)
	sin, cos := math.Sincos(s.Turn() * (0.5 - share))
	return Point{(dx*cos - dy*sin) / d, (dx*sin + dy*cos) / d}
}

// Nearest is the share of the piece's length that lies nearest to a point.
func (s Piece) Nearest(p Point) float64 {
	if s.Straight() {
		dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
		return min(max(((p.X-s.From.X)*dx+(p.Y-s.From.Y)*dy)/(dx*dx+dy*dy), 0), 1)
	}
	c, _ := s.Circle()
	angle := func(q Point) float64 { return math.Atan2(q.Y-c.Y, q.X-c.X) }
	by := math.Mod((angle(s.From)-angle(p))*sign(s.Bulge), 2*math.Pi)
	if by < 0 {
		by += 2 * math.Pi
	}
	turn := math.Abs(s.Turn())
	switch {
	case by <= turn:
		return by / turn
	case by-turn < 2*math.Pi-by: // past the end, and nearer to it
		return 1
	default:
		return 0
	}
}

// Part is the piece between two shares of its length.
func (s Piece) Part(from, to float64) Piece {
	return Piece{s.At(from), s.At(to), math.Tan(math.Atan(s.Bulge) * (to - from))}
}

// crossings are the shares of the piece's length at which a coordinate of it, x or
// y, has a value.
func (s Piece) crossings(out []float64, along func(Point) float64, value float64) []float64 {
	a, b := along(s.From), along(s.To)
	if s.Straight() {
		return append(out, (value-a)/(b-a))
	}
	c, r := s.Circle()
	away := (value - along(c)) / r
	if !(math.Abs(away) < 1) {
		return out
	}
	turn := s.Turn()
	start := math.Atan2(s.From.Y-c.Y, s.From.X-c.X)
	offset := 0.0 // of the angle at which the coordinate is greatest
	if along(Point{0, 1}) == 1 {
		offset = math.Pi / 2
	}
	for _, angle := range []float64{offset + math.Acos(away), offset - math.Acos(away)} {
		by := math.Mod((start-angle)*sign(turn), 2*math.Pi)
		if by < 0 {
			by += 2 * math.Pi
		}
		out = append(out, by/math.Abs(turn))
	}
	return out
}

func sign(x float64) float64 { return math.Copysign(1, x) }

func alongX(p Point) float64 { return p.X }
func alongY(p Point) float64 { return p.Y }

// within are the parts of the piece in an upright box.
func (s Piece) within(low, high Point) []Piece {
	cuts := []float64{0, 1}
	for _, at := range s.crossed(low, high) {
		if at > 0 && at < 1 {
			cuts = append(cuts, at)
		}
	}
	slices.Sort(cuts)
	var out []Piece
	for i, from := range cuts[:len(cuts)-1] {
		to := cuts[i+1]
		m := s.At((from + to) / 2)
		if to > from && m.X >= low.X && m.X <= high.X && m.Y >= low.Y && m.Y <= high.Y {
			out = append(out, s.Part(from, to))
		}
	}
	return out
}

// crossed are the shares at which the piece meets the lines of a box's sides.
func (s Piece) crossed(low, high Point) []float64 {
	out := s.crossings(nil, alongX, low.X)
	out = s.crossings(out, alongX, high.X)
	out = s.crossings(out, alongY, low.Y)
	return s.crossings(out, alongY, high.Y)
}

// Within are the parts of the path in an upright box. A path that lies in it whole
// stays what it is.
func (p Path) Within(low, high Point) []Path {
	if l, h := p.Box(); l.X >= low.X && l.Y >= low.Y && h.X <= high.X && h.Y <= high.Y {
		return []Path{p}
	}
	var out []Path
	for _, piece := range p.Pieces() {
		for _, part := range piece.within(low, high) {
			if last := len(out) - 1; last >= 0 && out[last].end() == part.From {
				out[last].Steps = append(out[last].Steps, Step{part.To, part.Bulge})
				continue
			}
			out = append(out, Path{From: part.From, Steps: []Step{{part.To, part.Bulge}}, Stroke: p.Stroke})
		}
	}
	return out
}

func (p Path) end() Point { return p.Steps[len(p.Steps)-1].To }

// Box is the least upright box around the path.
func (p Path) Box() (low, high Point) {
	low, high = p.From, p.From
	include := func(q Point) {
		low = Point{min(low.X, q.X), min(low.Y, q.Y)}
		high = Point{max(high.X, q.X), max(high.Y, q.Y)}
	}
	for _, s := range p.Pieces() {
		include(s.To)
		if s.Straight() {
			continue
		}
		c, r := s.Circle()
		for _, at := range s.crossed(Point{c.X, c.Y}, Point{c.X, c.Y}) {
			if at <= 0 || at >= 1 {
				continue
			}
			// On the circle's axes, where it is furthest.
			if q := s.At(at); math.Abs(q.X-c.X) < math.Abs(q.Y-c.Y) {
				include(Point{c.X, c.Y + r*sign(q.Y-c.Y)})
			} else {
				include(Point{c.X + r*sign(q.X-c.X), c.Y})
			}
		}
	}
	return low, high
}
