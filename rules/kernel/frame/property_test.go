package frame_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/framecases"
)

// drawSection is a section of EI = 1 that any of the three strains may govern at
// lengths near 1.
func drawSection(t *rapid.T) frame.Section {
	s := frame.Section{EA: math.Pow(10, rapid.Float64Range(1, 5).Draw(t, "log EA")), EI: 1, GA: math.Inf(1)}
	if rapid.Bool().Draw(t, "shear") {
		s.GA = math.Pow(10, rapid.Float64Range(0.5, 4).Draw(t, "log GA"))
	}
	return s
}

// drawFrame is a crooked chain of up to 12 elements, clamped at its left end, on
// springs of random directions, under random loads, misfits and settlements. One
// load is never small, so that the forces are more than the rounding of movements.
func drawFrame(t *rapid.T) (frame.Model, frame.Case) {
	n := rapid.IntRange(1, 12).Draw(t, "elements")
	value := rapid.Float64Range(-1, 1)
	points := make([]frame.Vector, n+1)
	for i := 1; i <= n; i++ {
		points[i] = frame.Vector{X: points[i-1].X + rapid.Float64Range(0.05, 0.3).Draw(t, "run"), Y: value.Draw(t, "height") / 5}
	}
	m := frame.Chain(points, drawSection(t))
	for d := frame.AlongX; d <= frame.Turning; d++ {
		m.Supports = append(m.Supports, frame.Support{Node: 0, Direction: d})
	}
	var c frame.Case
	for i := range rapid.IntRange(0, 4).Draw(t, "springs") {
		sin, cos := math.Sincos(rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "angle"))
		m.Springs = append(m.Springs, frame.Spring{
			Node: rapid.IntRange(0, n).Draw(t, "node"), Toward: frame.Vector{X: cos, Y: sin},
			Stiffness: math.Pow(10, rapid.Float64Range(-1, 4).Draw(t, "log k")),
			Sense:     frame.Sense(rapid.IntRange(1, 3).Draw(t, "sense")),
		})
		c.Misfits = append(c.Misfits, frame.Misfit{Spring: i, Longer: value.Draw(t, "longer")})
	}
	for i := range m.Elements {
		per := frame.Measure(rapid.IntRange(1, 2).Draw(t, "per"))
		c.Spread = append(c.Spread, frame.SpreadLoad{Element: i, X: value.Draw(t, "wx"), Y: value.Draw(t, "wy"), Per: per})
	}
	c.Loads = []frame.NodalLoad{{Node: n, X: value.Draw(t, "px"), Y: 1, Couple: value.Draw(t, "couple")}}
	c.Settlements = []frame.Settlement{{Support: rapid.IntRange(0, 2).Draw(t, "support"), By: value.Draw(t, "settles") / 10}}
	return m, c
}

func mustSolve(t *rapid.T, m frame.Model, c frame.Case) *frame.Result {
	s, err := m.Compile()
	if err != nil {
		t.Fatal(err)
	}
	var r frame.Result
	if err := s.Solve(&c, &r); err != nil {
		t.Fatal(err)
	}
	return &r
}

// inDirection is v as a part along x, along y or turning.
func inDirection(d frame.Direction, v float64) (x, y, turning float64) {
	parts := [3]float64{}
	parts[d-frame.AlongX] = v
	return parts[0], parts[1], parts[2]
}

func TestForcesSumToTheLoad(t *testing.T) { rapid.Check(t, forcesSumToTheLoad) }

// FuzzSolve looks for a frame in which they do not.
func FuzzSolve(f *testing.F) { f.Fuzz(rapid.MakeFuzz(forcesSumToTheLoad)) }

