package opening_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/outline"
)

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
		b := passage.NewBody(outline.Arc(r[0], r[1]-r[0], 0.6, 400), 1, 0)
		for by, passes := range map[float64]bool{1e-4: true, -1e-4: false} {
			d := opening.Through(b, opening.Door{Width: r[3] + by, Height: 3, Wall: r[2], Floor: true}, nil)
			assert.Equal(t, passes, d.Outcome == passage.Passes, "%v and %v", r, by)
		}
	}
}

// The same formula a hundred times as large, where the steps are longer.
func TestThreadOfALargeStrip(t *testing.T) {
	for _, r := range [][4]float64{{240, 250, 15, 10.1172}, {150, 162, 30, 12.7519}} {
		b := passage.NewBody(outline.Arc(r[0], r[1]-r[0], 0.6, 400), 100, 0)
		for by, passes := range map[float64]bool{1e-2: true, -1e-2: false} {
			d := opening.Through(b, opening.Door{Width: r[3] + by, Height: 300, Wall: r[2], Floor: true}, nil)
			assert.Equal(t, passes, d.Outcome == passage.Passes, "%v and %v", r, by)
		}
	}
}

func TestStraightAgreesWithTheTheorem(t *testing.T) { rapid.Check(t, straightAgreesWithTheTheorem) }

// FuzzStraight looks for an opening at which it does not.
func FuzzStraight(f *testing.F) { f.Fuzz(rapid.MakeFuzz(straightAgreesWithTheTheorem)) }

// A bar that is much longer than its section goes into a corridor as the exact
// theorem says.
func straightAgreesWithTheTheorem(t *rapid.T) {
	draw := func(name string) float64 { return rapid.Float64Range(0.05, 3).Draw(t, name) }
	p, q, a, b := draw("p"), draw("q"), draw("a"), draw("b")
	d := opening.Along(passage.NewBody(outline.Rectangle(p, q), 100, 0), opening.Corridor{Width: a, Height: b}, nil)
	if want := opening.RectangleInRectangle(p, q, a, b).Margin; (d.Outcome == passage.Passes) != (want >= 0) && math.Abs(want) > 1e-4 {
		t.Fatalf("%v, exact %v", d.Outcome, want)
	}
}

func BenchmarkThroughThreaded(b *testing.B) {
	body := passage.NewBody(outline.Arc(3, 0.1, 0.7, 400), 1.2, 0.025)
	for b.Loop() {
		opening.Through(body, opening.Door{Width: 0.9, Height: 2.04, Wall: 0.2, Floor: true}, nil)
	}
}
