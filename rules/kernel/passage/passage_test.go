package passage_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/stair"
)

const degree = math.Pi / 180

func rectangle(p, q float64) []space.Point {
	return []space.Point{{}, {X: p}, {X: p, Y: q}, {Y: q}}
}

// aroundLevel decides a corner with a plate of l by w that stands as high as the
// corridors, so that it can't be tilted.
func aroundLevel(l, w, a, b float64) passage.Decision {
	const high = 0.5
	return passage.NewBody(rectangle(l, w), high, 0).Around(passage.Corner{Width: a, Onward: b, Height: high + 1e-7}, nil)
}

// The ladder, (a^⅔ + b^⅔)^(3/2): any calculus text; corridors of 3 and 4 give
// 9.87 on a published page. Rectangles: 12.8927 for corridors of 8 and 3 and a
// width of 1 at 31 degrees is on a demonstration page of Moretti's; for equal
// corridors 2(√2·a − w) follows, the others from the same formula.
func TestPublishedCorners(t *testing.T) {
	for _, r := range [][4]float64{ // a, b, w, longest
		{1, 1, 1e-7, 2.8284},
		{3, 4, 1e-7, 9.8657},
		{8, 27, 1e-7, 46.8722},
		{4, 8, 1e-7, 16.6478},
		{64, 27, 1e-7, 125},
		{36, 36, 1e-7, 101.8234},
		{44, 44, 1e-7, 124.4508},
		{1.2, 0.9, 1e-7, 2.9596988},
		{0.914, 1.118, 1e-7, 2.8688434},
		{36, 44, 1e-7, 112.9481},
		{1, 1, 0.5, 1.8284},
		{3, 8, 1, 12.8563},
		{36, 36, 6, 89.8234},
		{36, 36, 12, 77.8234},
		{1.118, 1.118, 0.3, 2.5621815},
		{1.5, 1.2, 0.4, 3.0074127},
		{36, 44, 8, 96.9039},
		{0.914, 0.914, 0.15, 2.2851824},
		{1.2, 0.9, 0.3, 2.3558961},
		{1.8, 0.914, 0.25, 3.2524146},
	} {
		assert.Equal(t, passage.Passes, aroundLevel(r[3]*(1-1e-4), r[2], r[0], r[1]).Outcome, r)
		assert.NotEqual(t, passage.Passes, aroundLevel(r[3]*(1+1e-4), r[2], r[0], r[1]).Outcome, r)
	}
	at := 31 * degree
	assert.InDelta(t, 12.8927, (8*math.Sin(at)+3*math.Cos(at)-1)/(math.Sin(at)*math.Cos(at)), 1e-4)
}

// bandOf is a piece of a ring, its chords inside of the outer circle and outside
// of the inner one by nothing that counts.
func bandOf(inner, outer, half float64) []space.Point {
	var p []space.Point
	const n = 400
	for i := range n + 1 {
		a := -half + 2*half*float64(i)/n
		p = append(p, space.Point{X: inner * math.Sin(a), Y: inner * math.Cos(a)})
	}
	for i := range n + 1 {
		a := half - 2*half*float64(i)/n
		p = append(p, space.Point{X: outer * math.Sin(a), Y: outer * math.Cos(a)})
	}
	return p
}

// A strip pushed along its own circle: derived, width = Ro − √(Ri² − t²/4) where
// the piece is longer than the wall.
func TestThread(t *testing.T) {
	for _, r := range [][4]float64{ // Ri, Ro, t, width
		{2.4, 2.5, 0, 0.1},
		{2.4, 2.5, 0.15, 0.101172},
		{2.4, 2.5, 0.3, 0.104692},
		{1.5, 1.62, 0.15, 0.121876},
		{1.5, 1.62, 0.3, 0.127519},
		{3, 3.15, 0.2, 0.151667},
		{5, 5.06, 0.2, 0.061},
	} {
		b := passage.NewBody(bandOf(r[0], r[1], 0.6), 1, 0)
		for by, passes := range map[float64]bool{1e-4: true, -1e-4: false} {
			d := b.Through(passage.Door{Width: r[3] + by, Height: 3, Wall: r[2], Floor: true}, nil)
			assert.Equal(t, passes, d.Outcome == passage.Passes, "%v and %v", r, by)
		}
	}
}

// Tables worked from the closed forms, which are derived.
func TestTilting(t *testing.T) {
	for _, r := range [][4]float64{{196, 254, 2032, 1608.7}, {178, 279, 2032, 1713.1}, {180, 280, 2032, 1709.3}} {
		assert.InDelta(t, r[3], stair.AcrossSlope(r[2], r[0], r[1]), 0.06)
	}
	for _, r := range [][5]float64{{3000, 100, 3001, 3001.666, 36.8}, {3000, 200, 3005, 3006.659, 100.1}, {2400, 150, 2404, 2404.683, 92.7}, {144, 12, 144.25, 144.499, 3.5}} {
		tilt := passage.Between(r[0], r[1], r[2])
		assert.InDelta(t, r[3], tilt.Peak, 1e-3)
		assert.InDelta(t, r[4], tilt.Level, 0.06)
	}
	assert.True(t, math.IsInf(passage.Between(3000, 100, 3100).Level, 1))
}

func TestStraightAgreesWithTheTheorem(t *testing.T) { rapid.Check(t, straightAgreesWithTheTheorem) }

// FuzzStraight looks for an opening at which it does not.
func FuzzStraight(f *testing.F) { f.Fuzz(rapid.MakeFuzz(straightAgreesWithTheTheorem)) }

// A bar that is much longer than its section goes into a corridor as the exact
// theorem says.
func straightAgreesWithTheTheorem(t *rapid.T) {
	draw := func(name string) float64 { return rapid.Float64Range(0.05, 3).Draw(t, name) }
	p, q, a, b := draw("p"), draw("q"), draw("a"), draw("b")
	d := passage.NewBody(rectangle(p, q), 100, 0).Along(passage.Corridor{Width: a, Height: b}, nil)
	if want := passage.RectangleInRectangle(p, q, a, b).Margin; (d.Outcome == passage.Passes) != (want >= 0) && math.Abs(want) > 1e-4 {
		t.Fatalf("%v, exact %v", d.Outcome, want)
	}
}

func BenchmarkThroughThreaded(b *testing.B) {
	body := passage.NewBody(bandOf(3, 3.1, 0.7), 1.2, 0.025)
	for b.Loop() {
		body.Through(passage.Door{Width: 0.9, Height: 2.04, Wall: 0.2, Floor: true}, nil)
	}
}

func BenchmarkAroundOnEdge(b *testing.B) {
	body := passage.NewBody(bandOf(3, 3.1, 0.7), 1.2, 0.025)
	for b.Loop() {
		body.Around(passage.Corner{Width: 1.2, Onward: 1.2, Height: 2.4}, nil)
	}
}
