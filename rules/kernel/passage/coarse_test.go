package passage

import (
	"math"
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
