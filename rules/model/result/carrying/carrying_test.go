package carrying_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
)

// The street door of 900 by 2040 mm: no side of the box goes through, and the
// panel threads along its own circle: half of 2040 − 1180 − 50 = 810 mm is left
// on each side of its height, half of 900 − 112 = 394 mm of its width.
func TestThreadedWhereTheBoxFails(t *testing.T) {
	legs := carrying.Of(sample.Room(t, nil), carrying.Search{})
	door := legs[1].Way.Get()
	assert.Equal(t, passage.Passes, door.Outcome)
	assert.Equal(t, "threaded along its own curve, its axis upright", door.Motion)
	assert.InDelta(t, 0.394, door.Margin, 1e-3)
	flat := sample.Room(t, map[string]any{"vault": map[string]any{"profile": "elliptical", "rise": "840mm", "span": "4200mm", "length": "7080mm"}})
	assert.Equal(t, passage.Undecided, carrying.Of(flat, carrying.Search{})[1].Way.Get().Outcome, "not one circle")
}

// Nested arches: 110 mm through the wrap, by cos 43.6 degrees, is a pitch of 152
// mm. In 2300 mm of height above the first's 950 mm go eight more; one stack lies
// across 6100 mm.
func TestNestedLoads(t *testing.T) {
	van := carrying.Of(sample.Room(t, nil), carrying.Search{})[0].Way.Get()
	assert.Equal(t, 9, van.Load)
	assert.Equal(t, 1, van.Loads)
	assert.Equal(t, passage.Passes, van.Outcome)
}

// What a wider opening lets through a narrower one need not, and never the other
// way about.
func TestMarginsGrowWithTheOpening(t *testing.T) {
	last := -10.0
	for _, width := range []string{"600mm", "800mm", "1000mm", "1200mm", "1600mm", "2400mm"} {
		c := sample.Room(t, map[string]any{"route.2.width": width})
		m := carrying.Of(c, carrying.Search{})[1].Way.Get().Margin
		assert.GreaterOrEqual(t, m, last-1e-9, width)
		last = m
	}
}

// A bar of 60mm along the tangent of the demo's rib has 59.9mm of its depth over it,
// so that an opening of 50mm less than that lets nothing through in its wrap: the
// size that is proven impossible is at least 109.8mm, and the one that passes is more.
func TestSizesThatAreImpossibleAndKnown(t *testing.T) {
	c := sample.Room(t, map[string]any{"route.2.width": "60mm"})
	way := carrying.Of(c, carrying.Search{})[1].Way.Get()
	assert.Equal(t, passage.Cannot, way.Outcome)
	assert.GreaterOrEqual(t, way.Size.Impossible, 0.1098)
	assert.Less(t, way.Size.Impossible, way.Size.Passes)
	assert.InDelta(t, 0.1125, way.Size.Passes, 0.001, "the ring needs 112mm")
}

// What is asked of one leg is what all of them say of it.
func TestOneLegOfTheRoute(t *testing.T) {
	c := sample.Room(t, nil)
	for i, l := range carrying.Of(c, carrying.Search{}) {
		one := carrying.Of(sample.Room(t, nil), carrying.Search{Only: carrying.LegOf(l.Key())})
		require.Len(t, one, 1)
		assert.Equal(t, strconv.Itoa(i+1), one[0].Number())
		assert.Equal(t, l.Name.Get(), one[0].Name.Get())
		had, got := l.Way.Get(), one[0].Way.Get()
		assert.Equal(t, had.Outcome, got.Outcome)
		assert.Equal(t, had.Motion, got.Motion)
		assert.Equal(t, had.Margin, got.Margin)
	}
	for _, key := range []string{"panels.along", "route", "route.*.width"} {
		assert.Zero(t, carrying.LegOf(key), key)
	}
}

func BenchmarkAllLegs(b *testing.B) {
	c := sample.Room(b, nil)
	for b.Loop() {
		for _, l := range carrying.Of(c, carrying.Search{}) {
			l.Way.Get()
		}
	}
}

// Two doors of the same opening, the second with less depth before it: it is decided for
// itself, along the panel's own curve, as it is where it is the only one.
func TestDoorsAreToldApartByTheRoomAroundThem(t *testing.T) {
	door := func(before string) any {
		return map[string]any{"name": "door", "kind": "door", "width": "900mm", "height": "1000mm", "wall": "200mm", "before": before, "after": before}
	}
	ways := func(doors ...any) []carrying.Leg {
		tree := sample.Tree(t, "alcove", map[string]any{"vault.profile": "elliptical", "route": doors})
		c, faults := layout.Resolve(tree, standards.BuiltIn(), nil)
		require.Empty(t, faults)
		return carrying.Of(c, carrying.Search{})
	}
	wide, narrow := ways(door("9000mm"))[0].Way.Get(), ways(door("1000mm"))[0].Way.Get()
	require.Greater(t, wide.Depth, 1.0)
	require.Less(t, narrow.Depth, 1.0)
	both := ways(door("9000mm"), door("1000mm"))
	assert.InDelta(t, wide.Depth, both[0].Way.Get().Depth, 0)
	assert.InDelta(t, narrow.Depth, both[1].Way.Get().Depth, 0)
}
