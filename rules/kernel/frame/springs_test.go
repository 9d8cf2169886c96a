package frame_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/framecases"
)

// stiffBeam is a beam along x with nodes at the given places, so stiff that its
// spring forces follow from statics where they can, on springs of one stiffness:
// toward +1 straps from above, -1 ledgers from below.
func stiffBeam(k float64, toward []float64, places ...float64) frame.Model {
	points := make([]frame.Vector, len(places))
	for i, x := range places {
		points[i].X = x
	}
	m := frame.Chain(points, frame.Section{EA: 1e4, EI: 1e4, GA: math.Inf(1)})
	m.Supports = []frame.Support{{Node: 0, Direction: frame.AlongX}}
	for i, t := range toward {
		if t == 0 {
			continue
		}
		s := frame.Spring{Node: i, Toward: frame.Vector{Y: t}, Stiffness: k, Sense: frame.TensionOnly}
		if t < 0 {
			s.Sense = frame.CompressionOnly
		}
		m.Springs = append(m.Springs, s)
	}
	return m
}

func down(node int, force float64) []frame.NodalLoad {
	return []frame.NodalLoad{{Node: node, Y: -force}}
}

func TestOneSidedSprings(t *testing.T) {
	tests := []struct {
		name   string
		source string
		model  frame.Model
		load   frame.Case
		forces []float64
		slack  []bool
	}{
		{
			name:   "a load near the last strap lifts the first",
			source: "derived by statics: the load between the other two, since forces a + b·x would have a < 0",
			model:  stiffBeam(1, []float64{1, 1, 0, 1}, 0, 1, 3.5, 4),
			load:   frame.Case{Loads: down(2, 6)},
			forces: []float64{0, 1, 5}, slack: []bool{true, false, false},
		},
		{
			name:   "a ledger carries what hangs over it and a strap the rest",
			source: "derived by statics: moments about the ledger",
			model:  stiffBeam(1, []float64{-1, 0, 0, 1}, 0, 1, 2, 3),
			load:   frame.Case{Loads: down(1, 3)},
			forces: []float64{-2, 1}, slack: []bool{false, false},
		},
		{
			name:   "a ledger with a gap that does not close bears nothing",
			source: "derived: the strap beside it gives 0.3 of a gap of 0.5",
			model: frame.Model{
				Nodes: []frame.Vector{{}, {X: 1}}, Elements: []frame.Element{{I: 0, J: 1, Section: frame.Section{EA: 1, EI: 1, GA: 1}}},
				Supports: []frame.Support{{Node: 0, Direction: frame.AlongX}, {Node: 0, Direction: frame.Turning}},
				Springs: []frame.Spring{
					{Node: 0, Toward: frame.Vector{Y: 1}, Stiffness: 10, Sense: frame.TensionOnly},
					{Node: 0, Toward: frame.Vector{Y: -1}, Stiffness: 10, Sense: frame.CompressionOnly},
				},
			},
			load:   frame.Case{Loads: down(0, 3), Misfits: []frame.Misfit{{Spring: 1, Longer: -0.5}}},
			forces: []float64{3, 0}, slack: []bool{false, true},
		},
		{
			name:   "a ledger with a gap that closes takes what is left",
			source: "derived: 10·v + 10·(v − 0.1) = 3, v = 0.2",
			model: frame.Model{
				Nodes: []frame.Vector{{}, {X: 1}}, Elements: []frame.Element{{I: 0, J: 1, Section: frame.Section{EA: 1, EI: 1, GA: 1}}},
				Supports: []frame.Support{{Node: 0, Direction: frame.AlongX}, {Node: 0, Direction: frame.Turning}},
				Springs: []frame.Spring{
					{Node: 0, Toward: frame.Vector{Y: 1}, Stiffness: 10, Sense: frame.TensionOnly},
					{Node: 0, Toward: frame.Vector{Y: -1}, Stiffness: 10, Sense: frame.CompressionOnly},
				},
			},
			load:   frame.Case{Loads: down(0, 3), Misfits: []frame.Misfit{{Spring: 1, Longer: -0.1}}},
			forces: []float64{2, -1}, slack: []bool{false, false},
		},
		{
			name:   "a middle strap set short takes all but what keeps the balance on the left",
			source: "derived by statics: moments about the middle; the search passes a mechanism",
			model:  stiffBeam(1e3, []float64{1, 0, 1, 0, 1}, 0, 0.9, 1, 1.1, 2),
			load:   frame.Case{Loads: down(1, 10), Misfits: []frame.Misfit{{Spring: 1, Longer: -1}}},
			forces: []float64{1, 9, 0}, slack: []bool{false, false, true},
		},
		{
			name:   "the same on the right",
			source: "derived by statics",
			model:  stiffBeam(1e3, []float64{1, 0, 1, 0, 1}, 0, 0.9, 1, 1.1, 2),
			load:   frame.Case{Loads: down(3, 10), Misfits: []frame.Misfit{{Spring: 1, Longer: -1}}},
			forces: []float64{0, 9, 1}, slack: []bool{true, false, false},
		},
		{
			name:   "hung by one strap in perfect balance, the others only just taut",
			source: "derived by statics; one end strap stays at zero",
			model:  stiffBeam(1e3, []float64{1, 0, 1, 0, 1}, 0, 0.9, 1, 1.1, 2),
			load:   frame.Case{Loads: down(2, 10), Misfits: []frame.Misfit{{Spring: 1, Longer: -1}}},
			forces: []float64{0, 10, 0},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			require.NotEmpty(t, test.source)
			r := solve(t, test.model, test.load)
			for i, want := range test.forces {
				assert.InDelta(t, want, r.Springs[i].Force, 1e-3*10, "spring %d: %s", i, test.source)
				if test.slack != nil {
					assert.Equal(t, test.slack[i], r.Springs[i].Slack, "spring %d", i)
				}
			}
		})
	}
}

