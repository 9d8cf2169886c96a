package space_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"

	"dryfit/rules/kernel/passage/space"
)

const rounding = 1e-12

// random is a turn, and the same of gonum's: the world's axes as the body sees them turn
// the body's places into the world.
func random(r *rand.Rand) (space.Quaternion, r3.Rotation) {
	q := space.RandomQuaternion(r)
	return q, r3.Rotation(quat.Number{Real: q[0], Imag: q[1], Jmag: q[2], Kmag: q[3]})
}

// Source of the reference: gonum.org/v1/gonum/spatial/r3, Rotation.
func TestATurnPlacesAsARotationDoes(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		q, ref := random(r)
		v := space.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}
		got, want := space.Pose{Turn: q.Turn()}.Place(v), ref.Rotate(r3.Vec(v))
		assert.InDelta(t, 0, got.Minus(space.Vec(want)).Length(), rounding)
		assert.InDelta(t, 1, math.Abs(q.Turn().Quaternion().Dot(q)), rounding)
	}
}

// The rotation from one turn to another by the closed form of its trace, 1 + 2·cos(angle).
// Part of the way between them is that part of the angle from the first.
func TestTurnsBetween(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		p, _ := random(r)
		q, _ := random(r)
		a, b := p.Turn(), q.Turn()
		trace := a[0].Dot(b[0]) + a[1].Dot(b[1]) + a[2].Dot(b[2])
		angle := a.Apart(b)
		assert.InDelta(t, (trace-1)/2, math.Cos(angle), rounding)
		part := r.Float64()
		at := a.Between(b, part)
		assert.InDelta(t, part*angle, a.Apart(at), 1e-7)
		assert.InDelta(t, (1-part)*angle, at.Apart(b), 1e-7)
	}
}

// Every turn of a cell is within its radius of the middle one, and a cell of turns near
// none has hardly more than what its corner turns by.
func TestTheRadiusOfACellHoldsItsTurns(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 3))
	for range 500 {
		var c space.Cell
		for i := range c.At {
			c.Half[i] = 0.3 * r.Float64()
			c.At[i] = (1 - c.Half[i]) * (2*r.Float64() - 1)
		}
		within := space.Quaternion{1}
		for i, at := range c.At {
			within[i+1] = at + c.Half[i]*(2*r.Float64()-1)
		}
		radius := math.Atan2(c.Radius().Sin, c.Radius().Cos)
		assert.LessOrEqual(t, c.Quaternion().Apart(within.Unit()), radius+1e-9)
	}
	small := space.Cell{Half: [3]float64{1e-3, 0, 0}}
	assert.InDelta(t, 2e-3, small.Radius().Sin, 1e-8)
	halves := space.Cell{Half: [3]float64{0.1, 0.4, 0.2}}.Halves()
	assert.Equal(t, [2]space.Cell{
		{At: [3]float64{1: -0.2}, Half: [3]float64{0.1, 0.2, 0.2}}, {At: [3]float64{1: 0.2}, Half: [3]float64{0.1, 0.2, 0.2}},
	}, halves)
}

// By hand: d of length 2 at 60° from e is 1 along it; e turned by up to 30° makes it
// 2·cos 90° = 0 at the least, and by up to 150° -2, where d points the other way.
func TestLeastOfATurnedDirection(t *testing.T) {
	sin, cos := math.Sincos(math.Pi / 6)
	assert.InDelta(t, 0, space.Angle{Sin: sin, Cos: cos}.Least(1, 4), rounding)
	sin, cos = math.Sincos(5 * math.Pi / 6)
	assert.InDelta(t, -2, space.Angle{Sin: sin, Cos: cos}.Least(1, 4), rounding)
}

// By hand: a square of 2m with places within it and on its edges.
func TestHullAndBox(t *testing.T) {
	hull := space.Hull([]space.Point{{X: 1, Y: 1}, {X: 0, Y: 0}, {X: 2, Y: 0}, {X: 1, Y: 0}, {X: 2, Y: 2}, {X: 0, Y: 2}, {X: 0.3, Y: 1.7}})
	assert.Equal(t, []space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 2}, {X: 0, Y: 2}}, hull)
	assert.Equal(t, []space.Point{{X: 0, Y: 0}, {X: 2, Y: 2}}, space.Hull([]space.Point{{X: 1, Y: 1}, {X: 2, Y: 2}, {X: 0, Y: 0}}))
	low, high := space.Box([]space.Point{{X: 1, Y: 3}, {X: -2, Y: 1}})
	assert.Equal(t, []space.Point{{X: -2, Y: 1}, {X: 1, Y: 3}}, []space.Point{low, high})
	// The line from (1, 1) to (3, -1) is √2 off the origin; an edge that ends before the
	// foot of that is as far off as its end.
	assert.InDelta(t, 2, space.NearestSquare(space.Point{X: 1, Y: 1}, space.Point{X: 3, Y: -1}), rounding)
	assert.InDelta(t, 5, space.NearestSquare(space.Point{X: 2, Y: 1}, space.Point{X: 2, Y: 3}), rounding)
}

// A square of 2 with a notch cut from its top to its middle, either way round: the notch is
// outside, as far as its nearest side.
func TestFromRegion(t *testing.T) {
	notched := []space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 2}, {X: 1.5, Y: 2}, {X: 1, Y: 1}, {X: 0.5, Y: 2}, {X: 0, Y: 2}}
	for range 2 {
		for at, want := range map[space.Point]float64{
			{X: 1, Y: 0.5}: 0, {X: 0.1, Y: 1.9}: 0, {X: 2, Y: 1}: 0, {X: 0, Y: 0}: 0,
			{X: 3, Y: 1}: 1, {X: 3, Y: 3}: math.Sqrt2, {X: 1, Y: -2}: 2, {X: 1, Y: 2}: 1 / math.Sqrt(5),
		} {
			assert.InDelta(t, want, space.FromRegion(notched, at), rounding, "%v", at)
		}
		slices.Reverse(notched)
	}
}

// By hand: the same square either way round, and an edge from (-2, 1) to (2, 3) that is cut
// at ±1.
func TestAreaAndClippedEdges(t *testing.T) {
	square := []space.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 2}, {X: 0, Y: 2}}
	assert.InDelta(t, 4, space.SignedArea(square), rounding)
	slices.Reverse(square)
	assert.InDelta(t, -4, space.SignedArea(square), rounding)
	for _, at := range [][4]float64{{-2, 1, 2, 3}, {2, 3, -2, 1}} {
		lo, hi, ok := space.Clip(at[0], at[1], at[2], at[3], 1)
		assert.True(t, ok)
		assert.InDelta(t, 1.5, lo, rounding)
		assert.InDelta(t, 2.5, hi, rounding)
	}
	_, _, ok := space.Clip(1.1, 0, 3, 0, 1)
	assert.False(t, ok)
}

// By hand: the length level and the chord upright; the length at 30°.
func TestTilt(t *testing.T) {
	length, chord := space.About(space.Vec{Y: 1}, 1).Tilt()
	assert.InDelta(t, 0, length, rounding)
	assert.InDelta(t, math.Pi/2, chord, 1e-7)
	length, _ = space.About(space.Vec{X: 0.5, Z: math.Sqrt(0.75)}, 1).Tilt()
	assert.InDelta(t, math.Pi/6, length, rounding)
}
