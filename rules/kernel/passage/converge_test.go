package passage_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
)

// The margin of a plain motion is the same within a tenth of a millimetre where the
// curve is drawn in twice as many steps.
func TestMarginsConverge(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
	for i, k := range kinds {
		t.Run(k.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(11, uint64(i)))
			seen := 0
			for j := range 25 {
				seed := r.Uint64()
				var d [2]passage.Decision
				for fine := range d {
					r := rand.New(rand.NewPCG(12, seed))
					p := panelOf(r, steps<<fine)
					decide, _ := k.random(r, p.body)
					d[fine] = decide(&passage.Budget{Cells: 3000})
				}
				if d[0].Outcome != passage.Passes || d[0].Motion.Way == passage.Free || d[1].Motion.Way == passage.Free {
					continue
				}
				seen++
				assert.InDelta(t, d[0].Motion.Margin, d[1].Motion.Margin, 1e-4, "pair %d, way %d and %d", j, d[0].Motion.Way, d[1].Motion.Way)
			}
			assert.NotZero(t, seen)
		})
	}
}
