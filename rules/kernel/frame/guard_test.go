package frame

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// flatRib is a beam of two spans of 1 m on three tension-only straps, held along
// x in the middle, under 1 N/m; the middle strap is set long enough to go slack.
func flatRib(t *testing.T) (*Solver, Case) {
	t.Helper()
	m := Chain([]Vector{{0, 0}, {1, 0}, {2, 0}}, Section{EA: 1e6, EI: 1, GA: math.Inf(1)})
	m.Supports = []Support{{Node: 1, Direction: AlongX}}
	for node := range 3 {
		m.Springs = append(m.Springs, Spring{Node: node, Toward: Vector{Y: 1}, Stiffness: 1e4, Sense: TensionOnly})
	}
	s, err := m.Compile()
	require.NoError(t, err)
	return s, Case{
		Spread:  []SpreadLoad{{Element: 0, Y: -1, Per: PerLength}, {Element: 1, Y: -1, Per: PerLength}},
		Misfits: []Misfit{{Spring: 1, Longer: 1}},
	}
}

func TestSearchForTautSpringsEnds(t *testing.T) {
	s, c := flatRib(t)
	var r Result
	require.NoError(t, s.Solve(&c, &r))
	assert.True(t, r.Springs[1].Slack)

	s.steps = 0
	var unsettled *UnsettledError
	require.ErrorAs(t, s.Solve(&c, &r), &unsettled)
	assert.Equal(t, UnsettledError{Spring: 1, Steps: 0}, *unsettled)
	assert.Empty(t, r.Nodes, "an error leaves no result")
}

// What follows from the softened springs is solved again by a factor of its own where
// it does not balance the loads, and that has to.
func TestResidualOfAFalseFactorIsFound(t *testing.T) {
	s, c := flatRib(t)
	c.Misfits = nil
	var was, r Result
	require.NoError(t, s.Solve(&c, &was))
	require.Empty(t, s.parts)

	s.softened.columns[1][1] *= 1.00001
	require.NoError(t, s.Solve(&c, &r))
	require.Len(t, s.parts, 1)
	assert.InDelta(t, was.Springs[1].Force, r.Springs[1].Force, 1e-9)

	s.parts[0].k[s.halfBand+1] *= 1.00001 // of node 0 along y
	var residual *ResidualError
	require.ErrorAs(t, s.Solve(&c, &r), &residual)
	assert.Greater(t, residual.Share, outOfBalance)
	assert.Empty(t, r.Nodes, "an error leaves no result")
}

// A season's cases come back to the sets of springs that others left taut, of
// which as many as there is room for stay factored.
func TestASetOfSpringsIsFactoredOnce(t *testing.T) {
	s, slack := flatRib(t)
	hung := slack
	hung.Misfits = nil
	var r Result
	require.NoError(t, s.Solve(&slack, &r))
	const mark = 0.5
	s.factored().share = mark
	hung.Without = []int{0}
	require.NoError(t, s.Solve(&hung, &r))
	require.NoError(t, s.Solve(&slack, &r))
	assert.EqualValues(t, mark, s.factored().share, "factored anew")

	s.parts = slices.Repeat([]*stiffness{s.parts[0]}, mostParts)
	for i := range s.taut {
		s.taut[i] = i == 0
	}
	s.factored()
	assert.Len(t, s.parts, mostParts)
	assert.Equal(t, s.taut, s.parts[0].taut, "in place of the oldest")
}
