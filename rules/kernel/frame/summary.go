package frame

import "math"

// Summary is the part of a [Result] that many cases of one frame are solved for. The
// zero Summary is ready for use.
type Summary struct {
	X, Y     []float64     // by node: how it has moved, m
	N, M     []float64     // by end of element, I and J of the first, then of the next: as Forces
	Supports []float64     // as those of a Result
	Springs  []SpringForce // likewise

	all []float64 // what the numbers above are parts of
}

// Summarize solves c as [Solver.Solve] does, errors included, and puts into out no more
// than its fields hold. Where a frame has many cases it costs a fraction of Solve.
//
// Method. What a summary holds is linear in the extra forces of the softened springs:
// that of the loads alone and that of a unit force at each spring are worked out once,
// each with what its rounding leaves out of balance. Their sum is taken if that is
// within what Solve allows; else Solve is.
func (s *Solver) Summarize(c *Case, out *Summary) error {
	out.Springs = out.Springs[:0]
	if err := s.settle(c); err != nil {
		return err
	}
	if s.reduced && !s.settled && s.sum(out) {
		out.Springs = s.springForces(out.Springs)
		return nil
	}
	r := &s.units.room
	r.clear()
	if err := s.tell(r); err != nil {
		return err
	}
	out.take(s, r)
	out.Springs = append(out.Springs, r.Springs...)
	return nil
}

// units are the states of the softened frame that others are sums of.
type units struct {
	bears   int // which loads loaded is of
	loaded  unit
	springs []unit      // by spring: a unit force on its node toward its other end; none until a case has it
	sums    [][]float64 // the numbers of these
	room    Result
}

// unit is one such state.
type unit struct {
	Summary
	left float64 // the greatest force out of balance, or couple by the size of the frame
}

// sum adds up the summary of the case at hand. It reports whether that is in balance.
func (s *Solver) sum(out *Summary) bool {
	f, u := s.softened, &s.units
	s.needUnits()
	out.divide(s)
	f.superpose(out.all, u.loaded.all, u.sums)

	left, force, couple := u.loaded.left, 0.0, 0.0
	for _, i := range f.active {
		bears := f.extra[i] - f.soft[i]*f.nearBy(i)
		left += math.Abs(f.extra[i])*u.springs[i].left + math.Abs(bears-s.force[i])
		force = greater(force, s.force[i])
	}
	for end, n := range out.N {
		force, couple = greater(force, n), greater(couple, out.M[end])
	}
	largest := max(force, couple/s.size)
	return finite(largest) && left <= outOfBalance*largest
}

// needUnits works out what the case at hand is a sum of, where no case before it has.
func (s *Solver) needUnits() {
	f, u := s.softened, &s.units
	if u.bears != s.bears {
		u.bears = s.bears
		s.workOut(&u.loaded, -1, f.rest, &s.onFrame)
	}
	for _, i := range f.active {
		if u.sums[i] == nil {
			s.workOut(&u.springs[i], i, f.columns[i], nil)
			u.sums[i] = u.springs[i].all
		}
	}
	s.pullAll()
}

// workOut is the state of the softened frame moved by u under loads, if there are any, and
// a unit force at one spring, or at none if that is below 0.
func (s *Solver) workOut(out *unit, at int, u []float64, by *loads) {
	copy(s.u, u)
	clear(s.u[s.free:])
	for i := range s.springs {
		s.force[i] = -s.softened.soft[i] * s.springs[i].near(u)
		if i == at {
			s.force[i]++
		}
	}
	r := &s.units.room
	r.clear()
	s.fill(r, by)
	out.take(s, r)
	out.left = 0
	for i, left := range s.left[:s.free] {
		out.left = max(out.left, math.Abs(s.comparable(i, left))) // which keeps what is no number
	}
}

// take takes the summary out of a result.
func (out *Summary) take(s *Solver, r *Result) {
	out.divide(s)
	for i, n := range r.Nodes {
		out.X[i], out.Y[i] = n.X, n.Y
	}
	for e := range s.members {
		for end, at := range r.Ends(e) {
			out.N[2*e+end], out.M[2*e+end] = at.N, at.M
		}
	}
	copy(out.Supports, r.Supports)
}

// divide gives each list of numbers its part of all.
func (out *Summary) divide(s *Solver) {
	nodes, ends := len(s.nodes), 2*len(s.members)
	if n := 2*nodes + 2*ends + s.supports; len(out.all) != n {
		out.all = make([]float64, n)
	}
	rest := out.all
	take := func(n int) (part []float64) {
		part, rest = rest[:n:n], rest[n:]
		return part
	}
	out.X, out.Y, out.N, out.M, out.Supports = take(nodes), take(nodes), take(ends), take(ends), take(s.supports)
}
