package pattern

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/sample"
	"dryfit/spec/quantity"
)

// meets reports whether a line runs through a text: its points, a quarter of a
// millimetre apart, are turned into the text's own directions.
func meets(t paper.Text, p paper.Path) bool {
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	wide := paper.TextWidth(t.Text, t.Height)
	for _, piece := range p.Pieces() {
		n := max(1, math.Ceil(4*piece.Length()))
		for k := 0.0; k <= n; k++ {
			q := piece.At(k / n)
			x, y := q.X-t.At.X, q.Y-t.At.Y
			if along, up := x*cos-y*sin, -(x*sin + y*cos); along > 0 && along < wide && up > 0 && up < t.Height {
				return true
			}
		}
	}
	return false
}

// No line of a pattern runs through what is written in it, whatever the ceiling.
func TestLabelsAreClearOfLines(t *testing.T) {
	labels := 0
	for _, name := range sample.Names(t) {
		made := shop.Of(sample.Ceiling(t, name, nil))
		for _, p := range made.Patterns() {
			f := Of(p, about(quantity.Metric))
			var texts []paper.Text
			var lines []paper.Path
			for _, group := range f.body {
				for _, item := range group.(paper.Group).Items {
					if text, ok := item.(paper.Text); ok && group.(paper.Group).ID == string(shop.Text) {
						texts = append(texts, text)
					}
					lines = append(lines, pathsOf(item)...)
				}
			}
			labels += len(texts)
			for _, text := range texts {
				for _, line := range lines {
					if meets(text, line) {
						t.Errorf("%s, %s: %q at %.0f, %.0f has a line through it", name, p.Name, text.Text, text.At.X, text.At.Y)
						break
					}
				}
			}
		}
	}
	assert.Greater(t, labels, 500)
}

// A label whose place a line crosses stands beside the line; one that is clear stays.
func TestLabelIsMovedAside(t *testing.T) {
	f := &Full{}
	p := shop.Pattern{Marks: []shop.Mark{
		{Layer: shop.Text, Label: &shop.Label{At: shop.PatternPoint{0.1, 0}, Text: "rail 3"}},
		{Layer: shop.Text, Label: &shop.Label{At: shop.PatternPoint{0.2, 0.2}, Text: "rail 4"}},
	}}
	through := paper.Line{A: paper.Point{X: 0, Y: -1}, B: paper.Point{X: 300, Y: -1}}
	got := f.labels(p, []paper.Item{paper.Group{Items: []paper.Item{through}}})
	assert.Equal(t, paper.Point{X: 100, Y: -3}, got[0].(paper.Text).At, "two steps above the line, the descenders clear")
	assert.Equal(t, paper.Point{X: 200, Y: -200}, got[1].(paper.Text).At)
}

// A pattern that takes more tiles than anybody joins has the key page alone, which
// says so.
func TestTooManyTiles(t *testing.T) {
	p := shop.Pattern{Name: "skin-1-1", Outline: shop.Outline{
		{From: shop.PatternPoint{0, 0}, To: shop.PatternPoint{40, 0}},
		{From: shop.PatternPoint{40, 0}, To: shop.PatternPoint{40, 40}},
		{From: shop.PatternPoint{40, 40}, To: shop.PatternPoint{0, 40}},
		{From: shop.PatternPoint{0, 40}, To: shop.PatternPoint{0, 0}},
	}}
	for i := range 400 { // lines over the whole of it, so that no tile is blank
		y := float64(i) / 10
		p.Marks = append(p.Marks, shop.Mark{Layer: shop.Rail, Line: shop.Outline{{From: shop.PatternPoint{0, y}, To: shop.PatternPoint{40, y}}}})
	}
	pages := Of(p, about(quantity.Metric)).Tiles(Papers[0])
	assert.Len(t, pages, 1)
	text := ""
	for _, item := range pages[0].Items {
		if line, ok := item.(paper.Text); ok {
			text += line.Text + " "
		}
	}
	assert.Contains(t, text, "More than 1000 tiles of this paper would be needed, so none is made. Plot the SVG or cut from the DXF.")
}
