package frame_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/framecases"
)

var plain = frame.Section{EA: 1e6, EI: 100, GA: 1e5}

func hold(node int, directions ...frame.Direction) []frame.Support {
	var s []frame.Support
	for _, d := range directions {
		s = append(s, frame.Support{Node: node, Direction: d})
	}
	return s
}

// with is m with other supports.
func with(m frame.Model, supports ...[]frame.Support) frame.Model {
	m.Supports = nil
	for _, s := range supports {
		m.Supports = append(m.Supports, s...)
	}
	return m
}

func TestMechanismsThatNoLoadIsNeededFor(t *testing.T) {
	const x, y, turning = frame.AlongX, frame.AlongY, frame.Turning
	beam := frame.Chain([]frame.Vector{{}, {X: 1}, {X: 2}}, plain)
	arch := frame.Chain(framecases.Arc(2, -60, 60, 64), plain)
	threeHinged := frame.Chain(framecases.Arc(2, -60, 60, 64), plain)
	threeHinged.Elements[16].FreeI, threeHinged.Elements[32].FreeI = true, true
	hinge := frame.Chain([]frame.Vector{{}, {X: 1}, {X: 2}}, plain)
	hinge.Elements[0].FreeJ = true
	loose := frame.Chain([]frame.Vector{{}, {X: 1}, {X: 2}}, plain)
	loose.Elements[0].FreeJ, loose.Elements[1].FreeI = true, true
	apart := frame.Chain([]frame.Vector{{}, {X: 1}, {X: 2}}, plain)
	apart.Nodes = append(apart.Nodes, frame.Vector{X: 3})
	tests := []struct {
		name       string
		model      frame.Model
		directions []frame.Direction // any of these is a fair name for the motion
		node       int               // -1 if any node is
	}{
		{"a beam on rollers slides", with(beam, hold(0, y), hold(2, y)), []frame.Direction{x}, -1},
		{"a beam on one pin swings", with(beam, hold(0, x, y)), []frame.Direction{y}, 2},
		{"a rib on straps drifts sideways", with(framecases.HungRib(60, 64, plain, 1e5, -60, 0, 60)), []frame.Direction{x}, -1},
		{"a rib on one strap swings", framecases.HungRib(60, 64, plain, 1e5, 0), []frame.Direction{y}, -1},
		{"nothing holds at all", with(arch), []frame.Direction{x, y}, -1},
		{"an arch of four hinges folds", with(threeHinged, hold(0, x, y), hold(64, x, y)), []frame.Direction{x, y}, -1},
		{"a straight line of three hinges gives", with(hinge, hold(0, x, y), hold(2, x, y)), []frame.Direction{y}, 1},
		{"a node without an attached end turns", with(loose, hold(0, x, y, turning), hold(2, x, y, turning)), []frame.Direction{turning}, 1},
		{"a node without an element", with(apart, hold(0, x, y, turning)), []frame.Direction{x, y, turning}, 3},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := test.model.Compile()
			var mechanism *frame.MechanismError
			require.ErrorAs(t, err, &mechanism)
			assert.Contains(t, test.directions, mechanism.Direction, "%v", err)
			if test.node >= 0 {
				assert.Equal(t, test.node, mechanism.Node, "%v", err)
			}
		})
	}
}

func TestMechanismsOfACase(t *testing.T) {
	m := framecases.HungRib(60, 64, plain, 1e5, -60, 0, 60)
	s, err := m.Compile()
	require.NoError(t, err)
	weight := framecases.Everywhere(m, 0, -1, frame.PerLength)
	for name, c := range map[string]frame.Case{
		"two of three straps lost":       {Spread: weight, Without: []int{0, 2}},
		"all straps lost":                {Spread: weight, Without: []int{0, 1, 2}},
		"lifted off its straps":          {Loads: []frame.NodalLoad{{Node: 32, Y: 1}}},
		"tipped over its last strap":     {Loads: []frame.NodalLoad{{Node: 0, Y: -1}, {Node: 64, Y: 2}}},
		"a couple that no strap resists": {Loads: []frame.NodalLoad{{Node: 32, Couple: 1}}},
	} {
		t.Run(name, func(t *testing.T) {
			var r frame.Result
			var mechanism *frame.MechanismError
			require.ErrorAs(t, s.Solve(&c, &r), &mechanism)
			assert.Equal(t, frame.AlongY, mechanism.Direction)
			assert.Empty(t, r.Nodes)
		})
	}
}

func TestErrorsName(t *testing.T) {
	assert.EqualError(t, &frame.MechanismError{Node: 3, Direction: frame.AlongX}, "node 3 moves along x without resistance")
	assert.EqualError(t, &frame.UnsettledError{Spring: 2, Steps: 40}, "the one-sided springs do not settle in 40 steps; spring 2 was the last to let go")
	assert.EqualError(t, &frame.ResidualError{Node: 1, Direction: frame.Turning, Share: 0.002}, "node 1 is out of balance turning by 2.0e-03 of the largest force")
}

