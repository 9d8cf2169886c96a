package draft

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

func sheetOf(items ...paper.Item) paper.Sheet {
	return paper.Sheet{Width: 100, Height: 100, Items: items}
}

func TestOverlapsAreSeen(t *testing.T) {
	text := paper.Text{At: paper.Point{X: 20, Y: 20}, Height: 3, Text: "here"}
	line := func(x0, y0, x1, y1 float64) paper.Line {
		return paper.Line{A: paper.Point{X: x0, Y: y0}, B: paper.Point{X: x1, Y: y1}, Stroke: paper.Stroke{Pen: paper.Hair}}
	}
	assert.Empty(t, Overlaps(sheetOf(text, line(0, 30, 100, 30))))
	assert.Len(t, Overlaps(sheetOf(text, line(0, 0, 50, 50))), 1, "a line through it")
	assert.Len(t, Overlaps(sheetOf(line(22, 0, 22, 90), paper.Group{Items: []paper.Item{text}})), 1, "in a group")
	assert.Len(t, Overlaps(sheetOf(text, text)), 1, "another text")
	assert.Len(t, Overlaps(sheetOf(paper.Text{At: paper.Point{X: 98, Y: 20}, Height: 3, Text: "out"})), 1, "off the sheet")
	assert.Len(t, Overlaps(sheetOf(text, paper.Arc{C: paper.Point{X: 20, Y: 10}, R: 9, To: 3.2, Stroke: paper.Stroke{Pen: paper.Hair}})), 1, "an arc")
	assert.Len(t, Overlaps(sheetOf(text, paper.Poly{Points: []paper.Point{{X: 18, Y: 0}, {X: 23, Y: 0}, {X: 23, Y: 40}}, Closed: true, Tone: paper.Ink})), 1, "the edge of a tone")
	turned := paper.Text{At: paper.Point{X: 50, Y: 80}, Height: 3, Turn: 90, Text: "upward it goes"}
	assert.Len(t, Overlaps(sheetOf(turned, line(40, 70, 60, 70))), 1, "turned text")
	assert.Empty(t, Overlaps(sheetOf(turned, line(40, 85, 60, 85))))
}

// Whatever is drawn and asked for, no text meets anything.
func TestPlacingNeverOverlaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := Series(rapid.Bool().Draw(t, "imperial"))[rapid.IntRange(0, 4).Draw(t, "size")]
		b := New(Frame{Name: "x", Title: "x", Paper: size, Project: []string{"A title"}, Caution: "Mind."})
		low, high := b.Area()
		at := func(name string) paper.Point {
			return paper.Point{
				X: rapid.Float64Range(low.X+30, high.X-30).Draw(t, name), Y: rapid.Float64Range(low.Y+30, high.Y-30).Draw(t, name),
			}
		}
		for i := range rapid.IntRange(0, 12).Draw(t, "lines") {
			b.Line(at(fmt.Sprint("a", i)), at(fmt.Sprint("b", i)), paper.Stroke{Pen: paper.Medium})
		}
		for i := range rapid.IntRange(0, 8).Draw(t, "dims") {
			side := []Side{Above, Below, Left, Right}[rapid.IntRange(0, 3).Draw(t, "side")]
			b.Dim(Dim{From: at(fmt.Sprint("f", i)), To: at(fmt.Sprint("t", i)), Side: side, Text: fmt.Sprint(i*i*137, "mm")})
		}
		for i := range rapid.IntRange(0, 12).Draw(t, "labels") {
			b.Label(Label{Text: "label of\ntwo lines", Of: at(fmt.Sprint("l", i)), Inside: i%2 == 0})
		}
		for i := range rapid.IntRange(0, 9).Draw(t, "marks") {
			b.Mark(i+1, at(fmt.Sprint("m", i)))
		}
		if wrong := Overlaps(b.Finish()); len(wrong) > 0 {
			t.Fatal(wrong)
		}
	})
}

// A leader ends at its place in the point of an arrow that is filled, 1.6mm long: ISO 128-2,
// from memory. Lines around the place keep the label away from it.
func TestALeaderEndsInAnArrow(t *testing.T) {
	b := New(Frame{Name: "x", Title: "x", Paper: Series(false)[1], Project: []string{"A title"}, Caution: "Mind."})
	of := paper.Point{X: 150, Y: 100}
	for off := -9.0; off <= 9; off++ {
		b.Line(paper.Point{X: of.X - 9, Y: of.Y + off}, paper.Point{X: of.X + 9, Y: of.Y + off}, paper.Stroke{Pen: paper.Fine})
	}
	b.Label(Label{Text: "label", Of: of})
	leaders, arrows := 0, 0
	for _, item := range b.Finish().Items {
		switch i := item.(type) {
		case paper.Line:
			if i.A == of {
				leaders++
				assert.Greater(t, math.Hypot(i.B.X-of.X, i.B.Y-of.Y), 2*arrowLong)
			}
		case paper.Poly:
			if len(i.Points) == 3 && i.Points[0] == of {
				arrows++
				assert.Equal(t, paper.Ink, i.Tone)
				base := paper.Point{X: (i.Points[1].X + i.Points[2].X) / 2, Y: (i.Points[1].Y + i.Points[2].Y) / 2}
				assert.InDelta(t, 1.6, math.Hypot(base.X-of.X, base.Y-of.Y), 1e-9)
			}
		}
	}
	assert.Equal(t, 1, leaders)
	assert.Equal(t, 1, arrows)
}

func TestLetters(t *testing.T) {
	for n, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA"} {
		assert.Equal(t, want, Letters(n))
	}
}
