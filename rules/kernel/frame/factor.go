package frame

import (
	"math"
	"slices"
)

// stiffness is the factored stiffness of the frame with some of its springs.
type stiffness struct {
	band
	taut   []bool
	share  float64   // of the softest motion
	motion []float64 // the softest motion
}

// leastShare is the softest motion that still counts as resisted. The factor is
// that of a matrix wrong by some ten roundings of its diagonal, 1e-15, so at
// 1e-12 a motion is known to three figures. The softest motion of N equal
// elements in a row, held at one end, has a share of about 0.5/N⁴: 3e-8 for 64.
const leastShare = 1e-12

func (k *stiffness) sound() bool { return k.share > leastShare }

// newStiffness has room for a factor, with no springs yet.
func (s *Solver) newStiffness() *stiffness {
	return &stiffness{band: newBand(s.free, s.halfBand), taut: make([]bool, len(s.springs)), motion: make([]float64, s.free)}
}

// factor factors k anew for its springs.
func (s *Solver) factor(k *stiffness) {
	s.assemble(&k.band)
	for i := range s.springs {
		if k.taut[i] {
			s.springs[i].stiffen(&k.band, s.springs[i].k)
		}
	}
	s.finish(k)
}

// finish factors k, and looks for its softest motion.
func (s *Solver) finish(k *stiffness) {
	k.band.factor()
	k.share = k.softest(s.seed, k.motion)
}

// mostParts is how many sets of springs stay factored: the cases of a frame come
// back to few.
const mostParts = 16

// factored is the stiffness with the springs that are taut now, factored only if
// none at hand will do.
func (s *Solver) factored() *stiffness {
	for _, k := range s.parts {
		if slices.Equal(s.taut, k.taut) {
			return k
		}
	}
	k := s.another()
	copy(k.taut, s.taut)
	s.factor(k)
	return k
}

// another is a stiffness to be factored: a new one, or in place of the oldest.
func (s *Solver) another() *stiffness {
	if len(s.parts) < mostParts {
		s.parts = append(s.parts, s.newStiffness())
		return s.parts[len(s.parts)-1]
	}
	k := s.parts[s.oldest]
	s.oldest = (s.oldest + 1) % mostParts
	return k
}

// exact puts into near how far the nodes of springs have moved under the case if the
// taut springs work both ways and no others do, by a factor of just these. It reports
// whether they hold the frame; if not, near is as it was.
func (s *Solver) exact(near []float64) bool {
	s.held = s.factored()
	s.reduced = false
	if !s.held.sound() {
		return false
	}
	u := s.u[:s.free]
	copy(u, s.base)
	for i := range s.springs {
		if s.taut[i] {
			s.springs[i].push(u, -s.springs[i].k*s.longer[i])
		}
	}
	s.held.solve(u)
	for i := range near {
		near[i] = s.springs[i].near(u)
	}
	return true
}

// alike is how near two places move, by themselves, to be as soft: symmetry
// makes them so, and their last bits differ between processors.
const alike = 1e-6

// mechanism names the place where the softest motion of k shows most, by the
// resistance its diagonal promised there, which has one unit for all directions;
// or the first place where nothing was promised at all.
func (s *Solver) mechanism(k *stiffness) error {
	most, at := -1.0, 0
	for i, x := range k.motion {
		work := x * x * k.diag[i]
		if k.diag[i] == 0 {
			work = math.Inf(1)
		}
		if work > most+alike*math.Abs(most) {
			most, at = work, i
		}
	}
	return &MechanismError{Node: s.places[at].node, Direction: s.places[at].direction}
}