func TestModelsThatCannotBeSolved(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	tests := []struct {
		says  string
		spoil func(*frame.Model)
	}{
		{"the frame has no elements", func(m *frame.Model) { m.Elements = nil }},
		{"node 1 is at NaN, 0", func(m *frame.Model) { m.Nodes[1].X = nan }},
		{"node 2 is at 2, +Inf", func(m *frame.Model) { m.Nodes[2].Y = inf }},
		{"element 1: there is no node 3", func(m *frame.Model) { m.Elements[1].J = 3 }},
		{"element 0: there is no node -1", func(m *frame.Model) { m.Elements[0].I = -1 }},
		{"element 1: nodes 1 and 2 are at one place", func(m *frame.Model) { m.Nodes[2] = m.Nodes[1] }},
		{"element 0: EA is NaN; it must be positive and finite", func(m *frame.Model) { m.Elements[0].Section.EA = nan }},
		{"element 0: EI is 0; it must be positive and finite", func(m *frame.Model) { m.Elements[0].Section.EI = 0 }},
		{"element 0: EI is +Inf; it must be positive and finite", func(m *frame.Model) { m.Elements[0].Section.EI = inf }},
		{"element 0: GA is 0; it must be positive, infinite to leave shear strain out", func(m *frame.Model) { m.Elements[0].Section.GA = 0 }},
		{"element 0: GA is NaN; it must be positive, infinite to leave shear strain out", func(m *frame.Model) { m.Elements[0].Section.GA = nan }},
		{"support 0: there is no node 9", func(m *frame.Model) { m.Supports[0].Node = 9 }},
		{"support 0 has no direction", func(m *frame.Model) { m.Supports[0].Direction = 0 }},
		{"supports 0 and 1 both hold node 0 along x", func(m *frame.Model) { m.Supports[1] = m.Supports[0] }},
		{"spring 0: there is no node 5", func(m *frame.Model) { m.Springs[0].Node = 5 }},
		{"spring 0: it points nowhere", func(m *frame.Model) { m.Springs[0].Toward = frame.Vector{} }},
		{"spring 0: it points nowhere", func(m *frame.Model) { m.Springs[0].Toward.X = nan }},
		{"spring 0: its stiffness is NaN; it must be positive and finite", func(m *frame.Model) { m.Springs[0].Stiffness = nan }},
		{"spring 0: it has no sense", func(m *frame.Model) { m.Springs[0].Sense = 0 }},
	}
	for _, test := range tests {
		m := spoilable()
		_, err := m.Compile()
		require.NoError(t, err)
		test.spoil(&m)
		_, err = m.Compile()
		assert.EqualError(t, err, test.says)
	}
}

// spoilable is a sound beam of two elements.
func spoilable() frame.Model {
	m := frame.Chain([]frame.Vector{{}, {X: 1}, {X: 2}}, plain)
	m.Supports = hold(0, frame.AlongX, frame.AlongY, frame.Turning)
	m.Springs = []frame.Spring{{Node: 2, Toward: frame.Vector{Y: 1}, Stiffness: 1, Sense: frame.TensionOnly}}
	return m
}

func TestCasesThatCannotBeSolved(t *testing.T) {
	m, nan := spoilable(), math.NaN()
	s, err := m.Compile()
	require.NoError(t, err)
	for says, c := range map[string]frame.Case{
		"load 0: NaN, 0 and 0 on node 1 of 3":      {Loads: []frame.NodalLoad{{Node: 1, X: nan}}},
		"load 0: 0, 0 and 0 on node 3 of 3":        {Loads: []frame.NodalLoad{{Node: 3}}},
		"spread load 0: 0, -Inf on element 0 of 2": {Spread: []frame.SpreadLoad{{Y: math.Inf(-1), Per: frame.PerLength}}},
		"spread load 0: 0, 0 on element 2 of 2":    {Spread: []frame.SpreadLoad{{Element: 2, Per: frame.PerLength}}},
		"spread load 0 has no measure":             {Spread: []frame.SpreadLoad{{}}},
		"misfit 0: NaN on spring 0 of 1":           {Misfits: []frame.Misfit{{Longer: nan}}},
		"misfit 0: 0 on spring 1 of 1":             {Misfits: []frame.Misfit{{Spring: 1}}},
		"settlement 0: NaN of support 0 of 3":      {Settlements: []frame.Settlement{{By: nan}}},
		"settlement 0: 0 of support 3 of 3":        {Settlements: []frame.Settlement{{Support: 3}}},
		"there is no spring 1 to take away":        {Without: []int{1}},
	} {
		var r frame.Result
		assert.EqualError(t, s.Solve(&c, &r), says)
		assert.Empty(t, r.Nodes)
	}

	// What overflows on the way is not a number that anyone gets to see.
	for _, c := range []frame.Case{
		{Loads: []frame.NodalLoad{{Node: 2, Y: math.MaxFloat64}, {Node: 2, Y: math.MaxFloat64}}},
		{Loads: []frame.NodalLoad{{Node: 2, Y: math.MaxFloat64, Couple: math.MaxFloat64}}},
		{Settlements: []frame.Settlement{{By: math.MaxFloat64}}},
	} {
		var r frame.Result
		var residual *frame.ResidualError
		require.ErrorAs(t, s.Solve(&c, &r), &residual)
	}
}

func TestPlacesOutsideAnElementPanic(t *testing.T) {
	r := solve(t, spoilable(), frame.Case{Loads: down(2, 1)})
	for _, at := range []float64{-0.01, 1.01, math.NaN()} {
		assert.Panics(t, func() { r.At(0, at) })
	}
}
