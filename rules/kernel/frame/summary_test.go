package frame

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// agree requires that a summary holds what a whole result does.
func agree(t *testing.T, whole *Result, brief *Summary) {
	t.Helper()
	require.Len(t, brief.Springs, len(whole.Springs))
	for i, s := range whole.Springs {
		require.Equal(t, s.Slack, brief.Springs[i].Slack)
		require.InDelta(t, s.Force, brief.Springs[i].Force, 1e-7)
	}
	require.Len(t, brief.X, len(whole.Nodes))
	require.Len(t, brief.Y, len(whole.Nodes))
	for i, n := range whole.Nodes {
		require.InDelta(t, n.X, brief.X[i], 1e-11)
		require.InDelta(t, n.Y, brief.Y[i], 1e-11)
	}
	require.Len(t, brief.N, 2*len(whole.inner))
	require.Len(t, brief.M, 2*len(whole.inner))
	for e := range whole.inner {
		for end, at := range whole.Ends(e) {
			require.InDelta(t, at.N, brief.N[2*e+end], 1e-5)
			require.InDelta(t, at.M, brief.M[2*e+end], 1e-5)
		}
	}
	require.Len(t, brief.Supports, len(whole.Supports))
	for i, f := range whole.Supports {
		require.InDelta(t, f, brief.Supports[i], 1e-5)
	}
}

// randomCase is an arch under loads, one of three, with springs that are absent or set
// long or short.
func randomCase(m *Model, random *rand.Rand) (c Case) {
	c.Loads = []NodalLoad{{Node: 10 * (1 + random.IntN(3)), X: 150, Y: -1000}}
	for e := range m.Elements {
		c.Spread = append(c.Spread, SpreadLoad{Element: e, X: 20, Y: -150, Per: PerLength})
	}
	for i := range m.Springs {
		if random.IntN(4) == 0 {
			c.Misfits = append(c.Misfits, Misfit{Spring: i, Longer: 0.002 * random.NormFloat64()})
		}
		if random.IntN(5) == 0 {
			c.Without = append(c.Without, i)
		}
	}
	if random.IntN(5) == 0 {
		c.Settlements = []Settlement{{By: 0.001 * random.NormFloat64()}}
	}
	return c
}

// Of any case a summary holds what the whole result does, and an error is the same: by a
// sum where the softened springs have the case, else from the result.
func TestSummaryIsThatOfTheWholeResult(t *testing.T) {
	for _, straps := range []int{1, 2, 5, mostSprings} {
		m := hungArch(straps)
		s, own := must(t, &m), must(t, &m)
		random := rand.New(rand.NewPCG(4, uint64(straps)))
		var whole Result
		var brief Summary
		for range 200 {
			c := randomCase(&m, random)
			errSum, err := s.Summarize(&c, &brief), own.Solve(&c, &whole)
			require.Equal(t, err, errSum)
			if err == nil {
				agree(t, &whole, &brief)
			}
		}
	}
}

// Where the sum is out of balance the whole result is taken, and what is wrong in that is
// the error.
func TestASumOutOfBalanceIsNotTaken(t *testing.T) {
	m := hungArch(5)
	s, own := must(t, &m), must(t, &m)
	c := Case{Spread: []SpreadLoad{{Element: 3, Y: -150, Per: PerLength}}}
	var whole Result
	var brief Summary
	require.NoError(t, own.Solve(&c, &whole))
	require.NoError(t, s.Summarize(&c, &brief))
	require.True(t, s.sum(&brief))

	for i := range s.units.loaded.all {
		s.units.loaded.all[i] *= 1.5
	}
	s.units.loaded.left = 1
	require.False(t, s.sum(&brief))
	require.NoError(t, s.Summarize(&c, &brief))
	agree(t, &whole, &brief)

	s.units.loaded.N[0], s.units.loaded.left = math.Inf(1), 0
	require.False(t, s.sum(&brief), "a force without end balances nothing")

	var unbalanced *ResidualError
	huge := Case{Loads: []NodalLoad{{Node: 10, Y: -math.MaxFloat64}, {Node: 20, Y: -math.MaxFloat64}}}
	assert.Error(t, own.Solve(&huge, &whole))
	assert.Error(t, s.Summarize(&huge, &brief), "no figure where the loads add up to none")
	c.Misfits = []Misfit{{Spring: 0, Longer: math.MaxFloat64}}
	assert.ErrorAs(t, own.Solve(&c, &whole), &unbalanced)
	assert.ErrorAs(t, s.Summarize(&c, &brief), &unbalanced)
}

// Springs that only push have no part in the softened frame of an arch that its straps
// hold, and have one where these do not.
func TestOnlyStrapsAreSoftened(t *testing.T) {
	for straps, pushers := range map[int]bool{1: true, 4: false} {
		m := hungArch(straps)
		m.Springs = m.Springs[:len(m.Springs)-1] // without that at the crown
		s := must(t, &m)
		for i, sp := range s.springs {
			assert.Equal(t, pushers || sp.sign > 0, s.softened.soft[i] > 0)
		}
	}
}
