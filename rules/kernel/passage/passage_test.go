package passage_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/passage"
)

const degree = math.Pi / 180

// The ladder, (a^⅔ + b^⅔)^(3/2): any calculus text; corridors of 3 and 4 give
// 9.87 on a published page.
func TestLadder(t *testing.T) {
	for _, r := range [][3]float64{
		{1, 1, 2.8284},
		{3, 4, 9.8657},
		{8, 27, 46.8722},
		{4, 8, 16.6478},
		{64, 27, 125},
		{36, 36, 101.8234},
		{44, 44, 124.4508},
		{36, 44, 112.9481},
		{1200, 900, 2959.6988},
		{914, 1118, 2868.8434},
	} {
		assert.InDelta(t, r[2], passage.LongestAround(0, r[0], r[1]), 1e-4*max(1, r[2]/1000))
	}
}

// Rectangles around a corner: 12.8927 for corridors of 8 and 3 and a width of 1
// at 31 degrees is on a demonstration page of Moretti's; for equal corridors
// 2(√2·a − w) follows, the others from the same formula.
func TestRectangleAround(t *testing.T) {
	for _, r := range [][4]float64{ // a, b, w, longest
		{1, 1, 0.5, 1.8284},
		{3, 8, 1, 12.8563},
		{36, 36, 6, 89.8234},
		{36, 36, 12, 77.8234},
		{36, 44, 8, 96.9039},
		{914, 914, 150, 2285.1824},
		{1118, 1118, 300, 2562.1815},
		{1200, 900, 300, 2355.8961},
		{1500, 1200, 400, 3007.4127},
		{1800, 914, 250, 3252.4146},
	} {
		assert.InDelta(t, r[3], passage.LongestAround(r[2], r[0], r[1]), 1e-4*max(1, r[3]/1000))
	}
	at := 31 * degree
	assert.InDelta(t, 12.8927, (8*math.Sin(at)+3*math.Cos(at)-1)/(math.Sin(at)*math.Cos(at)), 1e-4)
	assert.Zero(t, passage.LongestAround(2, 1, 3), "wider than a corridor")
	assert.InDelta(t, 0, passage.RectangleAround(2285.1824, 150, 914, 914), 1e-3)
	assert.GreaterOrEqual(t, passage.RectangleAround(900, 900, 914, 914), 6.9, "a square slides round")
}

// A strip pushed along its own circle: derived, width = Ro − √(Ri² − t²/4) where
// the piece is longer than the wall.
func TestThread(t *testing.T) {
	for _, r := range [][4]float64{ // Ri, Ro, t, width
		{2400, 2500, 0, 100},
		{2400, 2500, 150, 101.172},
		{2400, 2500, 300, 104.692},
		{1500, 1620, 150, 121.876},
		{1500, 1620, 300, 127.519},
		{3000, 3150, 200, 151.667},
		{60, 66, 6, 6.075},
		{5000, 5060, 200, 61},
	} {
		assert.InDelta(t, r[3], passage.Strip{Inner: r[0], Outer: r[1], Half: 0.6}.Thread(r[2]).Width, 6e-4)
	}
	assert.InDelta(t, 100.366, passage.Strip{Inner: 2400, Outer: 2500, Half: degree}.Straight(), 6e-4, "a short piece, pushed straight")
	assert.InDelta(t, 136.461, passage.Strip{Inner: 2400, Outer: 2500, Half: 10 * degree}.Straight(), 6e-4)
	assert.InDelta(t, 320.962, passage.Strip{Inner: 1500, Outer: 1620, Half: 30 * degree}.Straight(), 6e-4)
}

// The width agrees with points of the strip followed through the wall.
func TestThreadAgainstPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := passage.Strip{Inner: rapid.Float64Range(1, 5).Draw(t, "inner"), Half: rapid.Float64Range(0.05, 0.8).Draw(t, "half")}
		s.Outer = s.Inner + rapid.Float64Range(0.02, 0.4).Draw(t, "thick")
		wall := rapid.Float64Range(0, 0.5).Draw(t, "wall")
		low, high, depth := math.Inf(1), math.Inf(-1), 0.0
		for k := range 400 { // the strip's middle, from wholly before to wholly beyond
			mid := -s.Half + 2*s.Half*float64(k)/399
			for i := range 200 {
				a := mid - s.Half + 2*s.Half*float64(i)/199
				for _, r := range []float64{s.Inner, s.Outer} {
					x, y := r*math.Cos(a), r*math.Sin(a)
					if math.Abs(y) <= wall/2 {
						low, high = min(low, x), max(high, x)
					}
					depth = max(depth, math.Abs(y)-wall/2)
				}
			}
		}
		got := s.Thread(wall)
		if high-low > got.Width+1e-9 || high-low < got.Width-0.02 && wall > 0.1 {
			t.Fatalf("width %v, by points %v", got.Width, high-low)
		}
		if depth > got.Depth+1e-9 {
			t.Fatalf("depth %v, by points %v", got.Depth, depth)
		}
	})
}

