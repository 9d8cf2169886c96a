package hanging

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"dryfit/rules/model/sample"
)

// upright solves an assembled frame, held along x at its crown, on springs both ways
// under some load, and gives the upward force of each.
func upright(t *testing.T, r *rib, load mat.Vector, springs []int) []float64 {
	k, _ := assembled(r)
	add := func(i int, by float64) { k.SetSym(i, i, k.At(i, i)+by) }
	add(3*r.crown, 1e12)
	at := r.sprung()
	for _, s := range springs {
		add(3*at[s]+1, r.stiff[s])
	}
	var x mat.VecDense
	require.NoError(t, x.SolveVec(k, load))
	out := make([]float64, len(at))
	for _, s := range springs {
		out[s] = -r.stiff[s] * x.AtVec(3*at[s]+1)
	}
	return out
}

// Staged by superposition: the rib on its two lifts; then, what lift 1 carried taken
// away from it, the increments on lift 2 and the straps, which begin at nought. Of
// every set of straps the one counts in which each pulls, and of which those left
// out would be pushed. Solved afresh, as if the straps had carried from the first,
// the lift that is left would have 22N: a sixth.
func TestAStrapBeginsAtNoughtInTheShapeOnTheLifts(t *testing.T) {
	c := sample.Room(t, nil)
	h := Of(c)
	require.NoError(t, h.Staged.Get().Err)
	staged := h.Staged.Get().Is
	got, err := staged[0].With([]int{0, 1, 2, 3}, []int{1})
	require.NoError(t, err)

	r := newRib(c)
	lifts := r.springs(liftKind)
	_, weight := assembled(r)
	raised := upright(t, r, weight, lifts)
	taken := mat.NewVecDense(weight.Len(), nil)
	taken.SetVec(3*r.lifts[0]+1, -raised[lifts[0]])
	more := upright(t, r, taken, []int{0, 1, 3, lifts[1]}) // strap 3 goes slack
	for _, i := range []int{0, 1, 3} {
		assert.Positive(t, more[i])
		assert.InEpsilon(t, more[i], got.Straps[i], 0.005)
	}
	assert.Zero(t, got.Straps[2])
	assert.Negative(t, upright(t, r, taken, []int{0, 1, 2, 3, lifts[1]})[2])
	assert.InEpsilon(t, raised[lifts[1]]+more[lifts[1]], got.Lifts[1], 0.005)
	assert.InDelta(t, 143, got.Lifts[1], 1)
	assert.InDelta(t, 116, got.Straps[1], 1)

	run, err := compile(r, r.model(), wholeArch)
	require.NoError(t, err)
	afresh, err := run.run(ID{Kind: Raised}, slices.Concat(r.springs(ledgerKind), lifts[:1]))
	require.NoError(t, err)
	assert.InDelta(t, 22, afresh.Lifts[0], 1.5)
}

// On both lifts a strap carries nothing, however many are fixed.
func TestStrapsReadNoughtUntilALiftGoes(t *testing.T) {
	staged := Of(sample.Room(t, nil)).Staged.Get().Is
	for _, straps := range [][]int{nil, {0}, {0, 3}, {0, 1, 2, 3}} {
		s, err := staged[0].With(straps, []int{0, 1})
		require.NoError(t, err)
		assert.Equal(t, []float64{0, 0, 0, 0}, s.Straps)
		assert.InEpsilon(t, staged[0].Weight, s.Lifts[0]+s.Lifts[1], 1e-6)
	}
}
