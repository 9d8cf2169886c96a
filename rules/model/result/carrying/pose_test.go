package carrying_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/spec"
)

// The drawn pose of a corner that is not passed has the panel where the inner corner
// is in its wrap.
func TestAFailingCornerIsDrawnWhereItFails(t *testing.T) {
	seen := 0
	for _, width := range []string{"700mm", "900mm", "1000mm", "1100mm"} {
		for _, l := range carrying.Of(sample.Room(t, map[string]any{"route.3.width": width, "route.3.onward": width}), carrying.Search{}) {
			if l.Kind.Get() != spec.Corner || l.Way.Get().Outcome == passage.Passes {
				continue
			}
			pose, ok := l.Way.Get().Pose()
			require.True(t, ok)
			seen++
			assert.Less(t, toEdges(space.Point{X: pose.A, Y: pose.B}, pose.Panel), pose.Inside, width)
		}
	}
	assert.NotZero(t, seen)
}

// toEdges is how far a place is from a closed outline, 0 within it: the sum of the
// angles under which its edges are seen is a whole turn there.
func toEdges(at space.Point, outline []space.Point) float64 {
	least, around := math.Inf(1), 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		p, q = space.Point{X: p.X - at.X, Y: p.Y - at.Y}, space.Point{X: q.X - at.X, Y: q.Y - at.Y}
		around += math.Atan2(p.X*q.Y-p.Y*q.X, p.X*q.X+p.Y*q.Y)
		for f := 0.0; f <= 1; f += 0.001 {
			least = min(least, math.Hypot(p.X+f*(q.X-p.X), p.Y+f*(q.Y-p.Y)))
		}
	}
	if math.Abs(around) > math.Pi {
		return 0
	}
	return least
}

// A load is drawn in its true size within the vehicle, whichever way round the panels
// lie: 4200mm by 1180mm across the first, along the second.
func TestLoadsLieWithinTheVehicle(t *testing.T) {
	for inside, long := range map[[2]string]bool{{"6100mm", "2200mm"}: true, {"1500mm", "5000mm"}: false} {
		c := sample.Room(t, map[string]any{
			"route.1.inside": map[string]any{"length": inside[0], "width": inside[1], "height": "2300mm"},
			"route.1.door":   map[string]any{"width": inside[1], "height": "2300mm"},
		})
		van := c.Route.Get()[0].Inside
		stowed := carrying.Of(c, carrying.Search{})[0].Way.Get().Stowed()
		require.NotEmpty(t, stowed, inside[0])
		for _, pose := range stowed {
			low, high := span(pose.Plan)
			assert.GreaterOrEqual(t, min(low.X, low.Y), 0.0, inside[0])
			assert.LessOrEqual(t, high.X, van.Length.Get()+1e-9, inside[0])
			assert.LessOrEqual(t, high.Y, van.Width.Get()+1e-9, inside[0])
			wide, deep := high.X-low.X, high.Y-low.Y
			if !long {
				wide, deep = deep, wide
			}
			assert.InDelta(t, 4.2, wide, 1e-6, inside[0])
			assert.InDelta(t, 1.18, deep, 1e-6, inside[0])
		}
	}
}

// span is the box of an outline.
func span(outline []space.Point) (low, high space.Point) {
	low, high = outline[0], outline[0]
	for _, q := range outline {
		low = space.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}
		high = space.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	return low, high
}