// Tables worked from the closed forms, which are derived.
func TestTilting(t *testing.T) {
	for _, r := range [][3]float64{{2400, 300, 2418.677}, {2400, 600, 2473.863}, {2700, 400, 2729.469}, {96, 12, 96.747}, {2000, 1500, 2500}} {
		assert.InDelta(t, r[2], passage.Peak(r[0], r[1]), 1e-3)
	}
	// Tipped under a header: plan lengths worked from the closed form.
	for _, r := range [][4]float64{{3000, 300, 2032, 2585.60}, {2400, 200, 2032, 1611.16}, {120, 12, 80, 104.30}} {
		assert.InDelta(t, r[3], passage.TippedPlan(r[0], r[1], r[2]), 0.006)
	}
	assert.Zero(t, passage.TippedPlan(3000, 300, 200))
	for _, r := range [][4]float64{{196, 254, 2032, 1608.7}, {178, 279, 2032, 1713.1}, {180, 280, 2032, 1709.3}} {
		assert.InDelta(t, r[3], passage.AcrossSlope(r[2], r[0], r[1]), 0.06)
	}
	for _, r := range [][5]float64{{3000, 100, 3001, 3001.666, 36.8}, {3000, 200, 3005, 3006.659, 100.1}, {2400, 150, 2404, 2404.683, 92.7}, {144, 12, 144.25, 144.499, 3.5}} {
		tilt := passage.Between(r[0], r[1], r[2])
		assert.InDelta(t, r[3], tilt.Peak, 1e-3)
		assert.InDelta(t, r[4], tilt.Level, 0.06)
	}
	assert.True(t, math.IsInf(passage.Between(3000, 100, 3100).Level, 1))
	for _, r := range [][4]float64{ // car floors of ISO 8100-30, as a public page lists them
		{0, 1100, 1400, 1780.4},
		{60, 1100, 1400, 1722.3},
		{100, 1100, 1400, 1683.8},
		{200, 1100, 1400, 1588.8},
		{60, 1100, 2100, 2322.1},
		{100, 1100, 2100, 2290.7},
		{200, 1400, 2400, 2610.6},
	} {
		assert.InDelta(t, r[3], passage.OnDiagonal(r[0], r[1], r[2]), 0.06)
	}
}

func TestThroughAgreesWithTheTheorem(t *testing.T) { rapid.Check(t, throughAgreesWithTheTheorem) }

// FuzzThrough looks for an opening at which it does not.
func FuzzThrough(f *testing.F) { f.Fuzz(rapid.MakeFuzz(throughAgreesWithTheTheorem)) }

// A rectangle's section through an opening is the exact theorem's.
func throughAgreesWithTheTheorem(t *rapid.T) {
	draw := func(name string) float64 { return rapid.Float64Range(0.05, 3).Draw(t, name) }
	p, q, a, b := draw("p"), draw("q"), draw("a"), draw("b")
	got := passage.Through([]passage.Point{{}, {X: p}, {X: p, Y: q}, {Y: q}}, a, b).Margin
	want := passage.RectangleInRectangle(p, q, a, b).Margin
	if math.Abs(got-want) > 1e-4 {
		t.Fatalf("%v, exact %v", got, want)
	}
}

func arch(r, thick, half float64) []passage.Point {
	var p []passage.Point
	const n = 24
	for i := range n + 1 {
		a := -half + 2*half*float64(i)/n
		p = append(p, passage.Point{X: (r + thick) * math.Sin(a), Y: (r + thick) * math.Cos(a)})
	}
	for i := range n + 1 {
		a := half - 2*half*float64(i)/n
		p = append(p, passage.Point{X: r * math.Sin(a), Y: r * math.Cos(a)})
	}
	return p
}

// Of rectangles the search says what the exact formula says, and never passes
// one that jams.
func TestAroundAgreesWithRectangles(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	undecided := 0
	const n = 300
	for range n {
		l, w := 0.3+3*random.Float64(), 0.1+0.8*random.Float64()
		a, b := 0.5+1.5*random.Float64(), 0.5+1.5*random.Float64()
		exact := passage.RectangleAround(l, w, a, b)
		switch got := passage.Around([]passage.Point{{}, {X: l}, {X: l, Y: w}, {Y: w}}, a, b); got.Outcome {
		case passage.Passes:
			assert.Greater(t, exact, -1e-9, "%v by %v in %v, %v", l, w, a, b)
		case passage.Jams:
			assert.Less(t, exact, 1e-9, "%v by %v in %v, %v", l, w, a, b)
		default:
			undecided++
		}
	}
	assert.LessOrEqual(t, undecided, n/20)
}

// Of 500 random arches and corners at most one in twenty is not decided. An arch
// may pass where its box jams, and never jams where its box passes.
func TestAroundDecides(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	undecided, beats := 0, 0
	const n = 500
	for range n {
		r, thick, half := 1+3*random.Float64(), 0.05+0.25*random.Float64(), 0.2+0.6*random.Float64()
		a, b := 0.6+2*random.Float64(), 0.6+2*random.Float64()
		shape := arch(r, thick, half)
		box := passage.RectangleAround(2*(r+thick)*math.Sin(half), r+thick-r*math.Cos(half), a, b)
		switch passage.Around(shape, a, b).Outcome {
		case passage.Undecided:
			undecided++
		case passage.Passes:
			if box < 0 {
				beats++
			}
		case passage.Jams:
			assert.Less(t, box, 1e-6)
		}
	}
	assert.LessOrEqual(t, undecided, n/20)
	assert.Greater(t, beats, 10, "arches that pass where their boxes do not")
}

func BenchmarkThrough(b *testing.B) {
	shape := arch(3, 0.1, 0.7)
	for b.Loop() {
		passage.Through(shape, 0.9, 2.04)
	}
}

func BenchmarkAround(b *testing.B) {
	shape := arch(3, 0.1, 0.7)
	for b.Loop() {
		passage.Around(shape, 1.2, 1.2)
	}
}
