package stair

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// board is a flat panel in a wrap of 20 mm.
func board(long, wide, thick float64) *passage.Body {
	return passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: long, Y: 0}, {X: long, Y: thick}, {X: 0, Y: thick}}, wide, 0.02)
}

// A rod of 5.556 m is ruled out at a half turn by its closed form (TestABarTurnsByAHalf),
// one of 1.1 m turns about its middle. A board of 2.9 m may be at each place of that stair
// at some turn, but its turns there do not lead to each other; one of 1.2 m passes. A board
// of 3.12 m does not go around a landing between corridors; where nothing is known past the
// ends of the flights, it is not ruled out with these looks.
func TestApart(t *testing.T) {
	s := Stair{Turn: Half, Width: 1.1, Headroom: 2.2, Rise: 0.17, Going: 0.28, Across: 2.4, Length: 1.2, Risers: 20}
	narrow := s
	narrow.Width, narrow.Across = 0.97, 1.95
	open := Stair{Turn: Quarter, Width: 0.907, Headroom: 2.496, Rise: 0.1814, Going: 0.2748, Across: 1.206, Length: 1.036, Risers: 17}
	corridors := open
	corridors.Corridors = true
	for name, c := range map[string]struct {
		body   *passage.Body
		stair  Stair
		climbs passage.Outcome
		apart  bool
	}{
		"a long rod":    {rod(5.556), s, passage.Cannot, true},
		"a short rod":   {rod(1.1), s, passage.Passes, false},
		"a long board":  {board(2.9, 0.95, 0.086), narrow, passage.Undecided, true},
		"a short board": {board(1.2, 0.5, 0.086), narrow, passage.Passes, false},
		"in corridors":  {board(3.12, 0.83, 0.083), corridors, passage.Undecided, true},
		"open ends":     {board(3.12, 0.83, 0.083), open, passage.Undecided, false},
	} {
		assert.Equal(t, c.climbs, Climb(c.body, c.stair, &passage.Budget{Cells: 20000, Looks: 120000}).Outcome, name)
		proven, _ := Apart(c.body, c.stair, &passage.Budget{Looks: 400000})
		assert.Equal(t, c.apart, proven, name)
	}
}

// What can't be proven at all is not, and nothing is without a budget or with less of it
// than a proof takes.
func TestApartIsNotAsked(t *testing.T) {
	s := Stair{Turn: Half, Width: 1.1, Headroom: 2.2, Rise: 0.17, Going: 0.28, Across: 2.4, Length: 1.2, Risers: 20}
	for _, looks := range []int{0, 1000} {
		left := &passage.Budget{Looks: looks}
		proven, ranOut := Apart(rod(5.556), s, left)
		assert.False(t, proven)
		assert.True(t, ranOut)
		assert.Zero(t, left.Looks)
	}
	_, ranOut := Apart(rod(5.556), s, nil)
	assert.True(t, ranOut)
	noSteps, less := s, s
	noSteps.Risers, less.Across = 0, 2.1 // the landing is narrower than the flights
	for _, s := range []Stair{noSteps, less} {
		proven, ranOut := Apart(rod(5.556), s, &passage.Budget{Looks: 400000})
		assert.False(t, proven)
		assert.False(t, ranOut)
	}
}

