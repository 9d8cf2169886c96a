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

// stiffen adds to k a spring of the stiffness by in place of its own. Rows past the
// last unknown are supports.
func (sp *spring) stiffen(k *band, by float64) {
	if sp.x < k.n {
		k.add(sp.x, sp.x, by*sp.toward.X*sp.toward.X)
	}
	if sp.y < k.n {
		k.add(sp.y, sp.y, by*sp.toward.Y*sp.toward.Y)
	}
	if sp.x < k.n && sp.y < k.n {
		k.add(sp.x, sp.y, by*sp.toward.X*sp.toward.Y)
	}
}

// push adds to the load f a force on the spring's node toward its other end. Numbers
// past the end of f are supports.
func (sp *spring) push(f []float64, by float64) {
	if sp.x < len(f) {
		f[sp.x] += by * sp.toward.X
	}
	if sp.y < len(f) {
		f[sp.y] += by * sp.toward.Y
	}
}

// near is how far the spring's node has moved toward its other end by u, likewise.
func (sp *spring) near(u []float64) (by float64) {
	if sp.x < len(u) {
		by += sp.toward.X * u[sp.x]
	}
	if sp.y < len(u) {
		by += sp.toward.Y * u[sp.y]
	}
	return by
}

// slack is the play of the one-sided spring i where its node has moved by near,
// negative when it is taut.
func (s *Solver) slack(i int, near []float64) float64 {
	return s.springs[i].sign * (near[i] + s.longer[i])
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

// findTaut finds which one-sided springs are taut, and what then holds the frame.
//
// Method. The energy of the frame is convex, the play of the slack springs being
// unknowns that cannot be negative. The search begins with every spring working
// both ways, lets go the one that works hardest against its sense, walks towards
// the new equilibrium, stops on the way wherever a slack spring comes taut again,
// and lets go the next: the primal active-set method (Nocedal and Wright,
// Numerical Optimization, 2nd edition, section 16.5, from memory). Where what is
// left is a mechanism the walk follows its motion, until a spring comes taut.
// It looks at the nodes of springs alone.
func (s *Solver) findTaut() error {
	for i := range s.taut {
		s.taut[i] = !s.gone[i]
	}
	if !s.hold(s.near) {
		return s.mechanism(s.held)
	}
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

// hold puts into near how far the nodes of springs have moved under the case if the
// taut springs work both ways and no others do. It reports whether they hold the
// frame; if not, near is as it was, and s.held is the mechanism.
func (s *Solver) hold(near []float64) bool { return s.fromSoftened(near) || s.exact(near) }

// pullAll finds the spring forces at s.near, and what all forces on nodes add up to,
// either way.
func (s *Solver) pullAll() (sum float64) {
	sum = s.pull
	for i := range s.springs {
		s.force[i] = 0
		if s.taut[i] {
			s.force[i] = -s.springs[i].k * (s.near[i] + s.longer[i])
		}
		sum += math.Abs(s.force[i])
	}
	return sum
}

// hardestWrongWay finds the spring forces at s.near, and the spring that works
// hardest against its sense, if any does.
func (s *Solver) hardestWrongWay() (hardest int, found bool) {
	worst := wrongWay * s.pullAll()
	for i, f := range s.force {
		if against := -s.springs[i].sign * f; against > worst {
			worst, hardest, found = against, i, true
		}
	}
	return hardest, found
}

// release lets spring i go and walks from s.near to the equilibrium without it,
// tightening the springs that come taut on the way.
func (s *Solver) release(i int) error {
	s.taut[i] = false
	for loose := i; ; loose = -1 {
		sound := s.hold(s.ahead)
		if !sound {
			s.follow(i)
		}
		j, way := s.firstTaut(sound, loose)
		switch {
		case j >= 0:
			for n := range s.near {
				s.near[n] += way * (s.ahead[n] - s.near[n])
			}
			s.taut[j] = true
		case sound:
			copy(s.near, s.ahead)
			return nil
		default:
			return s.mechanism(s.held)
		}
	}
}

// follow puts into s.ahead a point on the way of the mechanism that is left, in the
// sense that lets spring i slacken; how far is of no account.
func (s *Solver) follow(i int) {
	motion := s.held.motion
	most := 0.0
	for _, x := range motion {
		most = max(most, math.Abs(x))
	}
	try := func(scale float64) float64 {
		for n := range s.ahead {
			s.ahead[n] = s.near[n] + scale*s.springs[n].near(motion)
		}
		return s.slack(i, s.ahead) - s.slack(i, s.near)
	}
	if try(1/most) < 0 {
		try(-1 / most)
	}
}

// firstTaut finds the slack spring, other than loose, that comes taut first on
// the straight way from s.near to s.ahead, and at which share of the way; -1 if none
// does. The way of a mechanism, which is not sound, does not end at s.ahead.
func (s *Solver) firstTaut(sound bool, loose int) (first int, way float64) {
	first, way = -1, 1
	least := 0.0
	if !sound {
		way, least = math.Inf(1), still
	}
	for i := range s.springs {
		if s.taut[i] || s.gone[i] || i == loose || s.springs[i].sign == 0 {
			continue
		}
		play := s.slack(i, s.near)
		if lost := play - s.slack(i, s.ahead); lost > least {
			if at := max(play, 0) / lost; at < way {
				first, way = i, at
			}
		}
	}
	return first, way
}
