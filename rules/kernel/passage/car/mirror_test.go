package car_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/car"
	"dryfit/rules/kernel/passage/outline"
)

// A door on the left of a van's end wall and the same door on the right are one
// question: the answer is one, and the way on the right is that on the left in the
// mirror.
func TestCarsAreAlikeOnBothSides(t *testing.T) {
	body := passage.NewBody(outline.Arc(2.0, 0.06, math.Pi/2, 24), 1.8, 0.025)
	for _, van := range []car.Car{
		{Length: 4.25, Width: 3.43, Height: 2.59, DoorWidth: 1.82, DoorHeight: 2.13, Left: 0.28},
		{Length: 6.19, Width: 3.45, Height: 2.09, DoorWidth: 1.14, DoorHeight: 2.29, Left: 0.26},
		{Length: 2.63, Width: 1.22, Height: 2.09, DoorWidth: 0.9, DoorHeight: 2.02, Left: 0.09},
	} {
		right := van
		right.Left = van.Width - van.Left - van.DoorWidth
		a, b := car.Into(body, van, &passage.Budget{Cells: 20000}), car.Into(body, right, &passage.Budget{Cells: 20000})
		assert.Equal(t, a.Outcome, b.Outcome)
		assert.Equal(t, a.Bound, b.Bound)
		assert.Equal(t, a.Motion.Way, b.Motion.Way)
		assert.InDelta(t, a.Motion.Margin, b.Motion.Margin, 1e-9)
		there, here := a.Motion.Poses(), b.Motion.Poses()
		if assert.Len(t, here, len(there)) && a.Outcome == passage.Passes {
			for i := range there {
				assert.InDelta(t, van.Width, there[i].At.Y+here[i].At.Y, 1e-9)
				assert.InDelta(t, there[i].Turn[0].Y, here[i].Turn[0].Y, 1e-9)
				assert.InDelta(t, 0, there[i].Turn[0].X+here[i].Turn[0].X, 1e-9)
			}
		}
	}
}
