package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// stroke is a straight piece of a drawing's lines. Two are the same where their ends
// are, either way round, to a fiftieth of a millimetre of paper.
type stroke struct{ a, b paper.Point }

type strokeKey struct{ ax, ay, bx, by int }

func (s stroke) key() strokeKey {
	const fine = 50
	at := func(p paper.Point) (int, int) { return int(math.Round(p.X * fine)), int(math.Round(p.Y * fine)) }
	ax, ay := at(s.a)
	bx, by := at(s.b)
	if bx < ax || bx == ax && by < ay {
		ax, ay, bx, by = bx, by, ax, ay
	}
	return strokeKey{ax, ay, bx, by}
}

// arcSteps is how many pieces an arc is taken in.
const arcSteps = 64

// strokesOf are the lines of items, without what they are filled with, each once.
func strokesOf(items []paper.Item) (out []stroke) {
	seen := map[strokeKey]bool{}
	add := func(points ...paper.Point) {
		for i := 1; i < len(points); i++ {
			s := stroke{points[i-1], points[i]}
			if k := s.key(); !seen[k] && (k.ax != k.bx || k.ay != k.by) {
				seen[k] = true
				out = append(out, s)
			}
		}
	}
	for i := range paper.Ungrouped(items) {
		switch i := i.(type) {
		case paper.Line:
			add(i.A, i.B)
		case paper.Poly:
			points := i.Points
			if i.Closed && len(points) > 0 {
				points = append(points[:len(points):len(points)], points[0])
			}
			if i.Pen != paper.None {
				add(points...)
			}
		case paper.Arc:
			var points []paper.Point
			for k := range arcSteps + 1 {
				sin, cos := math.Sincos(i.From + (i.To-i.From)*float64(k)/arcSteps)
				points = append(points, paper.Point{X: i.C.X + i.R*cos, Y: i.C.Y + i.R*sin})
			}
			add(points...)
		}
	}
	return out
}

// laid are the lines of an old drawing and of a new one over it: those of both, those
// of the old one alone, and above all those of the new one alone.
func laid(before, after []stroke) []paper.Item {
	in := func(list []stroke) map[strokeKey]bool {
		out := map[strokeKey]bool{}
		for _, s := range list {
			out[s.key()] = true
		}
		return out
	}
	was, is := in(before), in(after)
	var out []paper.Item
	out = append(out, chained(after, func(s stroke) bool { return was[s.key()] }, kept)...)
	out = append(out, chained(before, func(s stroke) bool { return !is[s.key()] }, gone)...)
	return append(out, chained(after, func(s stroke) bool { return !was[s.key()] }, arrive)...)
}

// chained are those lines that are wanted, each on from the last where it begins
// there, so that dashes run on.
func chained(list []stroke, wanted func(stroke) bool, as paper.Stroke) (out []paper.Item) {
	var run []paper.Point
	end := func() {
		if len(run) > 1 {
			out = append(out, paper.Poly{Points: run, Stroke: as})
		}
		run = nil
	}
	for _, s := range list {
		if !wanted(s) {
			continue
		}
		if len(run) == 0 || math.Hypot(run[len(run)-1].X-s.a.X, run[len(run)-1].Y-s.a.Y) > 0.02 {
			end()
			run = []paper.Point{s.a}
		}
		run = append(run, s.b)
	}
	end()
	return out
}
