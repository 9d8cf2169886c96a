package passage

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// rod is a straight piece of a length, 60 mm square, in a wrap of 20 mm.
func rod(long float64) *Body {
	return NewBody([]Point{{X: 0, Y: 0}, {X: long, Y: 0}, {X: long, Y: 0.06}, {X: 0, Y: 0.06}}, 0.06, 0.02)
}

// Half of a straight bar lies on from its middle. When that is in the wall's plane this
// half is over the landing, in a box of half of its width, its length and the headroom:
// its diagonal, √(1.2² + 1.2² + 2.2²) = 2.778 m, is the most that it may be long, and
// 5.556 m the whole bar. A bar of 1.1 m turns about its middle on the landing.
func TestABarTurnsByAHalf(t *testing.T) {
	s := Stair{Width: 1.1, Headroom: 2.2, Rise: 0.17, Going: 0.28, Across: 2.4, Length: 1.2}
	for long, want := range map[float64]Outcome{1.1: Undecided, 5.556: Cannot} {
		assert.Equal(t, want, rod(long).HalfTurn(s, &Budget{Cells: 20000}).Outcome, "%v", long)
	}
	s.Across = 2.1
	assert.Equal(t, Undecided, rod(5.556).HalfTurn(s, &Budget{Cells: 20000}).Outcome, "the landing is narrower than the flights")
	assert.True(t, rod(5.556).HalfTurn(s, nil).RanOut)
}

// short reports whether a place of a body on a stair that turns by a half is nearer than
// its wrap to the walls, the floor or the soffit.
func (s Stair) short(x, y, z, wrap float64) bool {
	slope, in := s.Rise/s.Going, x < s.Across/2
	floor, soffit := 0.0, s.Headroom
	if y < 0 {
		// The tread under the place; of the way on nothing but that it does not go down.
		if soffit -= slope * y; in {
			floor, soffit = s.Rise*math.Floor(y/s.Going+1e-9), s.Headroom+slope*y
		}
		if x > s.Width && x < s.Across-s.Width {
			return true
		}
	}
	return x < wrap || x > s.Across-wrap || y > s.Length-wrap || z < floor+wrap || z > soffit-wrap
}

// Of the cells of turns that the cover leaves out, next to some that it does not, no
// turn has a place half way around the wall: the body's corners and places between
// them are looked at in a net of places of its crown.
func TestNoTurnThatIsOutIsHalfWay(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 3))
	looked, free := 0, 0
	for range 150 {
		s := Stair{Width: 0.9 + 0.5*r.Float64(), Headroom: 2.1 + 0.4*r.Float64(), Rise: 0.17, Going: 0.28}
		s.Across, s.Length = 2*s.Width+0.4*r.Float64(), s.Width+0.5*r.Float64()
		b := NewBody(arc(0.8+r.Float64(), 0.08, 0.5+0.8*r.Float64()), 0.5+0.6*r.Float64(), 0.02)
		p := b.middle()[len(b.middle())/2].at
		p.X = 0
		h := b.halfCover(s, p)
		c := cube{r.IntN(2), cell{half: [3]float64{1, 1, 1}}}
		for range 40 {
			if widest := h.see(c); h.out() {
				looked++
				assert.False(t, b.halfWay(s, p, within3(r, c).turn()), "%v %v", s, c)
				break
			} else if c = c.cutAcross(widest)[r.IntN(2)]; c.half[0] < 0.05 && b.halfWay(s, p, c.turn()) {
				free++
				break
			}
		}
	}
	assert.Greater(t, looked, 50)
	assert.Positive(t, free) // or nothing would have been found
}

// within3 is a cell of one random turn of a cell.
func within3(r *rand.Rand, c cube) cube {
	for i, h := range c.half {
		c.at[i] += h * (2*r.Float64() - 1)
	}
	return c
}

// halfWay reports whether the body may be at a turn with a place of it in the plane
// between the flights.
func (b *Body) halfWay(s Stair, p Point, t Turn) bool {
	var at []Vec
	for _, q := range b.chain(0.05) {
		for i := range 21 {
			v := Vec{b.half * (float64(i)/10 - 1), q.X - p.X, q.Y - p.Y}
			at = append(at, Vec{s.Across/2 + v.dot(t[0]), v.dot(t[1]), v.dot(t[2])})
		}
	}
	for y := -0.5; y < s.Length; y += 0.02 {
		for z := -1.0; z < s.Headroom+1; z += 0.02 {
			free := true
			for _, v := range at {
				if free = !s.short(v.X, v.Y+y, v.Z+z, b.wrap); !free {
					break
				}
			}
			if free {
				return true
			}
		}
	}
	return false
}