// Loads, reactions and spring forces have no resultant, on the frame as drawn.
func forcesSumToTheLoad(t *rapid.T) {
	m, c := drawFrame(t)
	r := mustSolve(t, m, c)
	var x, y, couple, size float64
	act := func(at frame.Vector, fx, fy, turning float64) {
		x, y, couple = x+fx, y+fy, couple+turning+at.X*fy-at.Y*fx
		size += math.Abs(fx) + math.Abs(fy) + math.Abs(turning)
	}
	for i, s := range m.Supports {
		x, y, turning := inDirection(s.Direction, r.Supports[i])
		act(m.Nodes[s.Node], x, y, turning)
	}
	for i, s := range m.Springs {
		act(m.Nodes[s.Node], r.Springs[i].Force*s.Toward.X, r.Springs[i].Force*s.Toward.Y, 0)
	}
	for _, l := range c.Loads {
		act(m.Nodes[l.Node], l.X, l.Y, l.Couple)
	}
	for _, l := range c.Spread {
		i, j := m.Nodes[m.Elements[l.Element].I], m.Nodes[m.Elements[l.Element].J]
		along, rise := math.Hypot(j.X-i.X, j.Y-i.Y), math.Hypot(j.X-i.X, j.Y-i.Y)
		if l.Per == frame.PerProjection {
			along, rise = math.Abs(j.X-i.X), math.Abs(j.Y-i.Y)
		}
		act(frame.Vector{X: (i.X + j.X) / 2, Y: (i.Y + j.Y) / 2}, l.X*rise, l.Y*along, 0)
	}
	// Forces that cancel leave roundings of the stiffest element's share: the
	// movements are near 1, the shortest element 0.05.
	rounding := 1e-14 * m.Elements[0].Section.EA / 0.05
	assert.InDeltaSlice(t, []float64{0, 0, 0}, []float64{x, y, couple}, 1e-8*size+rounding)
}

// The state inside an element fits that of its nodes, its neighbours, and its own
// halves when a node is put in the middle.
func TestStateInsideAnElement(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, c := drawFrame(t)
		r := mustSolve(t, m, c)
		e := rapid.IntRange(0, len(m.Elements)-1).Draw(t, "element")
		end, node := r.At(e, 1).Moved, r.Nodes[m.Elements[e].J]
		size := 0.0
		for _, d := range r.Nodes {
			size = max(size, math.Abs(d.X), math.Abs(d.Y), math.Abs(d.Turn))
		}
		assert.InDelta(t, node.X, end.X, 1e-8*size+1e-12)
		assert.InDelta(t, node.Y, end.Y, 1e-8*size+1e-12)
		assert.InDelta(t, node.Turn, end.Turn, 1e-8*size+1e-12)

		halved, load := m, c.Spread[e]
		i, j := m.Nodes[m.Elements[e].I], m.Nodes[m.Elements[e].J]
		halved.Nodes = append(append([]frame.Vector(nil), m.Nodes...), frame.Vector{X: (i.X + j.X) / 2, Y: (i.Y + j.Y) / 2})
		halved.Elements = append([]frame.Element(nil), m.Elements...)
		halved.Elements[e].J = len(m.Nodes)
		halved.Elements = append(halved.Elements, frame.Element{I: len(m.Nodes), J: m.Elements[e].J, Section: m.Elements[e].Section})
		load.Element = len(m.Elements)
		c.Spread = append(append([]frame.SpreadLoad(nil), c.Spread...), load)
		r2 := mustSolve(t, halved, c)
		sameState(t, r2.At(e, 0.5), r.At(e, 0.25))
		sameState(t, r2.At(e, 1), r.At(e, 0.5))
		sameState(t, r2.At(len(m.Elements), 0.5), r.At(e, 0.75))
	})
}

// sameState compares states of frames of size and EI near 1.
func sameState(t *rapid.T, want, got frame.State) {
	list := func(s frame.State) []float64 {
		return []float64{s.N, s.V, s.M, s.Moved.X, s.Moved.Y, s.Moved.Turn}
	}
	for i, w := range list(want) {
		assert.InDelta(t, w, list(got)[i], 1e-6*(1+math.Abs(w)), "N V M x y turn: %d", i)
	}
}

