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
// away from it, the increments on lift 2 and the straps, which begin at zero. Of
// every set of straps the one counts in which each pulls, and of which those left
// out would be pushed. Solved afresh, as if the straps had carried from the first,
// the lift that is left would have 22N: a sixth.
func TestAStrapBeginsAtNoughtInTheShapeOnTheLifts(t *testing.T) {
	c := sample.Room(t, nil)
	h := Of(c, nil)
	require.NoError(t, h.Staged.Get().Err)
	staged := h.Staged.Get().Is
	got, err := staged[0].With([]int{0, 1, 2, 3}, []int{1})
	require.NoError(t, err)

	r := newRib(c, nil)
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
	staged := Of(sample.Room(t, nil), nil).Staged.Get().Is
	for _, straps := range [][]int{nil, {0}, {0, 3}, {0, 1, 2, 3}} {
		s, err := staged[0].With(straps, []int{0, 1})
		require.NoError(t, err)
		assert.Equal(t, []float64{0, 0, 0, 0}, s.Straps)
		assert.InEpsilon(t, staged[0].Weight, s.Lifts[0]+s.Lifts[1], 1e-6)
	}
}

// The envelope has each lift down alone and all down, as the straps were fixed on them
// and with each set: what the plan prints for these steps, by another program 116N of
// strap 2. On lift 2 alone strap 2 set 0.5mm shorter takes more.
func TestTheEnvelopeHasTheLiftsDown(t *testing.T) {
	h := Of(sample.Room(t, nil), nil)
	got := map[string]Case{}
	all, err := h.Envelope()
	require.NoError(t, err)
	for _, c := range all {
		got[c.Key()] = *c
	}
	one := got["lift-1-down"]
	assert.InDelta(t, 116, one.Straps[1], 1)
	require.Len(t, one.Lifts, 2)
	assert.Zero(t, one.Lifts[0])
	assert.InDelta(t, 143, one.Lifts[1], 1)
	assert.Greater(t, got["lift-1-down-strap-set-2-shorter"].Straps[1], one.Straps[1]+10)
	assert.InEpsilon(t, h.Weight.Get(), sum(got["lifts-down"].Straps), 1e-6)
}

// Of a split arch the straps of the other piece carry nothing in the case, in their
// places; without lifts there is no such case.
func TestTheLiftsOfAPieceAreDown(t *testing.T) {
	h := Of(sample.Room(t, map[string]any{"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}}), nil)
	require.NoError(t, h.Lowered.Get().Err)
	for _, c := range h.Lowered.Get().Is {
		require.Len(t, c.Straps, 4)
		assert.Zero(t, sum(c.Straps[2*(2-c.Part):][:2]), c.Key())
	}
	assert.Len(t, h.Lowered.Get().Is, 2*3*5)
	assert.Empty(t, Of(sample.Room(t, map[string]any{"lift.stations": []any{}}), nil).Lowered.Get().Is)
}

func sum(list []float64) (all float64) {
	for _, f := range list {
		all += f
	}
	return all
}
