package frame

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hungArch is half a circle of 3 m radius on straps that only pull, ledgers that only
// push under both feet and a spring of its own at the crown that does both.
func hungArch(straps int) (m Model) {
	const elements, radius = 48, 3
	var points []Vector
	for i := range elements + 1 {
		a := math.Pi * float64(i) / elements
		points = append(points, Vector{-radius * math.Cos(a), radius * math.Sin(a)})
	}
	m = Chain(points, Section{EA: 30e6, EI: 20e3, GA: 1.5e6})
	m.Supports = []Support{{Node: elements / 2, Direction: AlongX}}
	for i := range straps {
		m.Springs = append(m.Springs, Spring{Node: 3 + i*(elements-6)/max(1, straps-1), Toward: Vector{Y: 1}, Stiffness: 36e6, Sense: TensionOnly})
	}
	for _, foot := range []int{0, elements} {
		m.Springs = append(m.Springs, Spring{Node: foot, Toward: Vector{X: 0.1, Y: -1}, Stiffness: 50e6, Sense: CompressionOnly})
	}
	m.Springs = append(m.Springs, Spring{Node: elements / 2, Toward: Vector{Y: 1}, Stiffness: 1e6, Sense: BothWays})
	return m
}

func TestSoftenedSpringsGiveWhatAFactorOfItsOwnDoes(t *testing.T) {
	m := hungArch(5)
	by, own := must(t, &m), must(t, &m)
	own.softened.columns = nil
	random := rand.New(rand.NewPCG(4, 27))
	slack := 0
	for range 300 {
		c := randomCase(&m, random)
		c.Loads = []NodalLoad{{Node: random.IntN(49), X: 200 * random.NormFloat64(), Y: -1000 * random.Float64()}}
		var a, b Result
		errA, errB := by.Solve(&c, &a), own.Solve(&c, &b)
		require.Equal(t, errB, errA)
		if errA != nil {
			continue
		}
		require.True(t, by.reduced)
		require.False(t, own.reduced)
		for i := range a.Springs {
			require.Equal(t, b.Springs[i].Slack, a.Springs[i].Slack)
			require.InDelta(t, b.Springs[i].Force, a.Springs[i].Force, 1e-5)
			if a.Springs[i].Slack {
				slack++
			}
		}
		for i := range a.Nodes {
			require.InDelta(t, b.Nodes[i].Y, a.Nodes[i].Y, 1e-10)
		}
	}
	assert.Greater(t, slack, 100)
}

// More springs than the equations are for are solved by factors of their own, to the
// same.
func TestManySprings(t *testing.T) {
	few, many := hungArch(4), hungArch(4)
	for range mostSprings {
		// springs that add nothing
		many.Springs = append(many.Springs, Spring{Node: 7, Toward: Vector{Y: 1}, Stiffness: 1e6, Sense: TensionOnly})
	}
	c := Case{Loads: []NodalLoad{{Node: 20, X: 300, Y: -2000}}}
	var a, b Result
	require.NoError(t, must(t, &few).Solve(&c, &a))
	for i := range mostSprings {
		c.Without = append(c.Without, len(few.Springs)+i)
	}
	s := must(t, &many)
	require.Nil(t, s.softened.columns)
	require.NoError(t, s.Solve(&c, &b))
	for i := range few.Springs {
		assert.InDelta(t, a.Springs[i].Force, b.Springs[i].Force, 1e-6)
	}
}

func must(t *testing.T, m *Model) *Solver {
	t.Helper()
	s, err := m.Compile()
	require.NoError(t, err)
	return s
}
