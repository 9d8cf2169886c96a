package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Numbers that would be printed one way or the other with their last bit are
// printed one way.
func TestOnGrid(t *testing.T) {
	for x, want := range map[float64]float64{
		115.4875: 115.488, 115.48749999999998: 115.488, 115.48750000000003: 115.488,
		115.4874: 115.487, -0.0004: 0, -1.0005: -1, 0: 0,
	} {
		assert.InDelta(t, want, OnGrid(x), 0, "%v", x)
	}
}

func TestSettled(t *testing.T) {
	square := []Point{{0, 0}, {1e-9, 1e-9}, {10, 0}, {10, 10}, {3, 10.0004}, {0, 10}, {0, 1e-9}}
	sliver := []Point{{0, 0}, {10, 0.001}, {4, 0}}
	out := Settled([]Item{
		Poly{Points: square, Closed: true, Tone: Ink},
		Group{ID: "g", Items: []Item{Poly{Points: sliver, Closed: true, Tone: Ink}}},
		Poly{Points: []Point{{1, 1}, {1, 1 + 1e-9}}},
		Poly{Points: sliver, Stroke: Stroke{Pen: Hair}},
	})
	assert.Equal(t, []Item{
		Poly{Points: []Point{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, Closed: true, Tone: Ink},
		Group{ID: "g", Items: []Item{}},
		Poly{Points: sliver, Stroke: Stroke{Pen: Hair}},
	}, out)
}
