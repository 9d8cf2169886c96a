package hoist

import (
	"fmt"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/raising"
)

// id names a frame, counted from 0, for who takes the file apart.
func id(i int) string { return fmt.Sprintf("frame-%d", i+1) }

const (
	leading = 1.75 // of base lines, by the height of capitals
	pause   = 0.8  // mm, between two sentences
)

// line is one of a frame's text, so far under the one before it.
type line struct {
	text   string
	height float64
	marked bool
	down   float64
}

// lines are a frame's text, broken to its column.
func lines(f *raising.Frame, n int, c *layout.Ceiling, textWide float64) (out []line) {
	add := func(text string, height float64, marked bool) {
		for i, l := range paper.Wrap(text, textWide, height) {
			down := leading * height
			if i == 0 {
				down += pause
			}
			out = append(out, line{l, height, marked, down})
		}
	}
	add(f.Title(n), draft.Large, false)
	if f.Release != "" {
		add(f.Release, draft.Large, true)
	}
	for _, l := range f.Lines(c.Units) {
		add(l, draft.Ordinary, false)
	}
	return out
}

func highOf(list []line) (high float64) {
	for _, l := range list {
		high += l.down
	}
	return high
}

func write(b *draft.Board, at paper.Point, list []line) {
	for _, l := range list {
		at.Y += l.down
		b.Write(paper.Text{At: at, Height: l.height, Text: l.text, Marked: l.marked})
	}
}
