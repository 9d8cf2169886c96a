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
	largest := s.largest(r)
	if !finite(largest) {
		return &ResidualError{Node: s.places[0].node, Direction: s.places[0].direction, Share: math.Inf(1)}
	}
	most := outOfBalance * largest
	for i, left := range s.left[:s.free] {
		left = s.comparable(i, left)
		if math.Abs(left) <= most {
			continue
		}
		if largest <= float64(s.free)*s.rounding() {
			return nil
		}
		return &ResidualError{Node: s.places[i].node, Direction: s.places[i].direction, Share: math.Abs(left) / largest}
	}
	return nil
}

// comparable is what is left on number i as a force: a couple by the size of the frame.
func (s *Solver) comparable(i int, left float64) float64 {
	if s.places[i].direction == Turning {
		return left / s.size
	}
	return left
}

// largest is the greatest force in the frame. One that is no number is left out: it is
// so in the balance too.
func (s *Solver) largest(r *Result) (force float64) {
	couple := 0.0
	for i := range r.inner {
		at := &r.inner[i].start.Forces
		force = greater(greater(force, at.N), at.V)
		couple = greater(couple, at.M)
	}
	force = greater(force, couple/s.size)
	for _, f := range s.force {
		force = greater(force, f)
	}
	return force
}

// greater is the greater of a and |b|, without the care of max for what is no number.
func greater(a, b float64) float64 {
	if b = math.Abs(b); b > a {
		return b
	}
	return a
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
