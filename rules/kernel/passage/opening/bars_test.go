package opening

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
	"dryfit/rules/kernel/passage/space"
)

// The middle line of a ring lies half way between its two arcs, and its bars are
// as thick as the ring is over their length; a flat panel's bar is the panel.
func TestMiddleLineAndBars(t *testing.T) {
	const radius, thick = 2.0, 0.09
	ring := passage.NewBody(outline.Arc(radius, thick, 0.8, 40), 1, 0)
	require.NotEmpty(t, ring.Middle())
	centre := centreOf(ring.Section())
	for _, s := range ring.Middle() {
		assert.InDelta(t, radius+thick/2, math.Hypot(s.At.X-centre.X, s.At.Y-centre.Y), 2e-3)
	}
	bars := planks(ring)
	middle := ring.Middle()
	for i := range plankStations {
		for l := plankFirst; ; l *= plankGrowth {
			high := ring.ClearHeight(middle[(2*i+1)*len(middle)/(2*plankStations)], l)
			if high <= 0 {
				break
			}
			less, more := min(l, high, 1), l+high+1-min(l, high, 1)-max(l, high, 1)
			assert.True(t, slices.ContainsFunc(bars, func(p plank) bool { return p.less >= less && p.more >= more }), "%v by %v is within none", less, more)
		}
	}
	for i, p := range bars {
		for k, q := range bars {
			assert.False(t, i != k && p.less >= q.less && p.more >= q.more, "%v is within %v", q, p)
		}
	}
	flat := passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 0.1}, {X: 0, Y: 0.1}}, 3, 0)
	bars = planks(flat)
	require.Len(t, bars, 1)
	assert.InDelta(t, 0.1, bars[0].less, 1e-12)
	assert.InDelta(t, 2, bars[0].more, 1e-12)
}

// centreOf is the centre of the greatest circle of a ring's section: of three of
// its places that are furthest out.
func centreOf(p []space.Point) space.Point {
	h := space.Hull(p)
	a, b, c := h[0], h[len(h)/3], h[2*len(h)/3]
	d := 2 * (a.X*(b.Y-c.Y) + b.X*(c.Y-a.Y) + c.X*(a.Y-b.Y))
	sq := func(p space.Point) float64 { return p.X*p.X + p.Y*p.Y }
	return space.Point{
		X: (sq(a)*(b.Y-c.Y) + sq(b)*(c.Y-a.Y) + sq(c)*(a.Y-b.Y)) / d,
		Y: (sq(a)*(c.X-b.X) + sq(b)*(a.X-c.X) + sq(c)*(b.X-a.X)) / d,
	}
}
