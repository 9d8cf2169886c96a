package stair

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
	"dryfit/rules/kernel/passage/space"
)

// The hulls hold every place of the section, and reach past a circle's arc by no more
// than the hollow of one of them: its sagitta is 3/2 of what it has on average.
func TestPiecesHoldTheSection(t *testing.T) {
	const radius, thick = 1.5, 0.08
	b := passage.NewBody(outline.Arc(radius, thick, math.Pi/2, 40), 0.8, 0.02)
	pieces := piecesOf(b)
	assert.Greater(t, len(pieces), 4)
	r := rand.New(rand.NewPCG(25, 4))
	for range 500 {
		i := r.IntN(len(b.Section()))
		p, q, f := b.Section()[i], b.Section()[(i+1)%len(b.Section())], r.Float64()
		at := space.Point{X: p.X + f*(q.X-p.X), Y: p.Y + f*(q.Y-p.Y)}
		assert.True(t, anyHolds(pieces, at), "%v", at)
	}
	inside := 0.0
	for _, p := range pieces {
		hull := p.section()
		for i, q := range hull {
			n := hull[(i+1)%len(hull)]
			mid := space.Point{X: (q.X + n.X) / 2, Y: (q.Y + n.Y) / 2}
			inside = max(inside, fromOutline(b.Section(), mid))
		}
	}
	assert.Less(t, inside, thick/2+1.5*hollow+1e-6)
}

// section is a piece's hull.
func (p piece) section() (out []space.Point) {
	for i := 0; i < len(p.corners); i += 2 {
		out = append(out, space.Point{X: p.corners[i].Y, Y: p.corners[i].Z})
	}
	return out
}

// anyHolds reports whether a hull, anticlockwise, has a place.
func anyHolds(pieces []piece, at space.Point) bool {
	for _, p := range pieces {
		hull, holds := p.section(), true
		for i, q := range hull {
			if space.Cross(hull[(i+1)%len(hull)].Minus(q), at.Minus(q)) < -1e-9 {
				holds = false
			}
		}
		if holds {
			return true
		}
	}
	return false
}

// fromOutline is how far a place is from a closed outline.
func fromOutline(section []space.Point, at space.Point) float64 {
	out := math.Inf(1)
	for i, p := range section {
		out = min(out, math.Sqrt(space.NearestSquare(p.Minus(at), section[(i+1)%len(section)].Minus(at))))
	}
	return out
}

// A bar of 1 m, 60 mm square in a wrap of 20 mm, lies level across stairs of 1 in 2. What
// is left about it is worked out by hand: in the middle of the landing at least the 300 mm
// that are measured; 50 mm over the floor nothing. With its middle 0.1 m over the landing
// and 0.1 m before its edge, its lower far arris is 70 mm over the edge and 70 mm before it,
// (70 + 70/2)·2/√5 = 93.9 mm square to the line of the nosings. Under the soffit over the
// flight, 100 mm below it, the upper near arris is (100 - 30 - 30/2)·2/√5 = 49.2 mm off.
func TestRoomAboutABar(t *testing.T) {
	s := Stair{Turn: Quarter, Width: 1.2, Headroom: 2.4, Rise: 0.15, Going: 0.3, Across: 3, Length: 1.2, Risers: 12}
	g := newTrees(rod(1), s, nil)
	along := space.Turn{{Y: 1}, {X: -1}, {Z: 1}} // the bar along X
	for _, c := range []struct {
		at   space.Vec
		want float64
	}{
		{space.Vec{X: 1.5, Y: 0.6, Z: 1.2}, roomMost},
		{space.Vec{X: 1.5, Y: 0.6, Z: 0.05}, 0},
		{space.Vec{X: 0.6, Y: -0.1, Z: 0.1}, 0.0739},
		{space.Vec{X: 0.56, Y: 0.6, Z: 1.2}, 0.04},
		{space.Vec{X: 0.6, Y: 1.2 - 0.06, Z: 1.2}, 0.01},
		{space.Vec{X: 1.5, Y: 0.06, Z: 1.2}, 0.01},       // beside the block inside the corner
		{space.Vec{X: 1.5, Y: 0.6, Z: 2.4 - 0.08}, 0.03}, // under the soffit
		{space.Vec{X: 0.6, Y: -2, Z: -2*0.5 + 2.4 - 0.1}, 0.0292},
		{space.Vec{X: 3.6, Y: 0.6, Z: 0.15 + 0.05*1 + 0.09}, -1}, // its end within the steps that go on
	} {
		got := g.room(space.Pose{Turn: along, At: c.at}, none)
		if c.want < 0 {
			assert.Negative(t, got, "%v", c.at)
			continue
		}
		assert.InDelta(t, c.want, got, treesCoarse+1e-3, "%v", c.at)
		assert.LessOrEqual(t, got, c.want+1e-9)
	}
}

