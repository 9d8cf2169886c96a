package frame

import (
	"fmt"
	"math"
)

// Result is what Solve found. The zero Result is ready for use.
type Result struct {
	Nodes    []Displacement // by node
	Springs  []SpringForce  // by spring
	Supports []float64      // by support: force of the support on the frame along its direction, N or N·m

	members []member // of the solver, never written
	inner   []inner
}

// Displacement is the movement of a node or of a point of an element.
type Displacement struct {
	X, Y float64 // m
	Turn float64 // rad, anticlockwise; of the cross-section, not of the axis
}

// SpringForce is the state of a spring. A spring that the case takes away has the
// zero SpringForce.
type SpringForce struct {
	Force float64 // N, tension positive
	Slack bool    // one-sided, and without force because its sense forbids it
}

// State is the state of a cross-section, seen going from I to J.
type State struct {
	N     float64 // axial force, tension positive
	V     float64 // shear force, dM/ds
	M     float64 // bending moment, positive where the right-hand side is stretched
	Moved Displacement
}

// inner is what At needs of an element beside its geometry.
type inner struct {
	start State   // at I, Moved in the element's own axes
	p, q  float64 // load per length along the element and to its left
}

// At is the state of an element at the share t of its length, 0 at I and 1 at J;
// exact within the theory, loads between the ends included. For an element that
// runs to the right, M is positive where it sags. For a chain that runs over an
// arch from left to right M is positive where it flattens the arch.
//
//	N(x) = N₀ − p·x,  V(x) = V₀ + q·x,  M(x) = M₀ + V₀·x + q·x²/2
//	turn: θ′ = M/EI,  across: v′ = θ − V/GA,  along: u′ = N/EA
//
// It panics unless 0 ≤ t ≤ 1 and the element exists.
func (r *Result) At(element int, t float64) State {
	if !(0 <= t && t <= 1) {
		panic(fmt.Sprintf("frame: place %v in an element", t))
	}
	m, in := &r.members[element], &r.inner[element]
	s, x := in.start, t*m.length
	EA, EI, GA := m.section.EA, m.section.EI, m.section.GA

	turn := s.Moved.Turn + x*(s.M+x*(s.V/2+x*in.q/6))/EI
	across := s.Moved.Y + x*s.Moved.Turn + x*x*(s.M/2+x*(s.V/6+x*in.q/24))/EI - x*(s.V+x*in.q/2)/GA
	along := s.Moved.X + x*(s.N-x*in.p/2)/EA
	return State{
		N: s.N - in.p*x,
		V: s.V + in.q*x,
		M: s.M + x*(s.V+x*in.q/2),
		Moved: Displacement{
			X:    m.cos*along - m.sin*across,
			Y:    m.sin*along + m.cos*across,
			Turn: turn,
		},
	}
}

func (r *Result) clear() {
	r.Nodes, r.Springs, r.Supports = r.Nodes[:0], r.Springs[:0], r.Supports[:0]
	r.members, r.inner = nil, r.inner[:0]
}

// outOfBalance is by how much the forces at a node may differ from the load, as a
// share of the largest force in the frame: far above the rounding of a sound
// frame, and a thousand times finer than any figure that is printed.
const outOfBalance = 1e-6

// report fills r from s.u and the spring forces, once these balance the loads.
// s.next gathers what is left of the load on each number after the elements and
// springs have taken their part: nothing, or what a support must bear.
func (s *Solver) report(r *Result) error {
	copy(s.next, s.load)
	r.members = s.members
	for i := range s.members {
		m := &s.members[i]
		ends := m.endForces(s.u)
		for a, id := range m.number {
			s.next[id] -= ends[a]
		}
		r.inner = append(r.inner, m.inside(ends, s.spread[i], s.u))
	}
	for i := range s.springs {
		sp, f := &s.springs[i], s.force[i]
		s.next[sp.x] += f * sp.toward.X
		s.next[sp.y] += f * sp.toward.Y
		r.Springs = append(r.Springs, SpringForce{Force: f, Slack: !s.taut[i] && !s.gone[i]})
	}
	for _, at := range s.nodes {
		r.Nodes = append(r.Nodes, Displacement{X: s.u[at[0]], Y: s.u[at[1]], Turn: s.u[at[2]]})
	}
	for _, left := range s.next[s.free:] {
		r.Supports = append(r.Supports, -left)
	}
	if err := s.balance(r); err != nil {
		r.clear()
		return err
	}
	return nil
}

// inside is the state at I and the load of the member whose nodes exert ends on
// it, its own load w included.
func (m *member) inside(ends [6]float64, w Point, u []float64) inner {
	given := m.nodalLoads(w)
	at := Point{ends[0] - given[0], ends[1] - given[1]}
	moved := Point{u[m.number[0]], u[m.number[1]]}
	return inner{
		start: State{
			N:     -m.along(at),
			V:     m.across(at),
			M:     -(ends[2] - given[2]),
			Moved: Displacement{X: m.along(moved), Y: m.across(moved), Turn: u[m.number[2]]},
		},
		p: m.along(w),
		q: m.across(w),
	}
}

// balance checks that nothing is left of the load on any unknown. A couple
// compares with a force by way of the size of the frame.
//
// A frame that moves as a whole, because its supports did, may have no forces but
// the rounding of stiffness times movement, and these need not balance.
func (s *Solver) balance(r *Result) error {
	largest, rounding := 0.0, 0.0
	for i, in := range r.inner {
		largest = max(largest, math.Abs(in.start.N), math.Abs(in.start.V), math.Abs(in.start.M)/s.size)
		rounding = max(rounding, s.members[i].rounding(s.u))
	}
	for _, f := range s.force {
		largest = max(largest, math.Abs(f))
	}
	if !finite(largest) {
		return &ResidualError{Node: s.places[0].node, Direction: s.places[0].direction, Share: math.Inf(1)}
	}
	if largest <= float64(s.free)*rounding {
		return nil
	}
	for i, left := range s.next[:s.free] {
		at := s.places[i]
		if at.direction == Turning {
			left /= s.size
		}
		if !(math.Abs(left) <= outOfBalance*largest) {
			return &ResidualError{Node: at.node, Direction: at.direction, Share: math.Abs(left) / largest}
		}
	}
	return nil
}

// rounding is what the rounding of the movements u may make of the force at an
// end of m.
func (m *member) rounding(u []float64) float64 {
	var x, y float64
	for a, id := range m.number {
		x += math.Abs(m.k[0][a] * u[id])
		y += math.Abs(m.k[1][a] * u[id])
	}
	return roundoff * max(x, y)
}
