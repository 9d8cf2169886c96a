package stair

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// rod is a straight piece of a length, 60 mm square, in a wrap of 20 mm.
func rod(long float64) *passage.Body {
	return passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: long, Y: 0}, {X: long, Y: 0.06}, {X: 0, Y: 0.06}}, 0.06, 0.02)
}

// Half of a straight bar lies on from its middle. When that is in the wall's plane this
// half is over the landing, in a box of half of its width, its length and the headroom:
// its diagonal, √(1.2² + 1.2² + 2.2²) = 2.778 m, is the most that it may be long, and
// 5.556 m the whole bar. A bar of 1.1 m turns about its middle on the landing.
func TestABarTurnsByAHalf(t *testing.T) {
	s := Stair{Turn: Half, Width: 1.1, Headroom: 2.2, Rise: 0.17, Going: 0.28, Across: 2.4, Length: 1.2, Risers: 20}
	for long, want := range map[float64]passage.Outcome{1.1: passage.Passes, 5.556: passage.Cannot} {
		assert.Equal(t, want, Climb(rod(long), s, &passage.Budget{Cells: 20000}).Outcome, "%v", long)
	}
	s.Across = 2.1
	assert.Equal(t, passage.Undecided, Climb(rod(5.556), s, &passage.Budget{Cells: 20000}).Outcome, "the landing is narrower than the flights")
	assert.True(t, Climb(rod(5.556), s, nil).RanOut)
}

// short reports whether a place of a body on a stair is nearer than its wrap to the walls,
// the floor or the soffit, all of them as far off as a stair may have them: the flight
// that goes on begins a step late, and past the far ends of flights there is only floor,
// unless there are corridors.
func (s Stair) short(x, y, z, wrap float64) bool {
	slope, floor, soffit := s.slope(), 0.0, s.Headroom
	on := x - s.Across
	if s.Turn == Half {
		if on = none; x > s.Across/2 {
			on = -y
		}
	}
	deep := s.Rise * float64(s.Risers)
	switch {
	case s.Corridors && s.Turn != Straight && on > s.run():
		floor, soffit = deep-s.Rise, soffit+s.Rise+deep
	case s.Corridors && y < -s.run():
		floor, soffit = -deep, soffit-deep
	case y < -s.run():
		return z < wrap-deep
	case s.Turn != Straight && on > s.run():
		return y >= 0 && z < deep-s.Rise+wrap // beside that end there may be nothing
	case s.Turn != Straight && on > 0:
		floor, soffit = min(deep-s.Rise, s.Rise*max(0, math.Ceil(on/s.Going-1e-9)-1)), soffit+s.Rise+slope*on
	case y < 0:
		floor, soffit = max(-deep, s.Rise*math.Floor(y/s.Going+1e-9)), soffit+slope*y
	}
	if z < floor+wrap || z > soffit-wrap {
		return true
	}
	switch s.Turn {
	case Straight: // the flight comes up to one end of the landing, unless it is placed
		return x < wrap-s.Left || x > s.Across-s.Left-wrap || y < 0 && (x < wrap || x > s.Width-wrap)
	case Quarter:
		return x < wrap || y > s.Length-wrap || x > s.Width && y < 0
	default:
		return x < wrap || x > s.Across-wrap || y > s.Length-wrap || y < 0 && x > s.Width && x < s.Across-s.Width
	}
}

// Of the cells of turns that a cover leaves out, next to some that it does not, no turn
// has a place half way: the body's corners and places between them are looked at in a net
// of places of its crown.
func TestNoTurnThatIsOutIsHalfWay(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 3))
	for _, turn := range []Turn{Straight, Quarter, Half} {
		looked, free := 0, 0
		for range 40 {
			s, b := confinedCase(r, turn)
			p := b.Middle()[len(b.Middle())/2].At
			p.X = 0
			probes := newProbes(b, p, true, stairStep, alongStair)
			out, down := s.anyCover(r, b, probes)
			c := turns.Cube{Front: r.IntN(2), Cell: space.Cell{Half: [3]float64{1, 1, 1}}}
			for range 40 {
				widest := probes.see(c)
				if out() {
					looked++
					assert.False(t, halfWay(b, s, p, down, within3(r, c).Turn()), "%v %v", s, c)
					break
				}
				if c = cutAcross(c, widest)[r.IntN(2)]; c.Half[0] < 0.05 && halfWay(b, s, p, down, c.Turn()) {
					free++
					break
				}
			}
		}
		assert.Greater(t, looked, 12, "%v", turn)
		assert.Positive(t, free, "%v", turn) // or nothing would have been found
	}
}

