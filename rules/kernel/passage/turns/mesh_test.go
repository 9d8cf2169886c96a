package turns

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// gluing is a mesh of so many first cells, in which turns are alike under some maps.
type gluing struct {
	fronts int
	glued  [4]Alike
}

// gluings are those that corners, cars and stairs use.
var gluings = map[string]gluing{
	"all turns":                {4, [4]Alike{Same, Same, Same, Same}},
	"a half turn about z":      {2, [4]Alike{Same, Same, HalfZ, HalfZ}},
	"mirrored both ways":       {2, [4]Alike{Same, Same, MirrorY, MirrorY}},
	"mirrored and symmetrical": {1, [4]Alike{Same, MirrorX, MirrorY, HalfZ}},
}

// randomMesh is one whose leaves are cut at random; a share of the new cells is blocked.
func randomMesh(r *rand.Rand, g gluing, cuts int, blocked float64) *Mesh {
	m := &Mesh{Glued: g.glued}
	m.Measure = func(int, Cube) bool { return r.Float64() < blocked }
	m.Begin(g.fronts, 1, &passage.Budget{})
	for range cuts {
		i := r.IntN(len(m.Cells))
		if c := &m.Cells[i]; c.Kids == 0 && !c.Blocked {
			m.Cut(i, 1+r.IntN(AllSides), &passage.Budget{})
		}
	}
	return m
}

// inFront is a turn, or one that is alike, whose greatest part is that of a first cell, and
// where it is in that cell.
func (g gluing) inFront(q space.Quaternion) (front int, at [3]float64) {
	for i := range q {
		if math.Abs(q[i]) > math.Abs(q[front]) {
			front = i
		}
	}
	m := g.glued[front]
	q, front = m.Of(q), m.to(front)
	for i, p := range parts[front] {
		at[i] = q[p] / q[front]
	}
	return front, at
}

// leaves are those that hold a turn.
func (g gluing) leaves(m *Mesh, q space.Quaternion) (out []int) {
	front, at := g.inFront(q)
	for i := range m.Cells {
		c := &m.Cells[i]
		in := c.Front == front && c.Kids == 0
		for k, h := range c.Half {
			in = in && math.Abs(at[k]-c.At[k]) <= h
		}
		if in {
			out = append(out, i)
		}
	}
	return out
}

// Each turn is in one leaf, up to those that are alike, and no further from its middle than
// its radius.
func TestEachTurnIsInOneLeaf(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 1))
	for name, g := range gluings {
		m := randomMesh(r, g, 200, 0)
		for range 500 {
			q := space.RandomQuaternion(r)
			leaves := g.leaves(m, q)
			require.Len(t, leaves, 1, name)
			c := m.Cells[leaves[0]].Cube
			front, at := g.inFront(q)
			require.Equal(t, c.Front, front)
			away := spread(front, at).Unit().Apart(c.Spread().Unit())
			radius := c.Radius()
			assert.LessOrEqual(t, away, math.Atan2(radius.Sin, radius.Cos)+1e-9, name)
		}
	}
}

// Two turns that are next to each other are in one leaf, or in two that touch: no way through
// turns leaves a mesh's graph. The step is so small that it crosses one face at most.
func TestLeavesOfTurnsThatTouchAreNear(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 2))
	const step = 1e-7
	for name, g := range gluings {
		m := randomMesh(r, g, 400, 0)
		crossed := 0
		for range 60 {
			// From one turn to another the leaves change; each change is found by halving.
			a, b := space.RandomQuaternion(r), space.RandomQuaternion(r)
			last := g.leaves(m, a)[0]
			for part := 0.0; part < 1; {
				low, high := part, 1.0
				if g.leaves(m, a.Between(b, min(1, part+0.02)))[0] == last {
					part += 0.02
					continue
				}
				high = min(1, part+0.02)
				for high-low > step {
					if mid := (low + high) / 2; g.leaves(m, a.Between(b, mid))[0] == last {
						low = mid
					} else {
						high = mid
					}
				}
				next := g.leaves(m, a.Between(b, high))[0]
				assert.Contains(t, m.Cells[last].Near, next, name)
				crossed++
				last, part = next, high
			}
		}
		assert.Greater(t, crossed, 200, name)
	}
}

// What touches is near both ways, and nothing blocked or cut is near.
func TestNearIsMutual(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 3))
	for name, g := range gluings {
		m := randomMesh(r, g, 400, 0.2)
		for i := range m.Cells {
			c := &m.Cells[i]
			if c.Blocked || c.Kids != 0 {
				assert.Empty(t, c.Near, name)
			}
			for _, j := range c.Near {
				assert.True(t, slices.Contains(m.Cells[j].Near, i), name)
				assert.False(t, m.Cells[j].Blocked || m.Cells[j].Kids != 0, name)
			}
		}
	}
}

// Over a cell each coordinate of a place is within its slope at the shares of the turn.
func TestSlopesHoldTurnedPlaces(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 4))
	for range 300 {
		c := Cube{r.IntN(4), space.Cell{}}
		size := math.Pow(2, -1-6*r.Float64())
		for i := range c.Half {
			c.Half[i] = size * (0.2 + 0.8*r.Float64())
			c.At[i] = (1 - c.Half[i]) * (2*r.Float64() - 1)
		}
		swings, turn := c.Swings(), c.Turn()
		v := space.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}
		for range 20 {
			var s Shares
			at := c.At
			for i := range at {
				s[i] = 2*r.Float64() - 1
				at[i] += s[i] * c.Half[i]
			}
			turned := spread(c.Front, at).Unit().Turn()
			for axis := range turn {
				l := swings.Slope(axis, v, v.Dot(turn[axis]), v.Length())
				b := l.Bounds()
				assert.GreaterOrEqual(t, v.Dot(turned[axis]), b.Low-1e-12)
				assert.LessOrEqual(t, v.Dot(turned[axis]), b.High+1e-12)
			}
		}
	}
}

// Where two places are known exactly, the crossing is that of the straight line between
// them: the intercept theorem.
func TestTheCrossingOfAKnownLineIsExact(t *testing.T) {
	r := rand.New(rand.NewPCG(28, 5))
	for range 500 {
		var a, b [3]Slope
		var x, y [3]float64
		for k := range a {
			x[k], y[k] = r.NormFloat64(), r.NormFloat64()
			a[k], b[k] = Slope{Low: x[k], High: x[k]}, Slope{Low: y[k], High: y[k]}
		}
		axis := r.IntN(3)
		f := r.Float64()
		at, ok := Crossing(&a, &b, axis, x[axis]+f*(y[axis]-x[axis]))
		require.True(t, ok)
		for k := range at {
			if k != axis {
				assert.InDelta(t, x[k]+f*(y[k]-x[k]), at[k].Low, 1e-9)
				assert.InDelta(t, x[k]+f*(y[k]-x[k]), at[k].High, 1e-9)
			}
		}
		b[axis] = Slope{Low: x[axis] - 0.1, High: x[axis] + 0.1}
		_, ok = Crossing(&a, &b, axis, x[axis])
		assert.False(t, ok, "one may be as far along as the other")
	}
}
