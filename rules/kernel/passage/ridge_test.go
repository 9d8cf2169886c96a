package passage_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/car"
)

// Half arches that go into a vehicle only if they turn at an even rate along a narrow
// way: searches in steps and in random directions pass it by.
func TestNarrowWaysAreFound(t *testing.T) {
	for _, c := range []struct {
		span, thick, length, wrap float64
		car                       car.Car
	}{
		{4.70, 0.118, 1.05, 0.025, car.Car{Length: 3.52, Width: 1.36, Height: 2.26, DoorWidth: 0.82, DoorHeight: 2.12, Left: 0.04}},
		{4.60, 0.110, 1.05, 0.025, car.Car{Length: 3.45, Width: 1.36, Height: 2.26, DoorWidth: 0.80, DoorHeight: 2.12, Left: 0.04}},
	} {
		arch, err := curve.Semicircular(c.span)
		require.NoError(t, err)
		p := pair{profile: "semicircular", split: true, body: passage.NewBody(band(arch, c.thick, true, steps), c.length, c.wrap)}
		d := car.Into(p.body, c.car, &passage.Budget{Cells: plainBudget})
		if assert.Equal(t, passage.Passes, d.Outcome, c) {
			follow(t, rand.New(rand.NewPCG(26, 1)), 0, p, d.Motion, carWalls(c.car))
		}
	}
}

// Arches that come neither in nor out further than to some depths are proven not to go
// in there; a cover of all depths runs out of a spec's cells.
func TestGatesProveWhatAllDepthsDoNot(t *testing.T) {
	whole, err := curve.Segmental(2.03, 1.00)
	require.NoError(t, err)
	half, err := curve.Semicircular(4.17)
	require.NoError(t, err)
	for _, c := range []struct {
		body *passage.Body
		car  car.Car
	}{
		{
			passage.NewBody(band(whole, 0.075, false, steps), 0.86, 0.028),
			car.Car{Length: 5.23, Width: 1.29, Height: 1.12, DoorWidth: 1.00, DoorHeight: 0.81, Left: 0.02},
		},
		{
			passage.NewBody(band(half, 0.077, true, steps), 0.73, 0.015),
			car.Car{Length: 2.24, Width: 2.19, Height: 1.31, DoorWidth: 1.09, DoorHeight: 1.25, Left: 0.49},
		},
	} {
		d := car.Into(c.body, c.car, &passage.Budget{Cells: plainBudget})
		assert.Equal(t, passage.Cannot, d.Outcome, c.car)
		assert.Equal(t, passage.BeyondCover, d.Bound, c.car)
	}
}