// A turn that is ruled out although no cell around it is ends a cover, which would else cut
// cells about it until nothing is left.
func TestACoverEndsAtATurnThatIsOutAlone(t *testing.T) {
	_, b := confinedCase(rand.New(rand.NewPCG(25, 4)), Half)
	probes, budget := newProbes(b, b.Middle()[0].At, false, stairStep, alongStair), &passage.Budget{Cells: 1e6}
	still := func() bool { return probes.seen[0][0].Low == probes.seen[0][0].High }
	proven, ranOut := probes.all(still, budget)
	assert.False(t, proven)
	assert.False(t, ranOut)
	assert.Less(t, 1000000-budget.Cells, 3*cellsATurn*25, "three sides, each cut 21 times at most")
}

// anyCover is that of a stair's landing, or of its flight where that applies, P so far
// down it.
func (s Stair) anyCover(r *rand.Rand, b *passage.Body, probes *probes) (out func() bool, down float64) {
	down = flightPlaces[r.IntN(len(flightPlaces))]
	flight := (&flightCover{probes, s, -down * s.run()}).out
	switch along := alongFlight(b, s); {
	case s.Turn == Straight, along && r.IntN(2) == 0:
		return flight, down
	case s.Turn == Quarter:
		far := math.Hypot(s.Width, s.Length)
		return (&quarterCover{probes, s, space.Point{X: -s.Width / far, Y: s.Length / far}}).out, -1
	default:
		return (&halfCover{probes, s, s.Across/2 - s.Width}).out, -1
	}
}

// within3 is a cell of one random turn of a cell.
func within3(r *rand.Rand, c turns.Cube) turns.Cube {
	for i, h := range c.Half {
		c.At[i] += h * (2*r.Float64() - 1)
	}
	return c
}

// placesFrom are places of the body at a turn, from a place of it: so many along its length.
func placesFrom(b *passage.Body, p space.Point, t space.Turn, along int) (out []space.Vec) {
	for _, q := range b.Chain(0.05) {
		for i := range along {
			v := space.Vec{X: b.Half() * (2*float64(i)/float64(along-1) - 1), Y: q.X - p.X, Z: q.Y - p.Y}
			out = append(out, space.Vec{X: v.Dot(t[0]), Y: v.Dot(t[1]), Z: v.Dot(t[2])})
		}
	}
	return out
}

// halfWay reports whether the body may be at a turn with a place of it half way, or so far
// down the flight if that is not below 0.
func halfWay(b *passage.Body, s Stair, p space.Point, down float64, t space.Turn) bool {
	at := placesFrom(b, p, t, 21)
	for part := 0.01; part < 1; part += 0.02 {
		place := space.Vec{X: s.Across / 2, Y: part * s.Length}
		switch {
		case down >= 0:
			place = space.Vec{X: part * s.Width, Y: -down * s.run()}
		case s.Turn == Quarter:
			place = space.Vec{X: (1 - part) * s.Width, Y: part * s.Length}
		}
		least := s.slope() * min(0, place.Y)
		for place.Z = least - 1; place.Z < least+s.Headroom+1; place.Z += 0.02 {
			if !slices.ContainsFunc(at, func(v space.Vec) bool {
				v = v.Add(place)
				return s.short(v.X, v.Y, v.Z, b.Wrap())
			}) {
				return true
			}
		}
	}
	return false
}

// A flight that goes on a step late has its first nosing a going beyond the landing's
// edge, and each riser a nosing behind it: under that a place may be as low as the tread
// before. The line that stands for the treads is over none of them.
func TestTheFlightOnIsNeverTooHigh(t *testing.T) {
	s := Stair{Turn: Half, Width: 1.1, Headroom: 2.2, Rise: 0.17, Going: 0.28, Across: 2.4, Length: 1.2, Risers: 14}
	for y := -1.0; y < 6; y += 0.001 {
		tread := s.Rise * min(float64(s.Risers), max(0, math.Floor((y-nosing)/s.Going)))
		assert.LessOrEqual(t, s.treadOn(y), tread+1e-12, "%v", y)
	}
}

// A table worked from the closed form, which is derived.
func TestHeadroomAcrossTheSlope(t *testing.T) {
	for _, r := range [][4]float64{{196, 254, 2032, 1608.7}, {178, 279, 2032, 1713.1}, {180, 280, 2032, 1709.3}} {
		assert.InDelta(t, r[3], AcrossSlope(r[2], r[0], r[1]), 0.06)
	}
}