// A frame turned and shifted as a whole, with its springs and loads, has the same
// forces. Supports and spread loads keep to the axes, so the frame hangs on
// springs alone here and its load is at nodes.
func TestTurnAndShift(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, c := drawFrame(t)
		m.Supports, c.Settlements, c.Spread = nil, nil, nil
		for _, toward := range []frame.Vector{{X: 1}, {Y: 1}} {
			for _, node := range []int{0, len(m.Nodes) - 1} {
				m.Springs = append(m.Springs, frame.Spring{Node: node, Toward: toward, Stiffness: 10, Sense: frame.BothWays})
			}
		}
		r := mustSolve(t, m, c)

		sin, cos := math.Sincos(rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "turn"))
		turn := func(p frame.Vector) frame.Vector { return frame.Vector{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y} }
		shift := rapid.Float64Range(-10, 10).Draw(t, "shift")
		turned := m
		turned.Nodes, turned.Springs = nil, nil
		for _, p := range m.Nodes {
			p = turn(p)
			turned.Nodes = append(turned.Nodes, frame.Vector{X: p.X + shift, Y: p.Y - shift})
		}
		for _, s := range m.Springs {
			s.Toward = turn(s.Toward)
			turned.Springs = append(turned.Springs, s)
		}
		load := turn(frame.Vector{X: c.Loads[0].X, Y: c.Loads[0].Y})
		c.Loads = []frame.NodalLoad{{Node: c.Loads[0].Node, X: load.X, Y: load.Y, Couple: c.Loads[0].Couple}}
		r2 := mustSolve(t, turned, c)

		for i, s := range r.Springs {
			assert.InDelta(t, s.Force, r2.Springs[i].Force, 1e-6*(1+math.Abs(s.Force)))
		}
		for e := range m.Elements {
			want, got := r.At(e, 0.3), r2.At(e, 0.3)
			moved := turn(frame.Vector{X: want.Moved.X, Y: want.Moved.Y})
			want.Moved.X, want.Moved.Y = moved.X, moved.Y
			sameState(t, want, got)
		}
	})
}

// A rib under a mirrored case has mirrored results.
func TestMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const n = 40
		m := framecases.HungRib(rapid.Float64Range(20, 90).Draw(t, "half"), n, drawSection(t), 1)
		c := frame.Case{Spread: framecases.Everywhere(m, 0, -1, frame.PerLength)}
		mirrored := frame.Case{Spread: c.Spread}
		for i, node := range []int{0, 12, 28, 40} {
			m.Springs = append(m.Springs, frame.Spring{Node: node, Toward: frame.Vector{Y: 1}, Stiffness: 100, Sense: frame.TensionOnly})
			longer := rapid.Float64Range(-0.1, 0.1).Draw(t, "longer")
			c.Misfits = append(c.Misfits, frame.Misfit{Spring: i, Longer: longer})
			mirrored.Misfits = append(mirrored.Misfits, frame.Misfit{Spring: 3 - i, Longer: longer})
		}
		node := rapid.IntRange(0, n).Draw(t, "node")
		c.Loads = []frame.NodalLoad{{Node: node, X: 0.3, Y: -0.2, Couple: 0.1}}
		mirrored.Loads = []frame.NodalLoad{{Node: n - node, X: -0.3, Y: -0.2, Couple: -0.1}}
		r, r2 := mustSolve(t, m, c), mustSolve(t, m, mirrored)
		for i, s := range r.Springs {
			assert.InDelta(t, s.Force, r2.Springs[3-i].Force, 1e-7)
		}
		for i, d := range r.Nodes {
			assert.InDelta(t, d.X, -r2.Nodes[n-i].X, 1e-7)
			assert.InDelta(t, d.Y, r2.Nodes[n-i].Y, 1e-7)
			assert.InDelta(t, d.Turn, -r2.Nodes[n-i].Turn, 1e-7)
		}
		assert.InDelta(t, r.At(7, 0.25).M, r2.At(n-1-7, 0.75).M, 1e-7)
		assert.InDelta(t, r.At(7, 0.25).V, -r2.At(n-1-7, 0.75).V, 1e-7)
	})
}

