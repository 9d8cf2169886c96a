package opening

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
)

// What a body keeps for the next opening is what it would work out again.
func TestAUsedBodyAnswersAsAFreshOne(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 31))
	fresh := func() *passage.Body { return passage.NewBody(outline.Arc(1.5, 0.08, 0.9, 40), 0.9, 0.02) }
	used := fresh()
	for range 60 {
		d := Door{Width: 0.5 + r.Float64(), Height: 0.5 + 1.5*r.Float64(), Wall: []float64{0.1, 0.2}[r.IntN(2)]}
		wrap := 0.03 * r.Float64()
		want, got := fresh().Wrapped(wrap), used.Wrapped(wrap)
		a, b := Through(want, d, &passage.Budget{Cells: 2000}), Through(got, d, &passage.Budget{Cells: 2000})
		assert.Equal(t, a.Outcome, b.Outcome, "%+v", d)
		assert.Equal(t, [4]float64{a.Motion.Margin, a.Motion.Angle, a.Motion.Depth, a.Motion.Side},
			[4]float64{b.Motion.Margin, b.Motion.Angle, b.Motion.Depth, b.Motion.Side}, "%+v", d)
	}
}
