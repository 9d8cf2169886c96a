package car

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage/turns"
)

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
			var s turns.Shares
			for i := range s {
				s[i] = 2*r.Float64() - 1
			}
			x, y, at := a.at+a.by.Dot(&s), b.at+b.by.Dot(&s), m.at+m.by.Dot(&s)
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
