package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/result/carrying"
)

// group finds a group's items on a sheet.
func group(t *testing.T, s paper.Sheet, id string) []paper.Item {
	for _, item := range s.Items {
		if g, ok := item.(paper.Group); ok && g.ID == id {
			return g.Items
		}
	}
	require.Fail(t, "no group "+id)
	return nil
}

// The developed panel is as long and as far around as the layout's.
func TestDevelopedPanel(t *testing.T) {
	for name, change := range profiles() {
		in := input(t, change)
		s, err := Draw("panel", in, sheet.Options{Scale: 25})
		require.NoError(t, err)
		low, high := paper.Box(group(t, s, "ribs"))
		assert.InDelta(t, in.Ceiling().Panel.Length.Get()*1000, (high.X-low.X)*25, 0.1, name)
		assert.InDelta(t, in.Ceiling().Vault.Arc.Get()*1000, (high.Y-low.Y)*25, 0.1, name)
	}
}

// The bars of a strap are to one scale, and the moments and movements drawn are
// those of the calculation sheet.
func TestStrapDiagram(t *testing.T) {
	in := input(t)
	s, err := Draw("straps", in, sheet.Options{})
	require.NoError(t, err)
	h := in.Assessment.Results.Hanging()
	require.NoError(t, h.Err())
	first := h.First.Get().Is
	cases := strapCases(h)
	var bars []float64
	for _, item := range group(t, s, "forces") {
		if p, ok := item.(paper.Poly); ok && len(p.Points) == 4 && p.Tone > paper.Paper {
			bars = append(bars, p.Points[0].Y-p.Points[2].Y)
		}
	}
	scale, i := bars[0]/cases[0].forces[0], 0
	for strap := range cases[0].forces {
		for _, c := range cases {
			// Ends are to a thousandth of a millimetre, those of the first bar too.
			ratio := c.forces[strap] / cases[0].forces[0]
			assert.InDelta(t, c.forces[strap]*scale, bars[i], 0.001*(1+ratio))
			i++
		}
	}
	most, drop := 0.0, 0.0
	for _, n := range first.Shape() {
		most = max(most, math.Abs(n.Moment))
		drop = max(drop, -n.MoveZ)
	}
	assert.InDelta(t, first.Moment, most, 1e-9)
	assert.Greater(t, drop, 0.0)
}

// At the pose that is drawn the panel is clear of what is around it by the
// margin that is printed and its wrap, or short by as much.
func TestPosesHaveTheirMargins(t *testing.T) {
	const wrap, tenth = 0.025, 1e-4
	tight := 0
	for name, change := range profiles() {
		for _, route := range []map[string]any{
			{},
			{"route.2.width": "600mm", "route.2.height": "1500mm", "route.3.width": "1400mm", "route.3.onward": "1300mm"},
			{"route.1.door.width": "900mm", "route.1.door.height": "1000mm"},
		} {
			in := input(t, change, route)
			for _, leg := range in.Assessment.Results.Carrying() {
				name, way := name+", "+leg.Name.Get(), leg.Way.Get()
				pose, ok := way.Pose()
				require.True(t, ok, name)
				clear := clearance(pose)
				assert.GreaterOrEqual(t, clear, way.Margin+wrap-tenth, "%s: %s", name, way.Motion)
				if pose.Plane == carrying.Corner && way.Outcome == passage.Passes {
					assert.GreaterOrEqual(t, innerCorner(pose), way.Margin+wrap-tenth, "%s: %s", name, way.Motion)
				}
				if pose.Plane == carrying.Opening && way.Margin < 0 {
					tight++
				}
			}
		}
	}
	assert.Positive(t, tight, "some do not pass")
}

// Many narrow legs keep their texts apart, however long their names are.
func TestManyLegs(t *testing.T) {
	for _, n := range []int{1, 2, 7, 30} {
		var legs []any
		for range n {
			legs = append(legs, map[string]any{"name": strings.Repeat("a door of the west wing ", 5), "kind": "door", "width": "700mm", "height": "900mm", "wall": "100mm"})
		}
		for _, units := range []string{"metric", "imperial"} {
			s, err := Draw("route", input(t, map[string]any{"route": legs, "project.units": units}), sheet.Options{})
			require.NoError(t, err)
			assert.Empty(t, draft.Overlaps(s), "%d legs", n)
		}
	}
}

// innerCorner is the least distance of the panel from the inner corner, along
// every edge.
func innerCorner(p carrying.Pose) float64 {
	least := math.Inf(1)
	for i, a := range p.Panel {
		b := p.Panel[(i+1)%len(p.Panel)]
		for k := range 50 {
			x, y := p.A-a.X-(b.X-a.X)*float64(k)/50, p.B-a.Y-(b.Y-a.Y)*float64(k)/50
			if x > 0 && y > 0 {
				least = min(least, math.Hypot(x, y))
				continue
			}
			least = min(least, max(x, y))
		}
	}
	return least
}

// clearance is the least distance of the panel from what is around it, but
// for an inner corner.
func clearance(p carrying.Pose) float64 {
	low, high := space.Point{X: math.Inf(1), Y: math.Inf(1)}, space.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range p.Panel {
		low.X, low.Y, high.X, high.Y = min(low.X, q.X), min(low.Y, q.Y), max(high.X, q.X), max(high.Y, q.Y)
	}
	switch p.Plane {
	case carrying.Corner:
		return min(low.X, low.Y)
	case carrying.Wall:
		least := math.Inf(1)
		for _, q := range p.Panel {
			if q.X >= 0 && q.X <= p.B {
				least = min(least, q.Y, p.A-q.Y)
			}
		}
		return least
	default:
		return min(low.X, low.Y, p.A-high.X, p.B-high.Y)
	}
}
