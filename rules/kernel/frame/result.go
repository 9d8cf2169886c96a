package frame

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
		r.inner = append(r.inner, m.inside(ends, s.given[i], s.spread[i], s.u))
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
// it, its own load w included, which puts given on the nodes.
func (m *member) inside(ends, given [6]float64, w Vector, u []float64) inner {
	at := Vector{ends[0] - given[0], ends[1] - given[1]}
	moved := Vector{u[m.number[0]], u[m.number[1]]}
	return inner{
		start: State{
			Forces: Forces{
				N: -m.along(at),
				V: m.across(at),
				M: -(ends[2] - given[2]),
			},
			Moved: Displacement{X: m.along(moved), Y: m.across(moved), Turn: u[m.number[2]]},
		},
		p: m.along(w),
		q: m.across(w),
	}
}
