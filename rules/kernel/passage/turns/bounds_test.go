package turns

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage/space"
)

// Over a cell no place of the body goes outside of what its bounds say: turns at
// random in cells of every size, and at their corners.
func TestCellsBoundWhatTurns(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 8))
	for range 2000 {
		c := Cube{Front: r.IntN(4)}
		for i := range c.At {
			c.Half[i] = math.Pow(2, -1-7*r.Float64())
			c.At[i] = (1 - c.Half[i]) * (2*r.Float64() - 1)
		}
		v := space.Vec{X: 3 * r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}
		a, swings, middle := c.Radius(), c.Swings(), c.Turn()
		for range 20 {
			at := c.At
			for i, h := range c.Half {
				at[i] += h * [5]float64{-1, 1, 1, -1, 2*r.Float64() - 1}[r.IntN(5)]
			}
			turn := spread(c.Front, at).Unit().Turn()
			for k, e := range middle {
				m := v.Dot(e)
				l := swings.Slope(k, v, m, v.Length())
				all := TurnBounds(a, m, v.Dot(v)).Both(l.Bounds())
				x := v.Dot(turn[k])
				require.LessOrEqual(t, all.Low-1e-9, x)
				require.GreaterOrEqual(t, all.High+1e-9, x)
			}
		}
	}
}
