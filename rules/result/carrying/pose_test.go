package carrying_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/result/carrying"
	"dryfit/rules/sample"
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
			assert.Less(t, toEdges(passage.Point{X: pose.A, Y: pose.B}, pose.Panel), pose.Inside, width)
		}
	}
	assert.NotZero(t, seen)
}

// toEdges is how far a place is from a closed outline, 0 within it: the sum of the
// angles under which its edges are seen is a whole turn there.
func toEdges(at passage.Point, outline []passage.Point) float64 {
	least, around := math.Inf(1), 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		p, q = passage.Point{X: p.X - at.X, Y: p.Y - at.Y}, passage.Point{X: q.X - at.X, Y: q.Y - at.Y}
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
