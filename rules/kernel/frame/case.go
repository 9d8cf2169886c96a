package frame

import (
	"math"
	"slices"
)

// Case is what acts on a frame at one time. The zero Case is no load at all.
type Case struct {
	// The lists of loads are for reading only once they are solved for: the Solver knows
	// them again by their memory.
	Loads  []NodalLoad
	Spread []SpreadLoad

	Misfits     []Misfit
	Settlements []Settlement
	Without     []int // springs taken away, by index: lost, or not yet fixed
}

// NodalLoad is a force and a couple on a node.
type NodalLoad struct {
	Node   int
	X, Y   float64 // N
	Couple float64 // N·m, anticlockwise
}

// Measure says what a spread load is counted along.
type Measure uint8

// The measures.
const (
	// PerLength: by the element's own length, as a weight is.
	PerLength Measure = iota + 1
	// PerProjection: Y by the element's run along x, X by its rise along y.
	PerProjection
)

// SpreadLoad is a uniform load on an element in the direction of the axes.
// Several on one element add up.
type SpreadLoad struct {
	Element int
	X, Y    float64 // N/m
	Per     Measure
}

// Misfit is a spring longer than the distance it was meant to span: a strap set
// long, packing driven tight under a ledger, an anchor that came nearer. A
// negative misfit is a strap set short, a gap left over a ledger, an anchor that
// drew away. Several on one spring add up.
type Misfit struct {
	Spring int
	Longer float64 // m
}

// Settlement moves a support along its direction. Several on one support add up.
type Settlement struct {
	Support int
	By      float64 // m, or rad for a support against turning
}

// bear turns the loads of c into loads on the numbers, unless the frame bears them
// already.
func (s *Solver) bear(c *Case) error {
	if same(c.Loads, s.loads) && same(c.Spread, s.spreads) {
		return nil
	}
	if err := c.checkLoads(s); err != nil {
		return err
	}
	s.bears++
	s.loads, s.spreads = c.Loads, c.Spread
	on := &s.onFrame
	clear(on.load)
	clear(on.spread)
	for _, l := range c.Loads {
		at := &s.nodes[l.Node]
		on.load[at[0]] += l.X
		on.load[at[1]] += l.Y
		on.load[at[2]] += l.Couple
	}
	for _, l := range c.Spread {
		w := s.members[l.Element].perLength(l)
		on.spread[l.Element].X += w.X
		on.spread[l.Element].Y += w.Y
	}
	for i := range s.members {
		m := &s.members[i]
		on.given[i] = m.nodalLoads(on.spread[i])
		for a, f := range on.given[i] {
			on.load[m.number[a]] += f
		}
	}
	s.pull = s.pulled()
	return nil
}

// same reports whether two lists are equal; most are one.
func same[T comparable](a, b []T) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0] || slices.Equal(a, b))
}

// pulled is the sum of all forces on nodes, either way; couples have another unit.
func (s *Solver) pulled() (sum float64) {
	for n, f := range s.onFrame.load {
		if s.places[n].direction != Turning {
			sum += math.Abs(f)
		}
	}
	return sum
}

// apply turns what else c does into misfits and movements of supports.
func (s *Solver) apply(c *Case) {
	clear(s.longer)
	clear(s.gone)
	for _, l := range c.Misfits {
		s.longer[l.Spring] += l.Longer
	}
	for _, i := range c.Without {
		s.gone[i] = true
	}
	copy(s.base[:s.free], s.onFrame.load)
	clear(s.base[s.free:])
	s.settled = len(c.Settlements) > 0
	if s.settled {
		s.moveSupports(c.Settlements)
	}
	s.bearSoftened()
}

// moveSupports moves the supports while all unknowns are held: the forces that
// take part in that, reversed, are a load on the unknowns.
func (s *Solver) moveSupports(settlements []Settlement) {
	clear(s.u)
	for _, l := range settlements {
		s.u[s.free+l.Support] += l.By
	}
	for i := range s.members {
		m := &s.members[i]
		for a, f := range m.endForces(s.u) {
			s.base[m.number[a]] -= f
		}
	}
	copy(s.base[s.free:], s.u[s.free:])
	for i := range s.springs {
		s.longer[i] += s.springs[i].near(s.u)
	}
}
