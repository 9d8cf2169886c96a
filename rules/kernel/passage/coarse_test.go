package passage

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage/space"
)

// Corners that mirror each other are as far from the rest but for round-off: which
// of them a coarse body keeps does not hang on the last bits of its size.
func TestCoarseCornersAreNotChosenByRoundOff(t *testing.T) {
	kept := func(radius float64) []int {
		var ring []space.Point
		for i := range 193 {
			a := math.Pi / 2 * (float64(i)/96 - 1)
			ring = append(ring, space.Point{X: radius * math.Sin(a), Y: radius * math.Cos(a)})
		}
		for i := range 193 {
			p := ring[192-i]
			ring = append(ring, space.Point{X: p.X * (radius + 0.06) / radius, Y: p.Y * (radius + 0.06) / radius})
		}
		var out []int
		for _, p := range simplified(ring, 0.001) {
			for i, q := range ring {
				if p == q {
					out = append(out, i)
				}
			}
		}
		return out
	}
	for mm := 1000; mm < 4000; mm += 50 {
		radius := float64(mm) / 1000
		assert.Equal(t, kept(radius), kept(radius*(1-2e-13)), radius)
	}
}

// A body of random corners, length and wrap with its wrap lies in the rounded one with its
// wrap, and bodies that differ by round-off are rounded to the same.
func TestARoundedBodyHoldsTheBody(t *testing.T) {
	const grid = 1e-3 // coarse, so that what is lost shows
	r := rand.New(rand.NewPCG(28, 2))
	for range 200 {
		var section []space.Point
		for i := range 12 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 12)
			far := 0.5 + r.Float64()
			section = append(section, space.Point{X: far * cos, Y: far * sin})
		}
		b := NewBody(section, 0.5+r.Float64(), 0.01+0.01*r.Float64())
		c := b.Rounded(grid)
		more := c.Wrap() - b.Wrap()
		ahead := b.Half() - c.Half()
		for _, p := range b.Section() {
			assert.LessOrEqual(t, math.Hypot(space.FromRegion(c.Section(), p), max(0, ahead)), more)
		}
		off := NewBody(scaled(section, 1+1e-13), 2*b.Half()*(1-1e-13), b.Wrap()*(1+1e-13)).Rounded(grid)
		assert.InDeltaSlice(t, flat(c.Section()), flat(off.Section()), 0)
		assert.InDelta(t, c.Half(), off.Half(), 0)
		assert.InDelta(t, c.Wrap(), off.Wrap(), 0)
	}
}

func scaled(points []space.Point, by float64) (out []space.Point) {
	for _, p := range points {
		out = append(out, space.Point{X: by * p.X, Y: by * p.Y})
	}
	return out
}

func flat(points []space.Point) (out []float64) {
	for _, p := range points {
		out = append(out, p.X, p.Y)
	}
	return out
}
