package car

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// No gate proves that a way which is known does not exist: through each depth of the
// origin between outside and rest it leads.
func TestGatesLetKnownWaysThrough(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 9))
	seen := 0
	for range 40 {
		b, c := anyInto(r)
		d := Into(b, c, &passage.Budget{Cells: 300})
		if d.Outcome != passage.Passes {
			continue
		}
		poses := d.Motion.Poses()
		last := poses[len(poses)-1].At.X
		for range 3 {
			low := last * r.Float64()
			proven, _ := shutOut(b, c, depths{low, low + r.Float64()}, &passage.Budget{Cells: 300})
			assert.False(t, proven, "%v from %v", c, low)
		}
		seen++
	}
	require.Greater(t, seen, 5)
}

// Where a body can rest is found out as by random turns: if one of them is in the car
// with the origin before a depth, it may rest there.
func TestRestsBeforeAGate(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 10))
	rests, none := 0, 0
	for range 60 {
		b := passage.NewBody(outline.Arc(0.8+0.8*r.Float64(), 0.05+0.05*r.Float64(), 0.3+r.Float64(), 40), 0.5+r.Float64(), 0.015)
		c := Car{Length: 1.2 + 2*r.Float64(), Width: 1.2 + r.Float64(), Height: 2.2}
		depth := 1.2 * r.Float64()
		may := mayRest(b, c, depth, &passage.Budget{Cells: gateCells})
		if !may {
			none++
		}
		for range 20000 {
			q := space.Quaternion{r.NormFloat64(), r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}
			turn := q.Unit().Turn()
			room, _ := turns.Room(b, turn, [3]float64{c.Length, c.Width, c.Height}, space.Angle{Sin: 0, Cos: 1})
			back := turn[0].Times(-1)
			if room >= 0 && b.Reach(back).Dot(back)+b.Wrap() <= depth {
				rests++
				assert.True(t, may, "%v before %v", c, depth)
				break
			}
		}
	}
	require.Greater(t, rests, 5)
	require.Greater(t, none, 5)
}