// randomHung is a rib on three to six one-sided springs, some of them ledgers,
// under random loads and misfits that throw some of them slack.
func randomHung(random *rand.Rand) (frame.Model, frame.Case) {
	half := 20 + 70*random.Float64()
	const n = 24
	m := framecases.HungRib(half, n, frame.Section{EA: 1e4, EI: 1, GA: 200}, 1)
	for _, node := range random.Perm(n + 1)[:3+random.IntN(4)] {
		s := frame.Spring{Node: node, Toward: frame.Vector{Y: 1}, Stiffness: math.Exp(4 * random.NormFloat64()), Sense: frame.TensionOnly}
		if random.IntN(4) == 0 {
			s.Toward.Y, s.Sense = -1, frame.CompressionOnly
		}
		m.Springs = append(m.Springs, s)
	}
	c := frame.Case{Spread: framecases.Everywhere(m, 0, -1, frame.PerLength)}
	for i := range m.Springs {
		c.Misfits = append(c.Misfits, frame.Misfit{Spring: i, Longer: 0.3 * random.NormFloat64()})
	}
	c.Loads = down(random.IntN(n+1), random.NormFloat64())
	return m, c
}

// Every set of springs is tried as if they worked both ways. The set whose forces
// and plays suit their senses is the answer; convexity says that its forces are
// the only ones, and its movements too unless the rib hangs balanced on one.
func TestOneSidedSpringsAgainstEverySet(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	slack, mechanisms := 0, 0
	for range 300 {
		m, c := randomHung(random)
		s, err := m.Compile()
		require.NoError(t, err)
		var r frame.Result
		solveErr := s.Solve(&c, &r)

		want := everySet(t, m, c)
		if want == nil {
			var mechanism *frame.MechanismError
			require.ErrorAs(t, solveErr, &mechanism)
			mechanisms++
			continue
		}
		require.NoError(t, solveErr)
		working := 0
		for i := range m.Springs {
			assert.InDelta(t, want.Springs[i].Force, r.Springs[i].Force, 1e-7)
			if math.Abs(r.Springs[i].Force) > 1e-9 {
				working++
			}
			if r.Springs[i].Slack {
				slack++
			}
		}
		for i := 0; working > 1 && i < len(m.Nodes); i++ {
			assert.InDelta(t, want.Nodes[i].Y, r.Nodes[i].Y, 1e-6)
		}
	}
	t.Logf("%d springs slack, %d frames that nothing holds", slack, mechanisms)
	assert.Greater(t, slack, 100)
	assert.Greater(t, mechanisms, 0)
}

