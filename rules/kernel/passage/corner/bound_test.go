package corner

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
	"dryfit/rules/kernel/passage/space"
)

// What bounds the clearance over a stretch of turns about an upright holds at every
// turn in it at which the body is clear of the walls: no turn has more than the most,
// and none on the way to the next stretch less than the least.
func TestCornersAreBounded(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 11))
	close, held := 0, 0
	for range 300 {
		b := passage.NewBody(outline.Arc(0.5+2*r.Float64(), 0.05+0.1*r.Float64(), 0.3+1.2*r.Float64(), 40), 0.5+r.Float64(), 0.02)
		c := Corner{Width: 1 + 3*r.Float64(), Onward: 1 + 3*r.Float64(), Height: 9}
		u := []space.Vec{{X: 1}, {Y: 1}, {Z: 1}}[r.IntN(3)]
		plan := planDiameter(b, u)
		const cells = 96
		half := math.Pi / cells
		all := make([]stretch, cells)
		for i := range all {
			at := half * float64(2*i+1)
			turn := space.About(u, at)
			s := stretch{at: at, half: half, Held: Hold(b, c, turn)}
			sin, cos := math.Sincos(half)
			s.freeMost, s.inMost, s.onMost = mostWithin(b, c, turn, s.Held, space.Angle{Sin: sin, Cos: cos}, space.Angle{Sin: 0, Cos: 1})
			tangent := tangentMost(b, c, turn, s.Held, plan, half)
			if tangent < s.freeMost {
				close++
			}
			s.freeMost = min(s.freeMost, tangent)
			all[i] = s
		}
		leastBetween(b, all, plan)
		for range 40 {
			i, f := r.IntN(cells), 2*r.Float64()-1
			is := Hold(b, c, space.About(u, all[i].at+f*half))
			if is.Free > -b.Wrap() {
				held++
				assert.LessOrEqual(t, is.Free, all[i].freeMost+1e-12)
			}
			assert.LessOrEqual(t, is.in, all[i].inMost+1e-12)
			assert.LessOrEqual(t, is.on, all[i].onMost+1e-12)
			if all[i].freeLeast > -b.Wrap() {
				assert.GreaterOrEqual(t, is.Free, all[i].freeLeast-1e-12)
			}
		}
	}
	assert.Greater(t, close, 1000, "the tangent often bounds more closely")
	assert.Greater(t, held, 1000, "and the body is often clear")
}

// A corner too low for a panel that is carried upright leaves half of what lacks
// on each side, less the wrap.
func TestACornerThatIsTooLow(t *testing.T) {
	const wrap = 0.02
	b := passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 0.1}, {X: 0, Y: 0.1}}, 3, wrap)
	for _, low := range []float64{1.5, 1.9, 2.03} {
		m := around(b, Corner{Width: 9, Onward: 9, Height: low}, passage.OnFoot, space.Vec{Y: 1}, exact, none)
		assert.InDelta(t, (low-2)/2-wrap, m.Margin, 1e-9, low)
	}
	m := around(b, Corner{Width: 9, Onward: 9, Height: 2.1}, passage.OnFoot, space.Vec{Y: 1}, exact, none)
	assert.InDelta(t, 0.05-wrap, m.Margin, 1e-4)
}
