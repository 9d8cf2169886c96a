package passage

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage/space"
)

// What bounds the clearance over a stretch of turns about an upright holds at every
// turn in it at which the body is clear of the walls: no turn has more than the most,
// and none on the way to the next stretch less than the least.
func TestCornersAreBounded(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 11))
	close, held := 0, 0
	for range 300 {
		b := NewBody(arc(0.5+2*r.Float64(), 0.05+0.1*r.Float64(), 0.3+1.2*r.Float64()), 0.5+r.Float64(), 0.02)
		c := Corner{Width: 1 + 3*r.Float64(), Onward: 1 + 3*r.Float64(), Height: 9}
		u := []space.Vec{{X: 1}, {Y: 1}, {Z: 1}}[r.IntN(3)]
		plan := b.planDiameter(u)
		const cells = 96
		half := math.Pi / cells
		all := make([]stretch, cells)
		for i := range all {
			at := half * float64(2*i+1)
			turn := space.About(u, at)
			s := stretch{at: at, half: half, Held: b.Hold(c, turn)}
			sin, cos := math.Sincos(half)
			s.freeMost, s.inMost, s.onMost = b.most(c, turn, s.Held, space.Angle{Sin: sin, Cos: cos}, space.Angle{Sin: 0, Cos: 1})
			tangent := b.tangentMost(c, turn, s.Held, plan, half)
			if tangent < s.freeMost {
				close++
			}
			s.freeMost = min(s.freeMost, tangent)
			all[i] = s
		}
		b.leasts(all, plan)
		for range 40 {
			i, f := r.IntN(cells), 2*r.Float64()-1
			is := b.Hold(c, space.About(u, all[i].at+f*half))
			if is.Free > -b.wrap {
				held++
				assert.LessOrEqual(t, is.Free, all[i].freeMost+1e-12)
			}
			assert.LessOrEqual(t, is.in, all[i].inMost+1e-12)
			assert.LessOrEqual(t, is.on, all[i].onMost+1e-12)
			if all[i].freeLeast > -b.wrap {
				assert.GreaterOrEqual(t, is.Free, all[i].freeLeast-1e-12)
			}
		}
	}
	assert.Greater(t, close, 1000, "the tangent often bounds more closely")
	assert.Greater(t, held, 1000, "and the body is often clear")
}