// Maxwell and Betti: the movement at A for a load at B is that at B for the same
// load at A, in any two directions, if the springs work both ways.
func TestReciprocity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, _ := drawFrame(t)
		for i := range m.Springs {
			m.Springs[i].Sense = frame.BothWays
		}
		unit := func(node int, d frame.Direction) frame.Case {
			x, y, turning := inDirection(d, 1)
			return frame.Case{Loads: []frame.NodalLoad{{Node: node, X: x, Y: y, Couple: turning}}}
		}
		read := func(r *frame.Result, node int, d frame.Direction) float64 {
			x, y, turning := inDirection(d, 1)
			return x*r.Nodes[node].X + y*r.Nodes[node].Y + turning*r.Nodes[node].Turn
		}
		node, way := rapid.IntRange(0, len(m.Nodes)-1), rapid.IntRange(1, 3)
		a, b := node.Draw(t, "a"), node.Draw(t, "b")
		da, db := frame.Direction(way.Draw(t, "da")), frame.Direction(way.Draw(t, "db"))
		ab := read(mustSolve(t, m, unit(b, db)), a, da)
		ba := read(mustSolve(t, m, unit(a, da)), b, db)
		assert.InDelta(t, ab, ba, 1e-8*(1+math.Abs(ab)))
	})
}

// Two-way springs of growing stiffness come to hold like supports, their error
// falling with their flexibility.
func TestStiffSpringsBecomeSupports(t *testing.T) {
	m := frame.Chain(framecases.Arc(1, -60, 60, 40), frame.Section{EA: 1e4, EI: 1, GA: 100})
	c := frame.Case{Spread: framecases.Everywhere(m, 0.2, -1, frame.PerLength)}
	held := []frame.Support{{Node: 0, Direction: frame.AlongX}, {Node: 0, Direction: frame.AlongY}, {Node: 40, Direction: frame.AlongY}}
	rigid := m
	rigid.Supports = append(held, frame.Support{Node: 20, Direction: frame.AlongY}, frame.Support{Node: 40, Direction: frame.AlongX})
	want := solve(t, rigid, c)

	m.Supports = held
	for _, k := range []float64{1e4, 1e6, 1e8, 1e10} {
		m.Springs = []frame.Spring{
			{Node: 20, Toward: frame.Vector{Y: 1}, Stiffness: k, Sense: frame.BothWays},
			{Node: 40, Toward: frame.Vector{X: 1}, Stiffness: k, Sense: frame.BothWays},
		}
		r := solve(t, m, c)
		for i := range m.Springs {
			assert.InDelta(t, want.Supports[3+i], r.Springs[i].Force, 1e3/k, "stiffness %v", k)
		}
	}
}

// Chords overstate the thrust of an arch, by about 1/N². The values are of a
// semicircle on two hinges under a load of 1 at the crown, from another program.
func TestChordsConverge(t *testing.T) {
	const beta = 1.44676e-4 // I/AR²
	for _, row := range []struct {
		n      int
		thrust float64
	}{{8, 0.32654}, {16, 0.32027}, {32, 0.31873}, {64, 0.31835}} {
		m := frame.Chain(framecases.Arc(1, -90, 90, row.n), frame.Section{EA: 1 / beta, EI: 1, GA: math.Inf(1)})
		for _, node := range []int{0, row.n} {
			m.Supports = append(m.Supports, frame.Support{Node: node, Direction: frame.AlongX}, frame.Support{Node: node, Direction: frame.AlongY})
		}
		r := solve(t, m, frame.Case{Loads: down(row.n/2, 1)})
		assert.InDelta(t, row.thrust, r.Supports[0], 5e-6, "%d elements", row.n)
	}
}
