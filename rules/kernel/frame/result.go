package frame

import "slices"

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

// report fills r from what holds the frame and the spring forces, once these balance the loads.
func (s *Solver) report(r *Result) error {
	s.move()
	s.fill(r, &s.onFrame)
	if err := s.balance(r); err != nil {
		r.clear()
		return err
	}
	return nil
}

// fill fills r from the movements, the spring forces and the loads, if there are any.
// s.left gathers what is left of the load on each number after the elements and springs
// have taken their part: nothing, or what a support must bear.
func (s *Solver) fill(r *Result, by *loads) {
	clear(s.left)
	var given [6]float64
	var spread Vector
	if by != nil {
		copy(s.left, by.load)
	}
	r.members = s.members
	r.inner = slices.Grow(r.inner, len(s.members))[:len(s.members)]
	for i := range s.members {
		m := &s.members[i]
		ends := m.endForces(s.u)
		for a, id := range m.number {
			s.left[id] -= ends[a]
		}
		if by != nil {
			given, spread = by.given[i], by.spread[i]
		}
		m.inside(&r.inner[i], &ends, &given, spread, s.u)
	}
	for i := range s.springs {
		sp, f := &s.springs[i], s.force[i]
		s.left[sp.x] += f * sp.toward.X
		s.left[sp.y] += f * sp.toward.Y
	}
	r.Springs = s.springForces(r.Springs)
	for _, at := range s.nodes {
		r.Nodes = append(r.Nodes, Displacement{X: s.u[at[0]], Y: s.u[at[1]], Turn: s.u[at[2]]})
	}
	for _, left := range s.left[s.free:] {
		r.Supports = append(r.Supports, -left)
	}
}

// springForces appends the state of each spring in the case at hand.
func (s *Solver) springForces(to []SpringForce) []SpringForce {
	for i, f := range s.force {
		to = append(to, SpringForce{Force: f, Slack: !s.taut[i] && !s.gone[i]})
	}
	return to
}

// inside puts into in the state at I and the load of the member whose nodes exert ends
// on it, its own load w included, which puts given on the nodes.
func (m *member) inside(in *inner, ends, given *[6]float64, w Vector, u []float64) {
	at := Vector{ends[0] - given[0], ends[1] - given[1]}
	moved := Vector{u[m.number[0]], u[m.number[1]]}
	in.start.N, in.start.V, in.start.M = -m.along(at), m.across(at), -(ends[2] - given[2])
	in.start.Moved = Displacement{X: m.along(moved), Y: m.across(moved), Turn: u[m.number[2]]}
	in.p, in.q = m.along(w), m.across(w)
}
