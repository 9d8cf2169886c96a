package car

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/outline"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

func anyArch(r *rand.Rand) *passage.Body {
	return passage.NewBody(outline.Arc(0.8+1.5*r.Float64(), 0.05+0.05*r.Float64(), 0.3+r.Float64(), 40), 0.5+r.Float64(), 0.015)
}

// anyInto is an arched panel and a car with a door that it may go into or not.
func anyInto(r *rand.Rand) (*passage.Body, Car) {
	b := anyArch(r)
	c := Car{Length: 1.2 + 2.5*r.Float64(), Width: 1.2 + r.Float64(), Height: 2.2}
	c.DoorWidth, c.DoorHeight = 0.8+0.4*r.Float64(), 2
	c.Left = (c.Width - c.DoorWidth) * r.Float64()
	return b, c
}

// Nothing through which a body is known to go is blocked: each station of motions
// into cars, in cells of several sizes about turns beside it.
func TestWaysInAreNotBlocked(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 7))
	seen := 0
	for range 60 {
		b, c := anyInto(r)
		d := Into(b, c, &passage.Budget{Cells: 300})
		if d.Outcome != passage.Passes {
			continue
		}
		proven, _ := enclosed(b, c, allDepths, &passage.Budget{Cells: 500})
		assert.False(t, proven, "%v", c)
		tree := newInTree(b, c)
		tree.swings = math.Inf(1) // so that the slopes are asked everywhere
		poses := d.Motion.Poses()
		for range 4 * len(poses) {
			i, f := 1+r.IntN(len(poses)-1), r.Float64()
			from, to := poses[i-1], poses[i]
			p := space.Pose{Turn: from.Turn.Between(to.Turn, f), At: from.At.Add(to.At.Minus(from.At).Times(f))}
			q := p.Turn.Quaternion()
			for i := range q {
				q[i] += 0.02 * (2*r.Float64() - 1)
			}
			tree.see(cellAbout(r, p.Turn.Quaternion(), q.Unit()))
			ahead := 0.05 * r.Float64()
			most, _ := tree.roomInCell(p.At.X-ahead, p.At.X+ahead)
			assert.GreaterOrEqual(t, most, 0.0)
			seen++
		}
	}
	require.Greater(t, seen, 100)
}

// cellAbout is a cell of turns about one turn that holds another.
func cellAbout(r *rand.Rand, in, about space.Quaternion) turns.Cube {
	front := 0
	for i, part := range about {
		if math.Abs(part) > math.Abs(about[front]) {
			front = i
		}
	}
	c := turns.Cube{Front: front}
	i := 0
	for part := range about {
		if part == front {
			continue
		}
		c.At[i] = about[part] / about[front]
		c.Half[i] = math.Abs(c.At[i]-in[part]/in[front]) + 0.02*r.Float64()
		i++
	}
	return c
}

// Flat panels that fit in a car and can't be brought in through its door are proven
// so with the cells that a spec has.
func TestFitsInsideAndCannotGetIn(t *testing.T) {
	for _, at := range []struct {
		wide, thick, long, wrap float64
		car                     Car
	}{
		{2.624, 0.084, 1.483, 0.017, Car{Length: 1.4885, Width: 1.716, Height: 2.4607, DoorWidth: 0.964, DoorHeight: 2.01, Left: 0.0247}},
		{3.647, 0.048, 1.448, 0.027, Car{Length: 3.021, Width: 1.805, Height: 2.398, DoorWidth: 1.359, DoorHeight: 1.907, Left: 0.03}},
		{2.494, 0.069, 1.510, 0.023, Car{Length: 2.031, Width: 1.458, Height: 2.229, DoorWidth: 1.086, DoorHeight: 2.192, Left: 0.167}},
		{2.563156, 0.094817, 0.628326, 0.02357, Car{Length: 1.370335, Width: 1.774259, Height: 2.110712, DoorWidth: 1.365249, DoorHeight: 1.986285, Left: 0.16335}},
	} {
		b := passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: at.wide, Y: 0}, {X: at.wide, Y: at.thick}, {X: 0, Y: at.thick}}, at.long, at.wrap)
		d := Into(b, at.car, &passage.Budget{Cells: 20000})
		assert.Equal(t, passage.Cannot, d.Outcome, "%v", at.wide)
		assert.Equal(t, passage.BeyondCover, d.Bound, "%v", at.wide)
		assert.GreaterOrEqual(t, turns.Within(b, [3]float64{at.car.Length, at.car.Width, at.car.Height}, &passage.Budget{Cells: 10000}).Margin, 0.0)
	}
}

