package draft

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// box is an upright rectangle of the sheet.
type box struct{ x0, y0, x1, y1 float64 }

var nowhere = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

func (b box) grown(by float64) box { return box{b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by} }

func (b box) with(p paper.Point) box {
	return box{min(b.x0, p.X), min(b.y0, p.Y), max(b.x1, p.X), max(b.y1, p.Y)}
}

func (b box) meets(o box) bool { return b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 }

func (b box) within(o box) bool {
	return b.x0 >= o.x0 && b.y0 >= o.y0 && b.x1 <= o.x1 && b.y1 <= o.y1
}

// nearest is the point of the box that is nearest to another.
func (b box) nearest(p paper.Point) paper.Point {
	return paper.Point{X: min(max(p.X, b.x0), b.x1), Y: min(max(p.Y, b.y0), b.y1)}
}

func boxOf(t paper.Text) box {
	low, high := t.Box()
	return box{low.X, low.Y, high.X, high.Y}
}

// segment is a piece of a drawn line.
type segment struct{ a, b paper.Point }

// crosses reports whether any of the segment lies inside the box, by the
// clipping of Liang and Barsky.
func (s segment) crosses(b box) bool {
	t0, t1 := 0.0, 1.0
	dx, dy := s.b.X-s.a.X, s.b.Y-s.a.Y
	for _, edge := range [4][2]float64{{-dx, s.a.X - b.x0}, {dx, b.x1 - s.a.X}, {-dy, s.a.Y - b.y0}, {dy, b.y1 - s.a.Y}} {
		p, q := edge[0], edge[1]
		switch r := q / p; {
		case p == 0 && q <= 0:
			return false
		case p < 0:
			t0 = max(t0, r)
		case p > 0:
			t1 = min(t1, r)
		}
	}
	return t0 < t1
}

// strokes are the segments that an item is drawn in; an arc is taken in steps
// that miss it by less than a twentieth of a millimetre.
func strokes(item paper.Item) []segment {
	switch i := item.(type) {
	case paper.Line:
		if i.Pen == paper.None {
			return nil
		}
		return []segment{{i.A, i.B}}
	case paper.Arc:
		return arcSegments(i)
	case paper.Poly:
		return polySegments(i)
	case paper.Hatching:
		var out []segment
		for _, l := range i.Lines {
			out = append(out, segment{l[0], l[1]})
		}
		return out
	case paper.Group:
		var out []segment
		for _, inner := range i.Items {
			out = append(out, strokes(inner)...)
		}
		return out
	default:
		return nil
	}
}

func arcSegments(a paper.Arc) []segment {
	if a.Pen == paper.None {
		return nil
	}
	const miss = 0.05
	step := 2 * math.Sqrt(2*miss/max(a.R, 2*miss))
	n := max(2, int(math.Ceil((a.To-a.From)/step)))
	at := func(i int) paper.Point {
		angle := a.From + (a.To-a.From)*float64(i)/float64(n)
		return paper.Point{X: a.C.X + a.R*math.Cos(angle), Y: a.C.Y + a.R*math.Sin(angle)}
	}
	var out []segment
	for i := range n {
		out = append(out, segment{at(i), at(i + 1)})
	}
	return out
}

// polySegments takes the edge of a filled figure for a line, drawn or not: text
// that lies half on a tone is hard to read.
func polySegments(p paper.Poly) []segment {
	if p.Pen == paper.None && p.Tone == paper.Clear {
		return nil
	}
	var out []segment
	for i := 1; i < len(p.Points); i++ {
		out = append(out, segment{p.Points[i-1], p.Points[i]})
	}
	if n := len(p.Points); p.Closed && n > 2 {
		out = append(out, segment{p.Points[n-1], p.Points[0]})
	}
	return out
}
