package pattern

import (
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

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
