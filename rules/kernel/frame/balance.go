package frame

import (
	"math"
)

// outOfBalance is by how much the forces at a node may differ from the load, as a
// share of the largest force in the frame: far above the rounding of a sound
// frame, and a thousand times finer than any figure that is printed.
const outOfBalance = 1e-6

// balance checks that nothing is left of the load on any unknown. A couple
// compares with a force by way of the size of the frame.
//
// A frame that moves as a whole, because its supports did, may have no forces but
// the rounding of stiffness times movement, and these need not balance.
func (s *Solver) balance(r *Result) error {
	largest, couple := 0.0, 0.0
	for i := range r.inner {
		at := &r.inner[i].start
		largest, couple = max(largest, math.Abs(at.N), math.Abs(at.V)), max(couple, math.Abs(at.M))
	}
	largest = max(largest, couple/s.size)
	for _, f := range s.force {
		largest = max(largest, math.Abs(f))
	}
	if !finite(largest) {
		return &ResidualError{Node: s.places[0].node, Direction: s.places[0].direction, Share: math.Inf(1)}
	}
	for i, left := range s.left[:s.free] {
		at := s.places[i]
		if at.direction == Turning {
			left /= s.size
		}
		if math.Abs(left) <= outOfBalance*largest {
			continue
		}
		if largest <= float64(s.free)*s.rounding() {
			return nil
		}
		return &ResidualError{Node: at.node, Direction: at.direction, Share: math.Abs(left) / largest}
	}
	return nil
}

// rounding is what the rounding of the movements may make of the force at an end of
// any member.
func (s *Solver) rounding() (most float64) {
	for i := range s.members {
		most = max(most, s.members[i].rounding(s.u))
	}
	return most
}

// rounding is what the rounding of the movements u may make of the force at an
// end of m.
func (m *member) rounding(u []float64) float64 {
	var x, y float64
	k := m.matrix()
	for a, id := range m.number {
		x += math.Abs(k[0][a] * u[id])
		y += math.Abs(k[1][a] * u[id])
	}
	return roundoff * max(x, y)
}