// The wrap that is counted about each probe, and about the straight way between two, is no
// more than the true body's wrap in its place, and more than that of the body with fewer
// corners about a corner that it keeps.
func TestWrapAboutProbes(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 15))
	more := 0
	for range 40 {
		_, b := confinedCase(r, Straight)
		c := newConfined(b, Stair{Turn: Straight, Width: 1.2, Headroom: 2.2, Rise: 0.17, Going: 0.28, Risers: 9})
		origin := b.Middle()[len(b.Middle())/2].At
		if c.even {
			origin.X = 0
		}
		section := func(i int32) space.Point {
			return space.Point{X: c.at[i].Y + origin.X, Y: c.at[i].Z + origin.Y}
		}
		c.eachEdge(func(i, k int32) {
			f := r.Float64()
			sin, cos := math.Sincos(2 * math.Pi * r.Float64())
			p, q, g := section(i), section(k), c.wrapAlong(i, k)
			at := space.Point{X: p.X + f*(q.X-p.X) + g*cos, Y: p.Y + f*(q.Y-p.Y) + g*sin}
			assert.LessOrEqual(t, space.FromRegion(b.Section(), at), b.Wrap()+1e-9)
			at = space.Point{X: p.X + c.wrap[i]*cos, Y: p.Y + c.wrap[i]*sin}
			assert.LessOrEqual(t, space.FromRegion(b.Section(), at), b.Wrap()+1e-9)
			if c.wrap[i] > c.b.Wrap()+1e-9 {
				more++
			}
		})
	}
	assert.Greater(t, more, 100)
}

// confinedCase is a random stair, what is past its ends known or not, with an arch or a
// board on it.
func confinedCase(r *rand.Rand, turn Turn) (Stair, *passage.Body) {
	s := Stair{Turn: turn, Width: 0.9 + 0.5*r.Float64(), Headroom: 2.1 + 0.4*r.Float64(), Rise: 0.17, Going: 0.28, Risers: 4 + r.IntN(12)}
	s.Across, s.Length = 2*s.Width+0.4*r.Float64(), s.Width+0.5*r.Float64()
	s.Corridors = r.IntN(2) == 0
	if s.Placed = turn == Straight && r.IntN(2) == 0; s.Placed {
		s.Left = (s.Across - s.Width) * r.Float64()
	}
	if r.IntN(3) == 0 {
		return s, board(2.5, 0.5+r.Float64(), 0.06)
	}
	return s, passage.NewBody(outline.Arc(0.8+r.Float64(), 0.08, 0.5+0.8*r.Float64(), 40), 0.5+0.6*r.Float64(), 0.02)
}

// Of the cells of turns and areas of the plan that are ruled out, next to some that are not,
// none has a turn and a place at which the body is free of the stair: its corners and places
// between them are looked at, P being in a net of heights.
func TestNoPlaceThatIsRuledOutHasRoom(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 12))
	for _, turn := range []Turn{Straight, Quarter, Half} {
		out, free := 0, 0
		for range 60 {
			s, b := confinedCase(r, turn)
			c, plan := newConfined(b, s), s.plan()
			cell := turns.Cube{Front: r.IntN(2), Cell: space.Cell{Half: [3]float64{1, 1, 1}}}
			area := plan.areas[r.IntN(len(plan.areas))].area
			for range 40 {
				if widest, _ := c.look(cell); c.most(area) < 0 {
					out++
					for range 4 {
						assert.False(t, stands(r, b, s, area, within3(r, cell).Turn()), "%v %v %v", s, cell, area)
					}
					break
				} else if cell = cutAcross(cell, sideOf(widest))[r.IntN(2)]; cell.Half[0] < 0.05 && stands(r, b, s, area, cell.Turn()) {
					free++
					break
				}
			}
		}
		assert.Greater(t, out, 20, "%v", turn)
		assert.Positive(t, free, "%v", turn) // or nothing would have been found
	}
}

// sideOf is the side that a bit stands for.
func sideOf(bit int) int { return map[int]int{1: 0, 2: 1, 4: 2}[bit] }

