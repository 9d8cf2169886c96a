package passage

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// arc is a piece of a ring of a radius, drawn to half an angle on both sides.
func arc(radius, thick, half float64) []Point {
	const steps = 40
	var out []Point
	for _, side := range [2]float64{1, -1} {
		r := radius + thick/2 - side*thick/2
		for i := range steps + 1 {
			s, c := math.Sincos(side * half * (2*float64(i)/steps - 1))
			out = append(out, Point{r * s, r * c})
		}
	}
	return out
}

// Nothing through which a body is known to go is blocked: each station of motions
// into cars, in cells of several sizes about turns beside it.
func TestWaysInAreNotBlocked(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 7))
	seen := 0
	for range 60 {
		b := NewBody(arc(0.8+1.5*r.Float64(), 0.05+0.05*r.Float64(), 0.3+r.Float64()), 0.5+r.Float64(), 0.015)
		c := Car{Length: 1.2 + 2.5*r.Float64(), Width: 1.2 + r.Float64(), Height: 2.2}
		c.DoorWidth, c.DoorHeight = 0.8+0.4*r.Float64(), 2
		c.Left = (c.Width - c.DoorWidth) * r.Float64()
		d := b.Into(c, &Budget{Cells: 300})
		if d.Outcome != Passes {
			continue
		}
		tree := newInTree(b, c)
		poses := d.Motion.Poses()
		for range 4 * len(poses) {
			i, f := 1+r.IntN(len(poses)-1), r.Float64()
			from, to := poses[i-1], poses[i]
			p := Pose{from.Turn.Between(to.Turn, f), from.At.add(to.At.minus(from.At).times(f))}
			q := p.Turn.quaternion()
			for i := range q {
				q[i] += 0.02 * (2*r.Float64() - 1)
			}
			near := q.unit()
			apart := near.apart(p.Turn.quaternion()) + 0.1*r.Float64()
			sin, cos := math.Sincos(apart)
			tree.see(near.turn(), angle{sin, cos})
			ahead := 0.05 * r.Float64()
			assert.False(t, tree.blocked(tree.cell, p.At.X-ahead, p.At.X+ahead))
			seen++
		}
	}
	require.Greater(t, seen, 100)
}

// A flat panel of 2624mm by 1483mm by 84mm fits in a car 1488mm deep, and can't
// be brought in through its door: with more cells than a spec has, that is proven.
func TestFitsInsideAndCannotGetIn(t *testing.T) {
	b := NewBody([]Point{{0, 0}, {2.624, 0}, {2.624, 0.084}, {0, 0.084}}, 1.483, 0.017)
	c := Car{Length: 1.4885, Width: 1.716, Height: 2.4607, DoorWidth: 0.964, DoorHeight: 2.01, Left: 0.0247}
	d := b.Into(c, &Budget{Cells: 60000})
	assert.Equal(t, Cannot, d.Outcome)
	assert.Equal(t, BeyondCover, d.Bound)
	assert.GreaterOrEqual(t, b.within([3]float64{c.Length, c.Width, c.Height}, &Budget{Cells: 10000}).margin, 0.0)
}
