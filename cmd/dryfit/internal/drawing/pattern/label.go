package pattern

import (
	"cmp"
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/result/shop"
)

// How far a label may be moved off a line, in steps along and across it, in mm; and
// how far it stays from lines.
const (
	labelStep  = 1.5
	labelSteps = 20
	labelClear = 0.6
)

// labels are the pattern's, each at its place or at the nearest to it where it meets
// no line and no other label. One that has no such place stays.
func (f *Full) labels(p shop.Pattern, drawn []paper.Item) (out []paper.Item) {
	lines := obstacles(drawn)
	for _, m := range p.Marks {
		if m.Label == nil {
			continue
		}
		t := settled(f.label(*m.Label), lines)
		out = append(out, t)
		lines = append(lines, obstacles([]paper.Item{paper.Group{Items: []paper.Item{t}}})...)
	}
	return out
}

// settled is a text where it is free: moved, else square to how it ran and moved.
func settled(t paper.Text, lines []boxedItem) paper.Text {
	square := t
	square.Turn += 90
	for _, way := range []paper.Text{t, square} {
		near := beside(way, lines)
		for _, by := range moves {
			if moved := aside(way, by); free(moved, near) {
				return moved
			}
		}
	}
	return t
}

func (f *Full) label(l shop.Label) paper.Text {
	return paper.Text{At: f.at(l.At), Height: letter, Turn: l.Angle * 180 / math.Pi, Text: l.Text}
}

// moves are the places that are tried, in a text's own directions, nearest first.
var moves = func() (out []paper.Point) {
	for i := -labelSteps; i <= labelSteps; i++ {
		for k := -labelSteps; k <= labelSteps; k++ {
			out = append(out, paper.Point{X: labelStep * float64(i), Y: labelStep * float64(k)})
		}
	}
	far := func(p paper.Point) float64 { return p.X*p.X + p.Y*p.Y }
	slices.SortStableFunc(out, func(a, b paper.Point) int { return cmp.Compare(far(a), far(b)) })
	return out
}()

// aside is a text moved along and below its base line.
func aside(t paper.Text, by paper.Point) paper.Text {
	t.At = turned(paper.Point{X: t.At.X + by.X, Y: t.At.Y + by.Y}, t.At, -t.Turn)
	return t
}
