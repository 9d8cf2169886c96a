package turns

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A mixture of two planes lies between them everywhere, and is nowhere more than
// the lesser of their greatest values.
func TestMixedPlanesLieBetween(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 0))
	less := 0
	for range 2000 {
		a, b := Plane{At: r.NormFloat64()}, Plane{At: r.NormFloat64()}
		for i := range a.By {
			a.By[i], b.By[i] = r.NormFloat64(), r.NormFloat64()
		}
		m := mixed(a, b)
		require.LessOrEqual(t, m.Most(), min(a.Most(), b.Most())+1e-12)
		if m.Most() < min(a.Most(), b.Most())-1e-9 {
			less++
		}
		for f := 0.0; f <= 1; f += 0.01 { // no other mean has a lesser greatest value
			other := Plane{At: a.At + f*(b.At-a.At)}
			for i := range other.By {
				other.By[i] = a.By[i] + f*(b.By[i]-a.By[i])
			}
			require.LessOrEqual(t, m.Most(), other.Most()+1e-12)
		}
		for range 20 {
			var s Shares
			for i := range s {
				s[i] = 2*r.Float64() - 1
			}
			x, y, at := a.At+a.By.Dot(&s), b.At+b.By.Dot(&s), m.At+m.By.Dot(&s)
			require.GreaterOrEqual(t, at, min(x, y)-1e-12)
			require.LessOrEqual(t, at, max(x, y)+1e-12)
		}
	}
	assert.Positive(t, less)
}
