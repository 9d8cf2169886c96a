package passage_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
)

// Between two places of a way nothing takes up more than at them: a body whose feet come
// into the wall between two of the first ones, turned by 3 degrees on the way, leaves as
// much as its margin says when it is followed by its points.
func TestThreadLeavesItsMarginBetweenItsPlaces(t *testing.T) {
	c, err := curve.Segmental(4.5191412081807725, 0.9299026413857993)
	require.NoError(t, err)
	b := passage.NewBody(band(c, 0.09202013583673313, false, steps), 1.4395587172249806, 0.015968405223144442)
	d := opening.Door{Width: 0.7216958835687448, Height: 1.419667621951913, Wall: 0.11833794209305826}
	m, ok := opening.Thread(b, d, &passage.Budget{Cells: plainBudget})
	require.True(t, ok)
	require.Positive(t, m.Margin)
	w := replay{points(rand.New(rand.NewPCG(1, 1)), b, 400), doorWalls(d)}
	assert.GreaterOrEqual(t, w.least(m.Poses(), 0.003), b.Wrap()+m.Margin-replayed)
}