// stands reports whether the body is free of a stair at a turn with P at some place in an
// area, of those that are tried.
func stands(r *rand.Rand, b *passage.Body, s Stair, a area, t space.Turn) bool {
	p := b.Middle()[len(b.Middle())/2].At
	p.X = 0
	at := placesFrom(b, p, t, 11)
	between := func(b turns.Bounds) float64 { return b.Low + (b.High-b.Low)*r.Float64() }
	for range 12 {
		place := space.Vec{X: between(a.x), Y: between(a.y)}
		if s.Turn == Straight {
			place.X = s.Width * r.Float64()
		}
		low := -s.Rise * float64(s.Risers)
		for place.Z = low - 1; place.Z < s.Headroom-low; place.Z += 0.02 {
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

// The lines for a part of a stair are over none of its treads and under none of its soffits,
// whether the flight that goes on begins at the landing's edge or a step later.
func TestLinesKeepOffTheSteps(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 13))
	s := Stair{Turn: Half, Width: 1.1, Headroom: 2.2, Rise: 0.17, Going: 0.28, Across: 2.4, Length: 1.2, Risers: 14}
	deep, run := s.Rise*float64(s.Risers), s.run()
	of := func(lines ramps, y float64, high bool) float64 {
		out := none
		if high {
			out = math.Inf(1)
		}
		for _, l := range lines.all() {
			if high {
				out = min(out, l.of(y))
			} else {
				out = max(out, l.of(y))
			}
		}
		return out
	}
	for range 40000 {
		s.Corridors = r.IntN(2) == 0
		low := -run - 2 + (run+4)*r.Float64()
		b := turns.Bounds{Low: low, High: low + 3*r.Float64()*r.Float64()}
		y := b.Low + (b.High-b.Low)*r.Float64()
		tread := max(-deep, s.Rise*min(0, math.Floor((y-nosing)/s.Going)))
		require.LessOrEqual(t, of(s.floors(b), y, false), tread+1e-9, "%v %v", b, y)
		if s.Corridors || y >= -run {
			require.GreaterOrEqual(t, of(s.soffits(b), y, true), s.Headroom+s.slope()*max(-run, min(0, y))-1e-9, "%v %v", b, y)
		}
		on := turns.Bounds{Low: -b.High, High: -b.Low}
		d := -y
		late := s.Rise * min(float64(s.Risers), max(0, math.Floor((d-nosing)/s.Going)))
		require.LessOrEqual(t, of(s.floorsOn(on), d, false), late+1e-9, "%v %v", on, d)
		soffit := s.Headroom
		if d > 0 {
			soffit += s.Rise + s.slope()*min(d, run)
		}
		if s.Corridors || d <= run {
			require.GreaterOrEqual(t, of(s.soffitsOn(on), d, true), soffit-1e-9, "%v %v", on, d)
		}
	}
}

// Each place of a flight or landing is in one of a plan's least areas, each of these in one
// of the tops, and from the foot one gets to the end by areas that touch.
func TestAPlanIsWhole(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 14))
	for _, turn := range []Turn{Straight, Quarter, Half} {
		s, _ := confinedCase(r, turn)
		p := s.plan()
		require.LessOrEqual(t, p.count, 64*len(areaSet{}))
		var all areaSet
		for _, i := range p.tops {
			all.add(&p.areas[i].least)
		}
		for i := range p.count {
			require.True(t, all[i/64]>>(i%64)&1 == 1)
		}
		for range 200 {
			x, y := s.Width*r.Float64(), -s.run()*r.Float64()
			if turn == Straight {
				x = 0
			} else if r.IntN(2) == 0 {
				x, y = s.Across*r.Float64(), s.Length*r.Float64()
			}
			assert.True(t, slices.ContainsFunc(p.areas, func(a planArea) bool {
				return len(a.kids) == 0 && a.x.Low <= x && x <= a.x.High && a.y.Low <= y && y <= a.y.High
			}), "%v %v %v", turn, x, y)
		}
		var reached areaSet
		for _, a := range p.areas {
			if a.foot {
				reached.add(&a.around)
			}
		}
		for range p.count {
			for _, a := range p.areas {
				if a.least.meets(&reached) && len(a.kids) == 0 {
					reached.add(&a.around)
				}
			}
		}
		assert.Equal(t, all, reached)
		assert.True(t, slices.ContainsFunc(p.areas, func(a planArea) bool { return a.beyond }))
	}
}
