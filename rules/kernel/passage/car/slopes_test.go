package car

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage/turns"
)

// Where the straight way between two places crosses the door lies within what is
// said of it, whether or not the two may be as far in as each other.
func TestCrossingsLieWithinTheirBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 0))
	crossed := map[int]int{}
	for range 20000 {
		s := slopes{of: make([][3]turns.Slope, 2)}
		size := math.Pow(2, -5*r.Float64())
		for i := range s.of {
			for k := range s.of[i] {
				m := r.NormFloat64()
				s.of[i][k] = turns.Slope{Low: m, High: m + 0.2*size*r.Float64()}
				for n := range s.of[i][k].By {
					s.of[i][k].By[n] = 0.3 * size * r.NormFloat64()
				}
			}
		}
		mid := r.NormFloat64()
		s.cross(0, 1, mid)
		for range 10 {
			var at turns.Shares
			for i := range at {
				at[i] = 2*r.Float64() - 1
			}
			value := func(b turns.Slope) float64 { return b.Low + r.Float64()*(b.High-b.Low) + b.By.Dot(&at) }
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
					low, high = min(low, b.Low+b.By.Dot(&at)), max(high, b.High+b.By.Dot(&at))
				}
				require.GreaterOrEqual(t, y, low-1e-9)
				require.LessOrEqual(t, y, high+1e-9)
			}
		}
	}
	assert.Greater(t, crossed[1], 1000)
	assert.Greater(t, crossed[2], 100)
}
