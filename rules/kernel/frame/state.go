package frame

import (
	"fmt"
)

// State is the state of a cross-section, seen going from I to J.
type State struct {
	Forces
	Moved Displacement
}

// Forces are those of a cross-section, likewise.
type Forces struct {
	N float64 // axial force, tension positive
	V float64 // shear force, dM/ds
	M float64 // bending moment, positive where the right-hand side is stretched
}

// inner is what At needs of an element beside its geometry.
type inner struct {
	start State   // at I, Moved in the element's own axes
	p, q  float64 // load per length along the element and to its left
}

// At is the state of an element at the share t of its length, 0 at I and 1 at J, in
// the units of the model; exact within the theory, loads between the ends included.
// For an element that runs to the right, M is positive where it sags. For a chain
// that runs over an arch from left to right M is positive where it flattens the
// arch.
//
//	N(x) = N₀ − p·x,  V(x) = V₀ + q·x,  M(x) = M₀ + V₀·x + q·x²/2
//	turn: θ′ = M/EI,  across: v′ = θ − V/GA,  along: u′ = N/EA
//
// Derived: the equations of Timoshenko's beam, integrated from I. It panics unless
// 0 ≤ t ≤ 1 and the element exists.
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
		Forces: in.forces(x),
		Moved: Displacement{
			X:    m.cos*along - m.sin*across,
			Y:    m.sin*along + m.cos*across,
			Turn: turn,
		},
	}
}

// Ends are what [Result.At] gives of the forces at I and at J.
func (r *Result) Ends(element int) [2]Forces {
	in := &r.inner[element]
	return [2]Forces{in.forces(0), in.forces(r.members[element].length)}
}

// forces are those at a length from I.
func (in *inner) forces(x float64) Forces {
	s := &in.start
	return Forces{N: s.N - in.p*x, V: s.V + in.q*x, M: s.M + x*(s.V+x*in.q/2)}
}

func (r *Result) clear() {
	r.Nodes, r.Springs, r.Supports = r.Nodes[:0], r.Springs[:0], r.Supports[:0]
	r.members, r.inner = nil, r.inner[:0]
}