// The same bar across a straight stair, 1.2 m wide and 1 m from the left wall of a landing
// 3 m wide, by hand: its end is 0.2 m off that wall less its wrap, 0.1 m off the right one;
// its side is 60 - 30 - 20 mm beside the block left of the flight; its end is 0.56 - 0.5 m off
// the flight's wall.
func TestRoomOnAPlacedLanding(t *testing.T) {
	s := Stair{Turn: Straight, Width: 1.2, Headroom: 2.4, Rise: 0.15, Going: 0.3, Across: 3, Left: 1, Placed: true, Risers: 12}
	g := newTrees(rod(1), s, nil)
	along := space.Turn{{Y: 1}, {X: -1}, {Z: 1}} // the bar along X
	for at, want := range map[space.Vec]float64{
		{X: -0.3, Y: 0.6, Z: 1.2}:   0.18,
		{X: 1.4, Y: 0.6, Z: 1.2}:    0.08,
		{X: -0.3, Y: 0.06, Z: 1.2}:  0.01,
		{X: 0.56, Y: -0.5, Z: 0.95}: 0.04,
	} {
		assert.InDelta(t, want, g.room(space.Pose{Turn: along, At: at}, none), treesCoarse+1e-3, "%v", at)
	}
	s.Placed = false
	assert.Negative(t, newTrees(rod(1), s, nil).room(space.Pose{Turn: along, At: space.Vec{X: -0.3, Y: 0.6, Z: 1.2}}, none))
}

// No place of the body is nearer to walls, floors and soffits than the room that is known.
func TestRoomIsNoMoreThanThereIs(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 5))
	looked := 0
	for range 3000 {
		s := Stair{Turn: Turn(1 + r.IntN(3)), Width: 1 + r.Float64(), Headroom: 2 + r.Float64(), Rise: 0.17, Going: 0.28, Risers: 8}
		s.Across, s.Length = 2*s.Width+r.Float64(), s.Width+r.Float64()
		if s.Placed = s.Turn == Straight && r.IntN(2) == 0; s.Placed {
			s.Left = (s.Across - s.Width) * r.Float64()
		}
		b := passage.NewBody(outline.Arc(0.3+r.Float64(), 0.06, 0.5+r.Float64(), 40), 0.3+r.Float64(), 0.02)
		g := growing{newTrees(b, s, nil), r}
		n := g.anywhere()
		room := g.room(n.Pose, 0)
		if room < 0 {
			continue
		}
		looked++
		for _, q := range b.Chain(0.02) {
			for i := range 11 {
				v := n.Place(space.Vec{X: b.Half() * (float64(i)/5 - 1), Y: q.X, Z: q.Y})
				assert.False(t, s.short(v.X, v.Y, v.Z, b.Wrap()+room-1e-9), "%v %v", s, n.Pose)
			}
		}
	}
	assert.Greater(t, looked, 100)
}

// A bar of 1.6 m has a way up that trees find, from beyond the foot to the floor above. One
// of 9 m, which is longer than the landing's box and both halves of the bar can be around
// its corner, has none.
func TestTreesGrowAroundALanding(t *testing.T) {
	s := Stair{Turn: Quarter, Width: 1.2, Headroom: 2.4, Rise: 0.15, Going: 0.3, Across: 1.8, Length: 1.2, Risers: 10}
	m, found := ClimbFreely(rod(1.6), s, &passage.Budget{Looks: 100000})
	assert.True(t, found)
	assert.True(t, m.Climbs)
	assert.GreaterOrEqual(t, m.Margin, 0.0)
	poses := m.Poses()
	g := newTrees(rod(1.6), s, nil)
	assert.True(t, g.reach(poses[0]).foot)
	assert.True(t, g.reach(poses[len(poses)-1]).top)
	_, found = ClimbFreely(rod(9), s, &passage.Budget{Looks: 20000})
	assert.False(t, found)
}

// Round-off, as between a spec in millimetres and one in inches, does not choose between
// trees: the looks that are left and the margin are the same.
func TestTreesDoNotHangOnRoundOff(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 3))
	const off = 1 + 3e-14
	climbed := 0
	for range 12 {
		s, b := confinedCase(r, Quarter)
		left := &passage.Budget{Looks: 30000}
		m, found := ClimbFreely(b, s, left)
		var section []space.Point
		for _, q := range b.Section() {
			section = append(section, space.Point{X: q.X * off, Y: q.Y / off})
		}
		s.Width, s.Headroom, s.Going, s.Across = s.Width*off, s.Headroom/off, s.Going*off, s.Across/off
		again := &passage.Budget{Looks: 30000}
		n, also := ClimbFreely(passage.NewBody(section, 2*b.Half()*off, b.Wrap()/off), s, again)
		assert.Equal(t, found, also)
		assert.Equal(t, left.Looks, again.Looks)
		assert.InDelta(t, m.Margin, n.Margin, 0)
		if found {
			climbed++
		}
	}
	assert.Greater(t, climbed, 3)
}

// A square plate of 2.7 m lies across a flight with a chord of 2.7 m at the least. The
// flight is 0.9 m wide and, square to its slope of 1 in 2, √(4/5)·(2.2 m of headroom and a
// rise of 0.15 m) = 2.10 m high: its diagonal is 2.29 m.
func TestAPlateIsRuledOutInTheFlight(t *testing.T) {
	plate := passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: 2.7, Y: 0}, {X: 2.7, Y: 0.06}, {X: 0, Y: 0.06}}, 2.7, 0.02)
	for _, turn := range []Turn{Straight, Quarter, Half} {
		s := Stair{Turn: turn, Width: 0.9, Headroom: 2.2, Rise: 0.15, Going: 0.3, Across: 4, Length: 4, Risers: 16}
		proven, _ := coverFlight(plate, s, &passage.Budget{Looks: 100000})
		assert.True(t, proven, "%v", turn)
		s.Width, s.Across = 3, 7
		proven, _ = coverFlight(plate, s, &passage.Budget{Looks: 100000})
		assert.False(t, proven, "%v", turn)
	}
}
