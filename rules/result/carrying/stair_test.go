package carrying

import (
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/layout"
	"dryfit/spec/record"
)

// mostUndecided is the share of stairs with all their keys that may be left: of 1,000,
// which PASSAGE_PAIRS=1000 runs.
const mostUndecided = 0.1

func stairs(t *testing.T) int {
	if s := os.Getenv("PASSAGE_PAIRS"); s != "" {
		n, err := strconv.Atoi(s)
		require.NoError(t, err)
		return n
	}
	return 40
}

// TestStairsAreDecided decides random realistic stairs that state all their keys, by
// the way that they turn: straight on, by a quarter, by a half.
func TestStairsAreDecided(t *testing.T) {
	n := stairs(t)
	r := rand.New(rand.NewPCG(25, 9))
	count, byTurn := map[passage.Outcome]int{}, map[string]int{}
	for range n {
		p, l := stairPanel(t, r), randomStair(r)
		way := p.stair(l, &passage.Budget{Cells: cells})
		assert.Empty(t, way.Needs)
		count[way.Outcome]++
		switch way.Outcome {
		case passage.Cannot:
			assert.NotZero(t, way.Bound)
		case passage.Undecided:
			byTurn[l.Turn.Get()]++
		}
	}
	t.Logf("%v of %d, undecided by turn %v", count, n, byTurn)
	assert.LessOrEqual(t, count[passage.Undecided], 1+int(mostUndecided*float64(n)))
}

func stated[T any](v T) record.Value[T] { return record.Stated(nil, 0, "", v, true) }

// randomStair is 900 to 1500 mm wide with 2 to 2.6 m of headroom; its landing is as
// wide as a flight at the least.
func randomStair(r *rand.Rand) layout.Leg {
	draw := func(low, high float64) layout.Number { return stated(low + (high-low)*r.Float64()) }
	l := layout.Leg{
		Width: draw(0.9, 1.5), Headroom: draw(2, 2.6), Rise: draw(0.15, 0.19), Going: draw(0.25, 0.3),
		Risers: stated(8 + r.IntN(10)), Turn: stated([]string{straightOn, "quarter", halfTurn}[r.IntN(3)]),
	}
	l.Landing.Width = stated(l.Width.Get() + 0.6*r.Float64())
	l.Landing.Length = stated(l.Width.Get() + 1.5*r.Float64())
	if l.Turn.Get() == halfTurn {
		l.Landing.Length = stated(2*l.Width.Get() + 0.6*r.Float64())
	}
	return l
}

// stairPanel is drawn as panels of other legs are: spans of 1.5 to 6 m, rises of 0.1
// to 0.5 of them, lengths of 0.5 to 1.6 m, 45 to 120 mm thick, whole or half.
func stairPanel(t *testing.T, r *rand.Rand) *panel {
	draw := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	span := draw(1.5, 6)
	rise := span * draw(0.1, 0.5)
	var c curve.Curve
	var err error
	switch r.IntN(6) {
	case 0:
		c, err = curve.Segmental(span, rise)
	case 1:
		c, err = curve.Semicircular(span)
	case 2:
		c, err = curve.ThreeCentredByHaunch(span, rise, rise*draw(0.4, 0.8))
		if err != nil {
			c, err = curve.Segmental(span, rise)
		}
	case 3:
		c, err = curve.PointedByRise(span, span*draw(0.5, 0.8))
	case 4:
		c, err = curve.Elliptical(span, rise)
	default:
		c, err = curve.Flat(span)
	}
	require.NoError(t, err)
	end := c.Length() / float64(1+r.IntN(2))
	part := c.Between(0, end)
	back, err := part.Offset(draw(0.045, 0.12))
	require.NoError(t, err)
	var outline []passage.Point
	for _, q := range part.Polyline(layout.BandSteps) {
		outline = append(outline, passage.Point{X: q.Y, Y: q.Z})
	}
	outer := back.Polyline(layout.BandSteps)
	for i := range outer {
		q := outer[len(outer)-1-i]
		outline = append(outline, passage.Point{X: q.Y, Y: q.Z})
	}
	wrap := draw(0.015, 0.03)
	return &panel{wrap: wrap, brief: true, body: passage.NewBody(outline, draw(0.5, 1.6), wrap)}
}