// everySet is the result for the set of springs that suits their senses, nil if
// none does.
func everySet(t *testing.T, m frame.Model, c frame.Case) *frame.Result {
	t.Helper()
	senses := m.Springs
	m.Springs = append([]frame.Spring(nil), senses...)
	for i := range m.Springs {
		m.Springs[i].Sense = frame.BothWays
	}
	s, err := m.Compile()
	require.NoError(t, err)
	for set := range 1 << len(senses) {
		c.Without = nil
		for i := range senses {
			if set&(1<<i) != 0 {
				c.Without = append(c.Without, i)
			}
		}
		var r frame.Result
		if s.Solve(&c, &r) == nil && suits(senses, &c, &r) {
			return &r
		}
	}
	return nil
}

// suits says whether every spring in place works in its sense and every other has
// play.
func suits(senses []frame.Spring, c *frame.Case, r *frame.Result) bool {
	const little = 1e-9
	without := make(map[int]bool)
	for _, i := range c.Without {
		without[i] = true
	}
	for i, s := range senses {
		sign := 1.0
		if s.Sense == frame.CompressionOnly {
			sign = -1
		}
		stretch := -s.Toward.Y*r.Nodes[s.Node].Y - c.Misfits[i].Longer
		if without[i] && sign*stretch > little || !without[i] && sign*r.Springs[i].Force < -little {
			return false
		}
	}
	return true
}

func TestSpringAtASupportedNode(t *testing.T) {
	m := frame.Chain([]frame.Vector{{}, {X: 1}}, frame.Section{EA: 1, EI: 1, GA: 1})
	m.Supports = []frame.Support{{Node: 0, Direction: frame.AlongX}, {Node: 0, Direction: frame.AlongY}, {Node: 0, Direction: frame.Turning}}
	m.Springs = []frame.Spring{{Node: 0, Toward: frame.Vector{X: 3, Y: 4}, Stiffness: 10, Sense: frame.BothWays}}
	r := solve(t, m, frame.Case{Settlements: []frame.Settlement{{Support: 1, By: -0.1}}})
	assert.InDelta(t, 0.8, r.Springs[0].Force, 1e-12, "derived: 10 · 0.1 · 4/5")
	assert.InDeltaSlice(t, []float64{-0.48, -0.64, 0}, r.Supports, 1e-12, "derived: the supports hold against it")
}

func TestSolverKeepsNothingOfTheLastCase(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 1))
	m, hung, slack := benchRib()
	s, err := m.Compile()
	require.NoError(t, err)
	lost := hung
	lost.Without = []int{2}
	wrong := frame.Case{Without: []int{0, 1, 2}}
	cases := []*frame.Case{&hung, &slack, &lost, &wrong, {}}
	var r frame.Result
	for range 50 {
		c := cases[random.IntN(len(cases))]
		fresh, err := m.Compile()
		require.NoError(t, err)
		var want frame.Result
		wantErr := fresh.Solve(c, &want)
		assert.Equal(t, wantErr, s.Solve(c, &r))
		assert.Equal(t, fmt.Sprint(want.Nodes, want.Springs, want.Supports), fmt.Sprint(r.Nodes, r.Springs, r.Supports))
	}
}
