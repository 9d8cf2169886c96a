package frame

import "math"

// spring is a Spring made ready for solving.
type spring struct {
	x, y   int    // numbers
	toward Vector // of unit length
	k      float64
	sign   float64 // of the force that it can bear: +1, -1, or 0 for either
}

func newSpring(s Spring, at [3]int) spring {
	away := math.Hypot(s.Toward.X, s.Toward.Y)
	sp := spring{x: at[0], y: at[1], toward: Vector{s.Toward.X / away, s.Toward.Y / away}, k: s.Stiffness}
	switch s.Sense {
	case TensionOnly:
		sp.sign = 1
	case CompressionOnly:
		sp.sign = -1
	}
	return sp
}

// stiffen adds the spring to k. Rows past the last unknown are supports.
func (sp *spring) stiffen(k *band) {
	if sp.x < k.n {
		k.add(sp.x, sp.x, sp.k*sp.toward.X*sp.toward.X)
	}
	if sp.y < k.n {
		k.add(sp.y, sp.y, sp.k*sp.toward.Y*sp.toward.Y)
	}
	if sp.x < k.n && sp.y < k.n {
		k.add(sp.x, sp.y, sp.k*sp.toward.X*sp.toward.Y)
	}
}

// stretch is how far spring i is longer than it would be by itself, when the
// frame has moved by u.
func (s *Solver) stretch(i int, u []float64) float64 {
	sp := &s.springs[i]
	return -(sp.toward.X*u[sp.x] + sp.toward.Y*u[sp.y]) - s.longer[i]
}

// slack is the play of the one-sided spring i at u, negative when it is taut.
func (s *Solver) slack(i int, u []float64) float64 {
	return -s.springs[i].sign * s.stretch(i, u)
}

// Limits of the search for the springs that work.
const (
	// wrongWay is the force against its sense, as a share of all loads and spring
	// forces, that a spring may seem to carry by rounding: a stiff spring's force
	// is its stiffness times a difference of movements, and loses some six of
	// sixteen figures.
	wrongWay = 1e-9
	// still is the movement, as a share of a mechanism's largest, that may be the
	// trace of other motions in it (see softest).
	still = 1e-6
	// stepsPerSpring bounds the search. Each step lowers the energy, so no set of
	// springs comes back but by rounding, and a spring seldom changes twice.
	stepsPerSpring = 10
)

// findTaut finds which one-sided springs are taut, and the movements s.u.
//
// Method. The energy of the frame is convex, the play of the slack springs being
// unknowns that cannot be negative. The search begins with every spring working
// both ways, lets go the one that works hardest against its sense, walks towards
// the new equilibrium, stops on the way wherever a slack spring comes taut again,
// and lets go the next: the primal active-set method (Nocedal and Wright,
// Numerical Optimization, 2nd edition, section 16.5, from memory). Where what is
// left is a mechanism the walk follows its motion, until a spring comes taut.
func (s *Solver) findTaut() error {
	for i := range s.taut {
		s.taut[i] = !s.gone[i]
	}
	k := s.factored()
	if !k.sound() {
		return s.mechanism(k)
	}
	s.equilibrium(k, s.u)
	for step := 0; ; step++ {
		i, found := s.hardestWrongWay()
		if !found {
			return nil
		}
		if step == s.steps {
			return &UnsettledError{Spring: i, Steps: step}
		}
		if err := s.release(i); err != nil {
			return err
		}
	}
}

// equilibrium puts into u the movements under the case if the taut springs work
// both ways and no others do.
func (s *Solver) equilibrium(k *stiffness, u []float64) {
	copy(u, s.base)
	for i := range s.springs {
		if !s.taut[i] {
			continue
		}
		sp := &s.springs[i]
		stretch := -s.longer[i] // while only the supports have moved
		if sp.x >= s.free {
			stretch -= sp.toward.X * u[sp.x]
		}
		if sp.y >= s.free {
			stretch -= sp.toward.Y * u[sp.y]
		}
		if sp.x < s.free {
			u[sp.x] += sp.k * stretch * sp.toward.X
		}
		if sp.y < s.free {
			u[sp.y] += sp.k * stretch * sp.toward.Y
		}
	}
	k.solve(u[:s.free])
}

// hardestWrongWay finds the spring forces at s.u, and the spring that works
// hardest against its sense, if any does.
func (s *Solver) hardestWrongWay() (hardest int, found bool) {
	scale := s.pull
	for i := range s.springs {
		s.force[i] = 0
		if s.taut[i] {
			s.force[i] = s.springs[i].k * s.stretch(i, s.u)
		}
		scale += math.Abs(s.force[i])
	}
	worst := wrongWay * scale
	for i, f := range s.force {
		if against := -s.springs[i].sign * f; against > worst {
			worst, hardest, found = against, i, true
		}
	}
	return hardest, found
}

// release lets spring i go and walks from s.u to the equilibrium without it,
// tightening the springs that come taut on the way.
func (s *Solver) release(i int) error {
	s.taut[i] = false
	for loose := i; ; loose = -1 {
		k := s.factored()
		if k.sound() {
			s.equilibrium(k, s.next)
		} else {
			s.follow(k, i)
		}
		j, way := s.firstTaut(k, loose)
		switch {
		case j >= 0:
			for n := range s.u {
				s.u[n] += way * (s.next[n] - s.u[n])
			}
			s.taut[j] = true
		case k.sound():
			copy(s.u, s.next)
			return nil
		default:
			return s.mechanism(k)
		}
	}
}

// follow puts into s.next a point on the way of the mechanism k, in the sense
// that lets spring i slacken; how far is of no account.
func (s *Solver) follow(k *stiffness, i int) {
	most := 0.0
	for _, x := range k.motion {
		most = max(most, math.Abs(x))
	}
	try := func(scale float64) float64 {
		copy(s.next, s.u)
		for n, x := range k.motion {
			s.next[n] += scale * x
		}
		return s.slack(i, s.next) - s.slack(i, s.u)
	}
	if try(1/most) < 0 {
		try(-1 / most)
	}
}

// firstTaut finds the slack spring, other than loose, that comes taut first on
// the straight way from s.u to s.next, and at which share of the way; -1 if none
// does. The way of a mechanism does not end at s.next.
func (s *Solver) firstTaut(k *stiffness, loose int) (first int, way float64) {
	first, way = -1, 1
	least := 0.0
	if !k.sound() {
		way, least = math.Inf(1), still
	}
	for i := range s.springs {
		if s.taut[i] || s.gone[i] || i == loose || s.springs[i].sign == 0 {
			continue
		}
		play := s.slack(i, s.u)
		if lost := play - s.slack(i, s.next); lost > least {
			if at := max(play, 0) / lost; at < way {
				first, way = i, at
			}
		}
	}
	return first, way
}
