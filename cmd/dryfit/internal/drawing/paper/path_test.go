package paper

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A quarter turn to the left, from the right of its circle to its top, as it is seen.
func TestPieceOfAnArc(t *testing.T) {
	s := Piece{Point{10, 0}, Point{0, -10}, math.Tan(math.Pi / 8)}
	c, r := s.Circle()
	near := func(want, got Point) {
		t.Helper()
		assert.InDelta(t, 0, math.Hypot(want.X-got.X, want.Y-got.Y), 1e-12, "%v", got)
	}
	near(Point{}, c)
	assert.InDelta(t, 10, r, 1e-12)
	assert.InDelta(t, 5*math.Pi, s.Length(), 1e-12)
	near(Point{10 * math.Sqrt2 / 2, -10 * math.Sqrt2 / 2}, s.At(0.5))
	part := s.Part(0.5, 1)
	near(s.At(0.75), part.At(0.5))
	back := Piece{s.To, s.From, -s.Bulge}
	near(s.At(0.3), back.At(0.7))
	low, high := Path{From: Point{10, 0}, Steps: []Step{{Point{-10, 0}, 1}}}.Box()
	near(Point{-10, -10}, low)
	near(Point{10, 0}, high)
}

// The parts of a path in boxes that lie side by side are the whole of it, and lie in
// their boxes.
func TestWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string) Point {
			return Point{rapid.Float64Range(-100, 100).Draw(t, name+"x"), rapid.Float64Range(-100, 100).Draw(t, name+"y")}
		}
		p := Path{From: at("from")}
		length := 0.0
		for range rapid.IntRange(1, 4).Draw(t, "steps") {
			p.Steps = append(p.Steps, Step{at("to"), rapid.SampledFrom([]float64{0, 0.1, -0.4, 1, -2, 1e-4}).Draw(t, "bulge")})
		}
		for _, s := range p.Pieces() {
			length += s.Length()
		}
		low, high := p.Box()
		sum := 0.0
		nx, ny := 3.0, 2.0
		dx, dy := (high.X-low.X+3.1)/nx, (high.Y-low.Y+3.7)/ny // no side of a box on one of the path
		for i := range int(nx) {
			for k := range int(ny) {
				l := Point{low.X - 1.37 + dx*float64(i), low.Y - 1.19 + dy*float64(k)}
				h := Point{l.X + dx, l.Y + dy}
				for _, part := range p.Within(l, h) {
					pl, ph := part.Box()
					if pl.X < l.X-1e-6 || pl.Y < l.Y-1e-6 || ph.X > h.X+1e-6 || ph.Y > h.Y+1e-6 {
						t.Fatalf("%v reaches out of %v to %v", part, l, h)
					}
					for _, s := range part.Pieces() {
						sum += s.Length()
					}
				}
			}
		}
		require.InDelta(t, length, sum, 1e-5*(1+length))
	})
}
