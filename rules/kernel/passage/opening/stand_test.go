package opening

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// bar has corners all along its long sides, as a panel's outline does.
func bar(wide, high, long float64) *passage.Body {
	var near, far []space.Point
	for i := range 97 {
		x := wide * float64(i) / 96
		near = append(near, space.Point{X: x})
		far = append([]space.Point{{X: x, Y: high}}, far...)
	}
	return passage.NewBody(append(near, far...), long, 0.02)
}

// A bar of 2400 by 200 mm, 1000 mm long, is √(1000² + 200²) = 1019.8 mm high on the way
// down from its edge, when it leans by atan(200/1000). So much it leans in an opening that
// is 1000·sin + 200·cos = 2·1000·200/1019.8 = 392.2 mm wide, and by less in a narrower
// one. By hand.
func TestABarStandsInARoomThatIsLow(t *testing.T) {
	b := bar(2.4, 0.2, 1)
	assert.InDelta(t, 1.0198, Standing(b), 1e-4)
	for _, c := range []struct {
		name              string
		width, high, room float64
		proven            bool
	}{
		{"only on edge, the room lower", 0.36, 1.005, 1.005, true},
		{"only on edge, the room as high", 0.36, 1.005, 1.02, false},
		{"leaning far enough", 0.41, 1.03, 1.005, false},
		{"flat", 1.1, 1.005, 1.005, false},
	} {
		proven, ranOut := StandsUpright(b, Door{Width: c.width, Height: c.high, Wall: 0.25, Floor: true}, c.room, &passage.Budget{Cells: 1e6})
		assert.Equal(t, c.proven, proven, c.name)
		assert.False(t, ranOut, c.name)
	}
}

// What is followed through an opening with its length level enough is never proven to
// come in only on edge.
func TestWhatComesInFlatIsNotHeldOnEdge(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 31))
	draw := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	flat, edge := 0, 0
	for range 40 {
		b := arch(draw(0.5, 1.5), draw(0.5, 1.5), draw(0.05, 0.12), draw(0.5, 1.8))
		d := Door{Width: draw(0.2, 1.5), Height: draw(0.6, 2.2), Wall: draw(0.1, 0.3), Floor: true}
		proven, _ := StandsUpright(b, d, Standing(b)-draw(0.001, 0.3), &passage.Budget{Cells: 60000})
		way := Through(b.Wrapped(0), d, nil)
		for _, m := range append(way.Others, way.Motion) {
			if m.Margin < 0 || len(m.Poses()) == 0 {
				continue
			}
			most := 0.0
			for _, q := range m.Poses() {
				most = max(most, math.Abs(q.Turn[2].X))
			}
			if most <= standingRise(b) {
				flat++
				assert.False(t, proven, "%v through %v", Standing(b), d)
			}
		}
		if proven {
			edge++
		}
	}
	assert.Greater(t, flat, 8)
	assert.Greater(t, edge, 4)
}

// arch is a circle's part of a radius and a half angle.
func arch(radius, half, thick, long float64) *passage.Body {
	var in, out []space.Point
	for i := range 97 {
		s, c := math.Sincos(half * (float64(i)/48 - 1))
		in = append(in, space.Point{X: radius * s, Y: radius * c})
		out = append([]space.Point{{X: (radius + thick) * s, Y: (radius + thick) * c}}, out...)
	}
	return passage.NewBody(append(in, out...), long, 0.02)
}

// No place that the cover calls taken is free by the body's points, which are asked
// one by one.
func TestPlacesThatAreTakenAreNotFree(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 32))
	draw := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	taken, free := 0, 0
	for i := range 40 {
		b := arch(draw(0.5, 1.5), draw(0.5, 1.5), draw(0.05, 0.12), draw(0.5, 1.8)).Wrapped(0)
		d := Door{Width: draw(0.2, 1), Height: draw(1, 2.2), Wall: draw(0.1, 0.3)}
		c := &standCover{slabCover: newSlabCover(b, d, knownOf(b).places()[i%3], standingRise(b)), high: Standing(b) - draw(0.01, 0.3)}
		for range 500 {
			cell := standCell{roll: [2]float64{draw(-3, 3), draw(0, 0.015)}, yaw: [2]float64{draw(-3, 3), draw(0, 0.015)}, plane: [2]float64{draw(-2, 0), draw(0, 0.015)}}
			out := c.tooLarge(c.turn(cell), cell)
			within := func(m [2]float64) float64 { return m[0] + m[1]*draw(-1, 1) }
			at := standCell{roll: [2]float64{within(cell.roll)}, yaw: [2]float64{within(cell.yaw)}}
			turn := c.turn(at)
			assert.InDelta(t, standingRise(b), turn[2].X, 1e-12)
			if out {
				taken++
				assert.False(t, freePlace(c, turn, within(cell.plane), -betweenPoints), "%+v", cell)
			} else if freePlace(c, turn, cell.plane[0], 0) {
				free++
			}
		}
	}
	assert.Greater(t, taken, 50)
	assert.Greater(t, free, 50)
}

// betweenPoints is what may lie between two of the points, in m.
const betweenPoints = 0.04

// freePlace asks the surface's points one by one, with P at the world's origin and
// the wall's middle at a plane. It has this much more room than there is.
func freePlace(c *standCover, turn space.Turn, plane, more float64) bool {
	wall, room := nowhere, nowhere
	for _, q := range c.b.Section() {
		for x := -c.b.Half(); x <= c.b.Half(); x += c.b.Half() / 25 {
			v := space.Vec{X: x, Y: q.X - c.at.X, Z: q.Y - c.at.Y}
			w := space.Vec{X: v.Dot(turn[0]) - plane, Y: v.Dot(turn[1]), Z: v.Dot(turn[2])}
			switch {
			case w.X > c.d.Wall/2:
				room.take(w)
			case w.X >= -c.d.Wall/2:
				wall.take(w)
			}
		}
	}
	return wall.y[1]-wall.y[0] <= c.d.Width+more && wall.z[1]-wall.z[0] <= c.d.Height+more && room.z[1]-room.z[0] <= c.high+more
}

// extents is how far something reaches along Y and along Z; empty if its low is
// above its high.
type extents struct{ y, z [2]float64 }

var nowhere = extents{[2]float64{math.Inf(1), math.Inf(-1)}, [2]float64{math.Inf(1), math.Inf(-1)}}

func (s *extents) take(v space.Vec) {
	s.y = [2]float64{min(s.y[0], v.Y), max(s.y[1], v.Y)}
	s.z = [2]float64{min(s.z[0], v.Z), max(s.z[1], v.Z)}
}

// The bar of 200mm, with √3 of its wrap of 20mm, needs 234.6mm. What an opening lacks of that
// by round-off alone is no proof, and is not cut up to find one.
func TestRoundOffProvesNothing(t *testing.T) {
	b := bar(2.4, 0.2, 1)
	needs := 0.2 + 0.02*math.Sqrt(3)
	for _, c := range []struct {
		lacks  float64
		proven bool
	}{{0.01, true}, {1e-4, true}, {1e-9, false}, {-1e-3, false}} {
		budget := &passage.Budget{Cells: 1e6}
		proven, ranOut := tooWide(b, Door{Width: needs - c.lacks, Height: 4, Wall: 0.5}, budget)
		assert.Equal(t, c.proven, proven, "%v", c.lacks)
		assert.False(t, ranOut, "%v", c.lacks)
		assert.Greater(t, budget.Cells, 900000, "%v", c.lacks)
	}
}