// What is left at a turn and a depth is never more than what a cell that holds them
// says: random cells of every size, with the door at random places of the body.
func TestCellsBoundWhatIsLeft(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 9))
	tight := 0
	for range 600 {
		b := anyArch(r)
		car := Car{Length: 6, Width: 1.2 + r.Float64(), Height: 2.2, DoorWidth: 0.8 + 0.4*r.Float64(), DoorHeight: 2, Left: 0.1}
		if r.IntN(2) == 0 {
			car.Length = 0.3 + r.Float64()
		}
		tree := newInTree(b, car)
		tree.swings = math.Inf(1)
		c := turns.Cube{Front: r.IntN(4)}
		for i := range c.At {
			c.Half[i] = math.Pow(2, -2-8*r.Float64())
			c.At[i] = (1 - c.Half[i]) * (2*r.Float64() - 1)
		}
		x, half := 2*r.Float64()-1, math.Pow(2, -2-8*r.Float64())
		tree.see(c)
		most, _ := tree.roomInCell(x-half, x+half)
		plain := tree.room(tree.cell, x-half, x+half)
		for range 20 {
			one := turns.Cube{Front: c.Front}
			for i, h := range c.Half {
				one.At[i] = c.At[i] + h*[3]float64{-1, 1, 2*r.Float64() - 1}[r.IntN(3)]
			}
			at := x + half*[3]float64{-1, 1, 2*r.Float64() - 1}[r.IntN(3)]
			e := tree.see(one)
			left := min(tree.room(tree.middle, at, at), car.Length-tree.b.Wrap()-at-e.front.Low)
			require.GreaterOrEqual(t, most+1e-9, left)
		}
		if most < plain-0.01 {
			tight++
		}
	}
	require.Greater(t, tight, 50)
}

// A flat panel that is turned within the tenth of a millimetre that it has inside is
// brought in with the cells that a spec has.
func TestAWayInThatLeavesNextToNothing(t *testing.T) {
	b := passage.NewBody([]space.Point{{X: 0, Y: 0}, {X: 2.546196, Y: 0}, {X: 2.546196, Y: 0.066192}, {X: 0, Y: 0.066192}}, 0.574309, 0.023724)
	c := Car{Length: 1.851476, Width: 2.032636, Height: 1.500937, DoorWidth: 1.885683, DoorHeight: 0.988511, Left: 0.059359}
	d := Into(b, c, &passage.Budget{Cells: 20000})
	assert.Equal(t, passage.Passes, d.Outcome)
	assert.True(t, d.Motion.Tilted)
}

// The bounds of two places together hold what either may be.
func TestJoinedBoundsHoldBoth(t *testing.T) {
	a, b := [2]turns.Bounds{{Low: -1, High: 2}, {Low: 3, High: 4}}, [2]turns.Bounds{{Low: -3, High: 1}, {Low: 5, High: 6}}
	assert.Equal(t, [2]turns.Bounds{{Low: -3, High: 2}, {Low: 3, High: 6}}, joined(a, b))
	assert.Equal(t, joined(a, b), joined(b, a))
}

// A motion in the mirror begins with the turn of its first pose, and one that nothing
// is known of has none.
func TestMirroredMotionsBeginAtTheirFirstPose(t *testing.T) {
	b := passage.NewBody(outline.Arc(1.2, 0.06, 0.6, 40), 0.8, 0.02)
	m := opening.Straight(b, 3, 3)[0]
	turn := m.Poses()[0].Turn
	m.Start = func() space.Turn { return turn }
	first, ok := mirrored(m, 2).First()
	require.True(t, ok)
	assert.Equal(t, mirrored(m, 2).Poses()[0].Turn, first)
	assert.Equal(t, turn, first.Mirrored())
	_, ok = mirrored(passage.Motion{}, 2).First()
	assert.False(t, ok)
}

// Steps cut in two cover what the step did: a step of half the depth at its beginning,
// and one behind it.
func TestHalvedStepsCoverTheirOwn(t *testing.T) {
	halves := halved([]step{{index: 3, most: 2}, {index: -5}})
	require.Len(t, halves, 4)
	for i, index := range []int32{6, 7, -10, -9} {
		assert.Equal(t, index, halves[i].index)
	}
	assert.InDelta(t, 2, halves[1].most, 0)
}
