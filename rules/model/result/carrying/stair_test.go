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
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/layout"
	"dryfit/spec/record"
)

// mostUndecided is the share of stairs with all their keys that may be left: of 1,000,
// which PASSAGE_PAIRS=1000 runs.
const mostUndecided = 0.10

// leastFollowed is the share that is followed as one motion at the least.
const leastFollowed = 0.5

// skipShort leaves a test out under the race detector.
func skipShort(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
}

func stairs(t *testing.T) int {
	skipShort(t)
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
	count, byTurn, followed := map[passage.Outcome]int{}, map[string]int{}, 0
	for range n {
		p, l := stairPanel(t, r), randomStair(r)
		way := p.stair(l, Search{}.budget())
		assert.Empty(t, way.Needs)
		count[way.Outcome]++
		if way.Climbs {
			followed++
		}
		switch way.Outcome {
		case passage.Cannot:
			assert.NotZero(t, way.Bound)
		case passage.Undecided:
			byTurn[l.Turn.Get()]++
		}
	}
	t.Logf("%v of %d, %d followed as one motion, undecided by turn %v", count, n, followed, byTurn)
	assert.LessOrEqual(t, count[passage.Undecided], 3+int(mostUndecided*float64(n)))
	assert.GreaterOrEqual(t, followed, int(leastFollowed*float64(n))-3)
}

func stated[T any](v T) record.Value[T] { return record.Stated(nil, 0, "", v, true) }

// unstated is a key that a spec leaves out.
func unstated[T any]() record.Value[T] {
	var none T
	return record.Stated(nil, 0, "", none, false)
}

// randomStair is 900 to 1500 mm wide with 2 to 2.6 m of headroom; its landing is as
// wide as a flight at the least, a straight flight in its middle, and corridors past its ends.
func randomStair(r *rand.Rand) layout.Leg {
	draw := func(low, high float64) layout.Number { return stated(low + (high-low)*r.Float64()) }
	l := layout.Leg{
		Width: draw(0.9, 1.5), Headroom: draw(2, 2.6), Rise: draw(0.15, 0.19), Going: draw(0.25, 0.3),
		Risers: stated(8 + r.IntN(10)), Turn: stated([]string{straightOn, "quarter", halfTurn}[r.IntN(3)]), Ends: stated(corridors),
	}
	l.Landing.Length = stated(l.Width.Get() + 0.6*r.Float64())
	beside := 1.5 * r.Float64()
	l.Landing.Width, l.LandingLeft = stated(l.Width.Get()+beside), stated(beside/2)
	if l.Between = stated(walled); l.Turn.Get() == halfTurn {
		l.Landing.Width = stated(2*l.Width.Get() + 0.6*r.Float64())
	}
	return l
}

// The landing is long on from the top step, and wide across the flight that comes up: the
// way on from its side is as wide as it is long. Around a corner of 1200 and 2000 mm a
// piece of no width may be (1200^⅔ + 2000^⅔)^(3/2) = 4478 mm long, so that a flat panel of
// 2400 by 60 mm goes around on edge. With its wrap of 20 mm it is 100 mm thick, and a way
// on of 60 mm does not take it, however wide the landing is. The length of the ladder is
// from memory.
func TestTheWayOnIsAsWideAsTheLandingIsLong(t *testing.T) {
	section := []space.Point{{X: 0, Y: 0}, {X: 2.4, Y: 0}, {X: 2.4, Y: 0.06}, {X: 0, Y: 0.06}}
	p := &panel{wrap: 0.02, brief: true, body: passage.NewBody(section, 0.8, 0.02)}
	l := layout.Leg{
		Width: stated(1.2), Headroom: stated(2.2), Rise: stated(0.17), Going: stated(0.28), Risers: stated(16), Turn: stated("quarter"), Between: stated(walled), Ends: unstated[string](),
	}
	l.Landing.Length, l.Landing.Width = stated(2.0), stated(1.2)
	assert.Equal(t, passage.Passes, p.stair(l, &passage.Budget{Cells: cells}).Outcome)
	l.Landing.Length, l.Landing.Width = stated(0.06), stated(3.0)
	way := p.stair(l, &passage.Budget{Cells: cells})
	assert.Equal(t, passage.Cannot, way.Outcome)
	assert.NotZero(t, way.Bound)
}

