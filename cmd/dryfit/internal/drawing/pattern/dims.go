package pattern

import (
	"cmp"
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/result/shop"
)

const (
	gap    = 1.0 // between an edge and the line to a dimension's text, mm
	leader = 5.0 // length of that line
	lines  = 1.6 // the least step of texts side by side, of their height
)

// stop is a running dimension where it is printed.
type stop struct {
	at   paper.Point
	out  paper.Point // of length 1, away from the pattern
	text string
	side int // of the outline's segment
	far  float64
}

// dims prints each running dimension square to its edge, outside the pattern. One
// that would lie on its neighbour is printed beyond it.
func (f *Full) dims(p shop.Pattern) []paper.Item {
	var out []paper.Item
	for _, s := range spread(f.stops(p)) {
		from, to := s.along(gap), s.along(s.far)
		out = append(out, paper.Line{A: from, B: to, Stroke: paper.Stroke{Pen: paper.Hair}}, s.print())
	}
	return out
}

func (s stop) along(d float64) paper.Point {
	return paper.Point{X: s.at.X + d*s.out.X, Y: s.at.Y + d*s.out.Y}
}

// print is the text, readable from below or from the right.
func (s stop) print() paper.Text {
	turn, anchor := math.Atan2(-s.out.Y, s.out.X)*180/math.Pi, paper.Start
	if turn > 90.5 || turn <= -89.5 {
		turn, anchor = turn+180, paper.End
	}
	at := s.along(s.far + gap)
	// The middle of the capitals lies on the line.
	down := small / 2
	sin, cos := math.Sincos(turn * math.Pi / 180)
	return paper.Text{
		At: paper.Point{X: at.X + down*sin, Y: at.Y + down*cos}, Height: small,
		Turn: math.Mod(turn, 360), Anchor: anchor, Text: s.text,
	}
}

// stops are the places of all running dimensions.
func (f *Full) stops(p shop.Pattern) (out []stop) {
	outline := f.path(p.Outline, paper.Stroke{}).Pieces()
	for _, r := range p.Runs {
		var places []float64
		for _, s := range r.Stations {
			places = append(places, s.At)
		}
		printed, _ := f.about.Units.Running(places...)
		for i, s := range r.Stations {
			at := f.at(s.On)
			away, side := outward(outline, at)
			out = append(out, stop{at: at, out: away, side: side, text: s.Name + "  " + printed[i]})
		}
	}
	return out
}

// spread puts the texts of an edge beside each other, or one beyond the other.
func spread(all []stop) []stop {
	slices.SortStableFunc(all, func(a, b stop) int {
		return cmp.Or(cmp.Compare(a.side, b.side), cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.at.Y, b.at.Y))
	})
	for i := range all {
		all[i].far = gap + leader
		for k := i - 1; k >= 0 && all[k].side == all[i].side; k-- {
			if math.Hypot(all[k].at.X-all[i].at.X, all[k].at.Y-all[i].at.Y) >= lines*small {
				break
			}
			all[i].far = max(all[i].far, all[k].far+paper.TextWidth(all[k].text, small)+2*leader)
		}
	}
	return all
}

// outward is the direction out of an outline at the place on it that is nearest to a
// point; and whether that lies on what bounds it from above.
func outward(outline []paper.Piece, at paper.Point) (out paper.Point, side int) {
	nearest, turn := math.Inf(1), around(outline)
	for _, s := range outline {
		share := s.Nearest(at)
		q := s.At(share)
		if d := math.Hypot(q.X-at.X, q.Y-at.Y); d < nearest-1e-9 {
			t := s.Tangent(share)
			nearest, out = d, paper.Point{X: -turn * t.Y, Y: turn * t.X}
		}
	}
	if out.Y < 0 {
		side = 1
	}
	return out, side
}

// around is 1 of an outline that runs anticlockwise as it is seen, else -1.
func around(outline []paper.Piece) float64 {
	area := 0.0
	for _, s := range outline {
		m := s.At(0.5)
		for _, ends := range [2][2]paper.Point{{s.From, m}, {m, s.To}} {
			area += ends[0].Y*ends[1].X - ends[0].X*ends[1].Y
		}
	}
	return math.Copysign(1, area)
}
