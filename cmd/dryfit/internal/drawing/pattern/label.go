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

// turned is a point turned about another by an angle in degrees, clockwise on paper.
func turned(p, about paper.Point, angle float64) paper.Point {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	x, y := p.X-about.X, p.Y-about.Y
	return paper.Point{X: about.X + x*cos - y*sin, Y: about.Y + x*sin + y*cos}
}

// obstacles are what a label may not meet: lines, and other texts by their frames.
func obstacles(groups []paper.Item) []boxedItem {
	out := boxed(groups)
	for i, o := range out {
		if t, ok := o.Item.(paper.Text); ok {
			out[i].Item = frameOf(t)
		}
	}
	return out
}

// beside are the items that a text may meet wherever it is moved.
func beside(t paper.Text, lines []boxedItem) (out []boxedItem) {
	const most = labelStep*labelSteps*math.Sqrt2 + labelClear
	low, high := t.Box()
	for _, i := range lines {
		if i.low.X <= high.X+most && i.high.X >= low.X-most && i.low.Y <= high.Y+most && i.high.Y >= low.Y-most {
			out = append(out, i)
		}
	}
	return out
}

// free reports whether a text stays clear of all lines: each is turned into the
// text's own frame, where its box is upright.
func free(t paper.Text, lines []boxedItem) bool {
	level := t
	level.Turn = 0
	low, high := level.Box()
	low, high = paper.Point{X: low.X - labelClear, Y: low.Y - labelClear}, paper.Point{X: high.X + labelClear, Y: high.Y + labelClear}
	for _, i := range lines {
		for _, p := range pathsOf(i.Item) {
			p.From = turned(p.From, t.At, t.Turn)
			steps := slices.Clone(p.Steps)
			for k := range steps {
				steps[k].To = turned(steps[k].To, t.At, t.Turn)
			}
			p.Steps = steps
			if p.Within(low, high) != nil {
				return false
			}
		}
	}
	return true
}

// frameOf is the outline of a text's box.
func frameOf(t paper.Text) paper.Path {
	level := t
	level.Turn = 0
	low, high := level.Box()
	at := func(x, y float64) paper.Point { return turned(paper.Point{X: x, Y: y}, t.At, -t.Turn) }
	first := at(low.X, low.Y)
	return paper.Path{From: first, Closed: true, Steps: []paper.Step{
		{To: at(high.X, low.Y)}, {To: at(high.X, high.Y)}, {To: at(low.X, high.Y)}, {To: first},
	}}
}
