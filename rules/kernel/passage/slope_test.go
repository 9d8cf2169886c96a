package passage

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage/space"
)

func randomSlope(r *rand.Rand) Slope {
	low := r.NormFloat64()
	out := Slope{low: low, high: low + r.Float64()}
	for i := range out.By {
		out.By[i] = r.NormFloat64()
	}
	return out
}

// Sums and differences of bounds hold what is within them at the same shares, and
// touch it at their ends: by interval arithmetic.
func TestSlopesHoldTheirSums(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 0))
	for range 2000 {
		a, b := randomSlope(r), randomSlope(r)
		n, m := r.NormFloat64(), r.NormFloat64()
		var s Shares
		for i := range s {
			s[i] = 2*r.Float64() - 1
		}
		less, plus := a.less(&b), a.plus(n, &b, m)
		lowLess, highLess, lowPlus, highPlus := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
		for _, x := range []float64{a.low, a.high} {
			for _, y := range []float64{b.low, b.high} {
				x, y := x+a.By.dot(&s), y+b.By.dot(&s)
				lowLess, highLess = min(lowLess, x-y), max(highLess, x-y)
				lowPlus, highPlus = min(lowPlus, n*x+m*y), max(highPlus, n*x+m*y)
			}
		}
		assert.InDelta(t, lowLess, less.low+less.By.dot(&s), 1e-12)
		assert.InDelta(t, highLess, less.high+less.By.dot(&s), 1e-12)
		assert.InDelta(t, lowPlus, plus.low+plus.By.dot(&s), 1e-12)
		assert.InDelta(t, highPlus, plus.high+plus.By.dot(&s), 1e-12)
	}
}

// A mixture of two planes lies between them everywhere, and is nowhere more than
// the lesser of their greatest values.
func TestMixedPlanesLieBetween(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 0))
	less := 0
	for range 2000 {
		a, b := plane{at: r.NormFloat64()}, plane{at: r.NormFloat64()}
		for i := range a.by {
			a.by[i], b.by[i] = r.NormFloat64(), r.NormFloat64()
		}
		m := mixed(a, b)
		require.LessOrEqual(t, m.most(), min(a.most(), b.most())+1e-12)
		if m.most() < min(a.most(), b.most())-1e-9 {
			less++
		}
		for f := 0.0; f <= 1; f += 0.01 { // no other mean has a lesser greatest value
			other := plane{at: a.at + f*(b.at-a.at)}
			for i := range other.by {
				other.by[i] = a.by[i] + f*(b.by[i]-a.by[i])
			}
			require.LessOrEqual(t, m.most(), other.most()+1e-12)
		}
		for range 20 {
			var s Shares
			for i := range s {
				s[i] = 2*r.Float64() - 1
			}
			x, y, at := a.at+a.by.dot(&s), b.at+b.by.dot(&s), m.at+m.by.dot(&s)
			require.GreaterOrEqual(t, at, min(x, y)-1e-12)
			require.LessOrEqual(t, at, max(x, y)+1e-12)
		}
	}
	assert.Positive(t, less)
}

// Where the straight way between two places crosses the door lies within what is
// said of it, whether or not the two may be as far in as each other.
func TestCrossingsLieWithinTheirBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 0))
	crossed := map[int]int{}
	for range 20000 {
		s := slopes{of: make([][3]Slope, 2)}
		size := math.Pow(2, -5*r.Float64())
		for i := range s.of {
			for k := range s.of[i] {
				m := r.NormFloat64()
				s.of[i][k] = Slope{low: m, high: m + 0.2*size*r.Float64()}
				for n := range s.of[i][k].By {
					s.of[i][k].By[n] = 0.3 * size * r.NormFloat64()
				}
			}
		}
		mid := r.NormFloat64()
		s.cross(0, 1, mid)
		for range 10 {
			var at Shares
			for i := range at {
				at[i] = 2*r.Float64() - 1
			}
			value := func(b Slope) float64 { return b.low + r.Float64()*(b.high-b.low) + b.By.dot(&at) }
			var v [2][3]float64
			for i := range v {
				for k := range v[i] {
					v[i][k] = value(s.of[i][k])
				}
			}
			x, z := mid+v[0][0], mid+v[1][0]
			if x*z >= 0 {
				continue
			}
			crossed[len(s.pieces)]++
			for k := range 2 {
				y := v[0][k+1] + x/(x-z)*(v[1][k+1]-v[0][k+1])
				low, high := math.Inf(1), math.Inf(-1)
				for i := range s.pieces {
					b := s.pieces[i][k]
					low, high = min(low, b.low+b.By.dot(&at)), max(high, b.high+b.By.dot(&at))
				}
				require.GreaterOrEqual(t, y, low-1e-9)
				require.LessOrEqual(t, y, high+1e-9)
			}
		}
	}
	assert.Greater(t, crossed[1], 1000)
	assert.Greater(t, crossed[2], 100)
}

// The middle line of a ring lies half way between its two arcs, and its bars are
// as thick as the ring is over their length; a flat panel's bar is the panel.
func TestMiddleLineAndBars(t *testing.T) {
	const radius, thick = 2.0, 0.09
	ring := NewBody(arc(radius, thick, 0.8), 1, 0)
	require.NotEmpty(t, ring.stations())
	centre := centreOf(ring.section)
	for _, s := range ring.stations() {
		assert.InDelta(t, radius+thick/2, math.Hypot(s.At.X-centre.X, s.At.Y-centre.Y), 2e-3)
	}
	bars := ring.planks()
	middle := ring.middle()
	for i := range plankStations {
		for l := plankFirst; ; l *= plankGrowth {
			high := ring.clearHeight(middle[(2*i+1)*len(middle)/(2*plankStations)], l)
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
	flat := NewBody([]space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 0.1}, {X: 0, Y: 0.1}}, 3, 0)
	bars = flat.planks()
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

// A corner too low for a panel that is carried upright leaves half of what lacks
// on each side, less the wrap.
func TestACornerThatIsTooLow(t *testing.T) {
	const wrap = 0.02
	b := NewBody([]space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 0.1}, {X: 0, Y: 0.1}}, 3, wrap)
	for _, low := range []float64{1.5, 1.9, 2.03} {
		m := b.around(Corner{Width: 9, Onward: 9, Height: low}, OnFoot, space.Vec{Y: 1}, exact, none)
		assert.InDelta(t, (low-2)/2-wrap, m.Margin, 1e-9, low)
	}
	m := b.around(Corner{Width: 9, Onward: 9, Height: 2.1}, OnFoot, space.Vec{Y: 1}, exact, none)
	assert.InDelta(t, 0.05-wrap, m.Margin, 1e-4)
}
