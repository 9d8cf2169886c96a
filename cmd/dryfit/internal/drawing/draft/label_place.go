package draft

import (
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// label puts a text at the first place tried that is free, a large one as an ordinary
// one where it has no room.
func (b *Board) label(l Label, lines []string, around float64) bool {
	if l.Height > Ordinary && b.labelOf(l.Height, l, lines, around) {
		return true
	}
	return b.labelOf(Ordinary, l, lines, around)
}

// labelOf does so with letters of a height.
func (b *Board) labelOf(height float64, l Label, lines []string, around float64) bool {
	w, h := 0.0, height*(1+leading*float64(len(lines)-1))+paper.Descent(height)
	for _, line := range lines {
		w = max(w, paper.TextWidth(line, height))
	}
	w, h = w+2*around, h+2*around
	if l.Bubble != "" {
		w, h = w+2*Bubble+bubbleOff, max(h, 2*Bubble)
	}
	tip := 0.0
	if around > 0 {
		tip = tagPoint
	}
	try := func(x, y float64, reach float64) bool {
		at := box{x - w/2, y - h/2, x + w/2, y + h/2}
		if outer := (box{at.x0 - tip, at.y0, at.x1 + tip, at.y1}).grown(clear); !at.within(b.area) || !b.room.free(outer) {
			return false
		}
		if reach > near && !l.Free && !b.leader(l, at) {
			return false
		}
		b.write(l, lines, at, height, around)
		return true
	}
	if l.Inside && try(l.Of.X, l.Of.Y, 0) {
		return true
	}
	for _, r := range distances {
		for _, d := range directions(l.Prefer) {
			if try(l.Of.X+d[0]*(r+w/2), l.Of.Y+d[1]*(r+h/2), r) {
				return true
			}
		}
	}
	return false
}

// leader draws the line from a place to its label, if it passes no text.
func (b *Board) leader(l Label, at box) bool {
	line := segment{l.Of, at.grown(2 * clear).nearest(l.Of)}
	if !b.room.open(line) {
		return false
	}
	b.add(paper.Line{A: line.a, B: line.b, Stroke: paper.Stroke{Pen: paper.Hair, Marked: l.Marked}})
	if !l.onDim {
		b.arrow(line, l.Marked)
	}
	return true
}

// The head of an arrow, in mm.
const (
	arrowLong = 1.6
	arrowWide = 0.35 // half of it
)

// arrow ends a leader at its place, by ISO 128-2 (from memory), where no text is in
// the way.
func (b *Board) arrow(leader segment, marked bool) {
	dx, dy := leader.b.X-leader.a.X, leader.b.Y-leader.a.Y
	length := math.Hypot(dx, dy)
	if length < 2*arrowLong {
		return
	}
	dx, dy = dx/length, dy/length
	base := paper.Point{X: leader.a.X + dx*arrowLong, Y: leader.a.Y + dy*arrowLong}
	head := []paper.Point{leader.a, {X: base.X - dy*arrowWide, Y: base.Y + dx*arrowWide}, {X: base.X + dy*arrowWide, Y: base.Y - dx*arrowWide}}
	sides := polySegments(paper.Poly{Points: head, Closed: true, Tone: paper.Ink})
	if slices.ContainsFunc(sides, func(s segment) bool { return !b.room.open(s) }) {
		return
	}
	b.add(paper.Poly{Points: head, Closed: true, Tone: paper.Ink, Stroke: paper.Stroke{Pen: paper.Hair, Marked: marked}})
}

func (b *Board) write(l Label, lines []string, at box, height, around float64) {
	if l.Bubble != "" {
		at = b.bubble(l.Bubble, at, height*(1+leading*float64(len(lines)-1))+paper.Descent(height))
	}
	y := at.y0 + around + height
	for _, line := range lines {
		b.add(paper.Text{At: paper.Point{X: at.x0 + around, Y: y}, Height: height, Text: line, Marked: l.Marked})
		y += leading * height
	}
	if around > 0 {
		b.outline(at)
	}
}

// Bubble is the radius of a circled letter, in mm.
const Bubble = 3.5

// bubbleOff is from it to the text that it stands before, in mm.
const bubbleOff = 1.2

// bubble draws a circled letter at the left of a label, and is what it leaves to the
// label's lines, which are so high.
func (b *Board) bubble(letter string, at box, high float64) box {
	middle := paper.Point{X: at.x0 + Bubble, Y: (at.y0 + at.y1) / 2}
	b.add(paper.Arc{C: middle, R: Bubble, To: 2 * math.Pi, Stroke: paper.Stroke{Pen: paper.Fine}})
	b.add(paper.Text{At: paper.Point{X: middle.X, Y: middle.Y + Ordinary/2}, Height: Ordinary, Anchor: paper.Middle, Text: letter})
	return box{at.x0 + 2*Bubble + bubbleOff, middle.Y - high/2, at.x1, middle.Y + high/2}
}

// outline draws a mark's: a tag, pointed at both ends.
func (b *Board) outline(at box) {
	middle, point := (at.y0+at.y1)/2, tagPoint
	b.add(paper.Poly{
		Points: []paper.Point{
			{X: at.x0, Y: at.y0},
			{X: at.x1, Y: at.y0},
			{X: at.x1 + point, Y: middle},
			{X: at.x1, Y: at.y1},
			{X: at.x0, Y: at.y1},
			{X: at.x0 - point, Y: middle},
		},
		Closed: true, Stroke: paper.Stroke{Pen: paper.Fine, Marked: true},
	})
}