// A flight of 60 mm takes no panel that is 100 mm thick with its wrap, and the landing
// takes it neither: that needs no key of the landing.
func TestAFlightAloneRulesOut(t *testing.T) {
	section := []space.Point{{X: 0, Y: 0}, {X: 2.4, Y: 0}, {X: 2.4, Y: 0.06}, {X: 0, Y: 0.06}}
	p := &panel{wrap: 0.02, brief: true, body: passage.NewBody(section, 0.8, 0.02)}
	l := layout.Leg{
		Width: stated(0.06), Headroom: stated(2.2), Rise: stated(0.17), Going: stated(0.28), Risers: stated(40),
		Turn: stated("quarter"), Between: unstated[string](), Ends: unstated[string](),
	}
	l.Landing.Length, l.Landing.Width = stated(0.06), stated(0.1)
	way := p.stair(l, &passage.Budget{Cells: cells})
	assert.Equal(t, passage.Cannot, way.Outcome)
	assert.Empty(t, way.Needs)
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
	var outline []space.Point
	for _, q := range part.Polyline(layout.BandSteps) {
		outline = append(outline, space.Point{X: q.Y, Y: q.Z})
	}
	outer := back.Polyline(layout.BandSteps)
	for i := range outer {
		q := outer[len(outer)-1-i]
		outline = append(outline, space.Point{X: q.Y, Y: q.Z})
	}
	wrap := draw(0.015, 0.03)
	return &panel{wrap: wrap, brief: true, body: passage.NewBody(outline, draw(0.5, 1.6), wrap)}
}

// A half turn on a landing as wide as the panel is long, wrap and all, is passed as two
// corners: 2400 + 2 · 20 = 2440 mm. On one that is 1 mm less it is left open. Without the
// number of steps it is not followed as one.
func TestAHalfTurnLaysThePanelOnTheLanding(t *testing.T) {
	section := []space.Point{{X: 0, Y: 0}, {X: 2.4, Y: 0}, {X: 2.4, Y: 0.06}, {X: 0, Y: 0.06}}
	p := &panel{wrap: 0.02, brief: true, body: passage.NewBody(section, 0.8, 0.02)}
	l := layout.Leg{
		Width: stated(1.2), Headroom: stated(2.2), Rise: stated(0.17), Going: stated(0.28), Risers: unstated[int](), Turn: stated(halfTurn), Between: stated("open"), Ends: unstated[string](),
	}
	l.Landing.Length = stated(2.0)
	for width, want := range map[float64]passage.Outcome{2.441: passage.Passes, 2.439: passage.Undecided} {
		l.Landing.Width = stated(width)
		assert.Equal(t, want, p.stair(l, &passage.Budget{Cells: cells}).Outcome, width)
	}
}

// A flat panel of 2400 by 60 by 800 mm in a wrap of 20 mm passes no door that is less
// wide than it is thick, 100 mm with its wrap, however high the door is.
func TestTheSizeThatIsImpossible(t *testing.T) {
	section := []space.Point{{X: 0, Y: 0}, {X: 2.4, Y: 0}, {X: 2.4, Y: 0.06}, {X: 0, Y: 0.06}}
	p := &panel{wrap: 0.02, body: passage.NewBody(section, 0.8, 0.02)}
	w := doorWalls(layout.Leg{Width: stated(0.05), Height: stated(9.0), Wall: stated(0.1)})
	assert.InDelta(t, 0.1, p.impossible(w, 0, passage.Decision{Outcome: passage.Cannot}, 1), 1e-4)
	assert.InDelta(t, 0.1, p.impossible(w, 0, passage.Decision{Outcome: passage.Undecided}, 1), 1e-4)
}

// The panel passes a stair that a cover rules out as one motion, once all its sizes have
// grown by what the way says. With 50mm it does not pass yet.
func TestTheSizesOfAStairThatIsRuledOut(t *testing.T) {
	section := []space.Point{{X: 0, Y: 0}, {X: 2.4, Y: 0}, {X: 2.4, Y: 0.06}, {X: 0, Y: 0.06}}
	p := &panel{wrap: 0.02, body: passage.NewBody(section, 0.8, 0.02)}
	stair := func(more float64) Way {
		l := layout.Leg{
			Width: stated(0.7 + more), Headroom: stated(1.6 + more), Rise: stated(0.17), Going: stated(0.28),
			Risers: record.Stated(nil, 0, "", 14, true), Turn: stated(halfTurn), Between: stated(walled), Ends: unstated[string](),
		}
		l.Landing.Length, l.Landing.Width = stated(0.7+more), stated(1.5+more)
		return p.stair(l, &passage.Budget{Cells: cells})
	}
	out := stair(0)
	require.Equal(t, passage.StairCover, out.Bound)
	require.Positive(t, out.Size.More)
	t.Logf("%.3f m", out.Size.More)
	assert.True(t, stair(out.Size.More).Climbs)
	assert.NotEqual(t, passage.Passes, stair(0.05).Outcome)
}

// That flight and landing let the bare panel pass by themselves does not say that the stair
// does: one motion up it must be found.
func TestAStairPassesWithoutTheWrapAsAWhole(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 9))
	for range 28 {
		stairPanel(t, r)
		randomStair(r)
	}
	p, l := stairPanel(t, r), randomStair(r)
	require.True(t, p.upStair(l, &passage.Budget{Cells: cells}).Bare)
	assert.False(t, p.stair(l, &passage.Budget{Cells: cells}).Bare)

	p = &panel{wrap: 0.6, body: passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 0.06}, {X: 0, Y: 0.06}}, 0.6, 0.6)}
	l.Width, l.Headroom, l.Turn = stated(1.1), stated(2.3), stated(halfTurn)
	l.Landing.Length, l.Landing.Width = stated(1.2), stated(2.3)
	out := p.stair(l, &passage.Budget{Cells: cells})
	assert.NotEqual(t, passage.Passes, out.Outcome)
	assert.True(t, out.Bare)
}

