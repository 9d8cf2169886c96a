package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// By hand: a box is around all that is drawn, what is in groups too, an arc's whole circle
// and the reach of a bulge over its chord; hatching lies in what it fills, and an empty group
// is nowhere.
func TestBox(t *testing.T) {
	square := Poly{Points: []Point{{1, 1}, {3, 1}, {3, 3}, {1, 3}}, Closed: true}
	for name, c := range map[string]struct {
		items     []Item
		low, high Point
	}{
		"nothing":           {nil, Point{}, Point{}},
		"a line":            {[]Item{Line{A: Point{5, -1}, B: Point{2, 4}}}, Point{2, -1}, Point{5, 4}},
		"a quarter's arc":   {[]Item{Arc{C: Point{1, 2}, R: 3, To: 1.5}}, Point{-2, -1}, Point{4, 5}},
		"a half circle":     {[]Item{Path{From: Point{0, 0}, Steps: []Step{{To: Point{2, 0}, Bulge: 1}}}}, Point{0, 0}, Point{2, 1}},
		"hatched":           {[]Item{square, Hatching{Lines: [][2]Point{{{0, 0}, {9, 9}}}}}, Point{1, 1}, Point{3, 3}},
		"in groups":         {[]Item{Group{Items: []Item{Group{Items: []Item{square}}, Line{A: Point{7, 2}, B: Point{8, 2}}}}}, Point{1, 1}, Point{8, 3}},
		"an empty group":    {[]Item{Group{}, Group{Items: []Item{Poly{}}}, square}, Point{1, 1}, Point{3, 3}},
		"a polygon of none": {[]Item{Poly{}}, Point{}, Point{}},
	} {
		low, high := Box(c.items)
		for _, d := range []float64{low.X - c.low.X, low.Y - c.low.Y, high.X - c.high.X, high.Y - c.high.Y} {
			assert.InDelta(t, 0, d, 1e-12, name)
		}
	}
}