// Of stairs that plain motions and proofs leave, some are climbed by a motion on which the
// panel turns freely: it is tilted, and followed from the foot.
func TestAStairIsClimbedFreely(t *testing.T) {
	skipShort(t)
	r := rand.New(rand.NewPCG(25, 10))
	found, apart := 0, 0
	for range 60 {
		p, l := stairPanel(t, r), randomStair(r)
		if turns(l, straightOn) || p.stair(l, Search{Brief: true}.budget()).Outcome != passage.Undecided {
			continue
		}
		left := Search{}.budget()
		switch way := p.stair(l, left); way.Outcome {
		case passage.Passes:
			found++
			assert.True(t, way.Tilted)
			assert.True(t, way.Climbs)
			assert.False(t, way.Unfollowed)
		case passage.Cannot:
			if way.Bound == passage.StairApart {
				apart++
			}
		default:
			assert.True(t, way.RanOut)
		}
	}
	assert.Positive(t, found)
	assert.Positive(t, apart)
}

// A board that may be at each place of a stair at some turn, but whose turns there do not
// lead to each other, is ruled out, and needs the key that says what is between the flights;
// with less than a wall between them nothing rules it out. A thorough search finds sizes
// with which one motion is found.
func TestAStairIsRuledOutByAllTurns(t *testing.T) {
	skipShort(t)
	outline := []space.Point{{X: 0, Y: 0}, {X: 2.9, Y: 0}, {X: 2.9, Y: 0.086}, {X: 0, Y: 0.086}}
	p := &panel{body: passage.NewBody(outline, 0.95, 0.02), wrap: 0.02}
	l := layout.Leg{
		Width: stated(0.97), Headroom: stated(2.2), Rise: stated(0.17), Going: stated(0.28), Risers: stated(20), Turn: stated(halfTurn), Between: stated(walled), Ends: unstated[string](),
	}
	l.Landing.Length, l.Landing.Width = stated(1.2), stated(1.95)
	way := p.stair(l, Search{}.budget())
	require.Equal(t, passage.Cannot, way.Outcome)
	require.Equal(t, passage.StairApart, way.Bound)
	require.Empty(t, way.Needs)
	assert.Positive(t, p.stair(l, Search{Depth: Thorough}.budget()).Size.More)
	assert.Equal(t, passage.Undecided, p.stair(l, Search{Brief: true}.budget()).Outcome)
	l.Between = stated("open")
	assert.Equal(t, passage.Undecided, p.stair(l, Search{}.budget()).Outcome)
	l.Between = unstated[string]()
	assert.Equal(t, "between", p.stair(l, Search{}.budget()).Needs)
}

// A board that does not go around a landing between corridors is ruled out where the leg
// states them, and not decided where it does not. A straight flight is placed at its landing,
// which grows with it where it is too narrow.
func TestAStairIsDecidedByItsKeys(t *testing.T) {
	skipShort(t)
	p := &panel{body: passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: 3.12, Y: 0}, {X: 3.12, Y: 0.083}, {X: 0, Y: 0.083}}, 0.83, 0.021), wrap: 0.021}
	l := layout.Leg{
		Width: stated(0.907), Headroom: stated(2.496), Rise: stated(0.1814), Going: stated(0.2748), Risers: stated(17), Turn: stated("quarter"), Between: stated(walled), Ends: unstated[string](),
	}
	l.Landing.Length, l.Landing.Width = stated(1.036), stated(1.206)
	way := p.stair(l, Search{}.budget())
	assert.Equal(t, passage.Undecided, way.Outcome)
	assert.Equal(t, "ends", way.Decides)
	l.Ends = stated("open")
	way = p.stair(l, Search{}.budget())
	assert.Equal(t, passage.Undecided, way.Outcome)
	assert.Empty(t, way.Decides)
	l.Ends, l.Between = unstated[string](), stated("open")
	assert.Empty(t, p.stair(l, Search{}.budget()).Decides, "no proof holds for open flights")
	l.Ends, l.Between = stated(corridors), stated(walled)
	assert.Equal(t, passage.StairApart, p.stair(l, Search{}.budget()).Bound)

	l.Turn, l.LandingLeft = stated(straightOn), stated(0.4)
	s := straightStair(l, []float64{1.8, 2}, 2)
	assert.True(t, s.Placed)
	assert.True(t, s.Corridors)
	assert.InDelta(t, 2.2, s.Across, 1e-9) // as wide as the grown flight needs
	assert.InDelta(t, 0.4, s.Left, 1e-9)
}
