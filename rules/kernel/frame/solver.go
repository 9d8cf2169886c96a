package frame

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Solver is a compiled model. It owns the workspace of a solve, so only one
// goroutine may use it at a time.
type Solver struct {
	numbering
	members  []member
	springs  []spring
	supports int
	size     float64      // diagonal of the box around the nodes
	bare     []float64    // stiffness without springs, stored as in a band
	whole    stiffness    // with every spring
	parts    []*stiffness // with other sets of springs, as many as most
	oldest   int          // of the parts, to be factored anew for one more set
	seed     []float64    // where the search for the softest motion begins
	steps    int          // limit of the search for taut springs

	// The loads at hand, which most cases of a frame share.
	loads   []NodalLoad
	spreads []SpreadLoad
	load    []float64    // by number
	pull    float64      // sum of all forces on nodes, either way
	spread  []Vector     // by element, per length
	given   [][6]float64 // by element: what spread puts on its ends

	// The case at hand.
	longer []float64 // by spring: its misfit
	gone   []bool    // by spring
	base   []float64 // load on the unknowns with that of the moving supports; then the movements of these
	taut   []bool    // by spring: works now
	u      []float64 // movement by number
	next   []float64 // the same, on trial
	force  []float64 // by spring, tension positive
}

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

// Compile makes m ready for solving. Later changes to m do not reach the Solver.
//
// Errors. A *MechanismError if m can move with all its springs in place; a plain
// error that names the part if a value is not finite, a stiffness not positive, an
// index or an enumeration out of range, an element without length.
//
// Method. The direct stiffness method: the elements' stiffnesses are added up in a
// band, the nodes numbered to keep it narrow, and factored by Cholesky; each step
// names its source.
func (m *Model) Compile() (*Solver, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	n := number(m)
	total := n.free + len(m.Supports)
	s := &Solver{
		numbering: n,
		supports:  len(m.Supports),
		size:      size(m.Nodes),
		seed:      seed(n.free),
		members:   make([]member, 0, len(m.Elements)),
		steps:     stepsPerSpring * len(m.Springs),
		load:      make([]float64, total),
		spread:    make([]Vector, len(m.Elements)),
		given:     make([][6]float64, len(m.Elements)),
		longer:    make([]float64, len(m.Springs)),
		gone:      make([]bool, len(m.Springs)),
		base:      make([]float64, total),
		taut:      make([]bool, len(m.Springs)),
		u:         make([]float64, total),
		next:      make([]float64, total),
		force:     make([]float64, len(m.Springs)),
	}
	for e, el := range m.Elements {
		b := newMember(m.Nodes[el.I], m.Nodes[el.J], el.Section)
		b.number = n.ends[e]
		s.members = append(s.members, b)
	}
	for _, sp := range m.Springs {
		s.springs = append(s.springs, newSpring(sp, n.nodes[sp.Node]))
	}
	s.assemble()
	if !s.whole.sound() {
		return nil, s.mechanism(&s.whole)
	}
	return s, nil
}

// assemble builds the stiffness without springs, and factors it with all of them.
func (s *Solver) assemble() {
	half := s.halfBand()
	k := newBand(s.free, half)
	for i := range s.members {
		m := &s.members[i]
		for a, row := range m.number {
			for b := a; b < len(m.number); b++ {
				if column := m.number[b]; row < s.free && column < s.free {
					k.add(row, column, m.k[a][b])
				}
			}
		}
	}
	s.bare = k.k
	all := slices.Repeat([]bool{true}, len(s.springs))
	s.whole = stiffness{band: newBand(s.free, half), taut: all, motion: make([]float64, s.free)}
	s.factor(&s.whole)
}

// factor factors k anew for its springs.
func (s *Solver) factor(k *stiffness) {
	copy(k.k, s.bare)
	for i := range s.springs {
		if k.taut[i] {
			s.springs[i].stiffen(&k.band)
		}
	}
	k.band.factor()
	k.share = k.softest(s.seed, k.motion)
}

// mostParts is how many sets of springs stay factored beside the whole: the cases
// of a frame come back to few.
const mostParts = 16

// factored is the stiffness with the springs that are taut now, factored only if
// none at hand will do.
func (s *Solver) factored() *stiffness {
	if slices.Equal(s.taut, s.whole.taut) {
		return &s.whole
	}
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
		k := &stiffness{
			band: newBand(s.free, s.whole.b), taut: make([]bool, len(s.springs)), motion: make([]float64, s.free),
		}
		s.parts = append(s.parts, k)
		return k
	}
	k := s.parts[s.oldest]
	s.oldest = (s.oldest + 1) % mostParts
	return k
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

// seed is irregular, so that no motion of a frame is at right angles to it, and
// the same on every run.
func seed(n int) []float64 {
	random := rand.New(rand.NewPCG(1, 2))
	v := make([]float64, n)
	for i := range v {
		v[i] = random.NormFloat64()
	}
	return v
}

func size(nodes []Vector) float64 {
	low, high := nodes[0], nodes[0]
	for _, p := range nodes {
		low = Vector{min(low.X, p.X), min(low.Y, p.Y)}
		high = Vector{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return math.Hypot(high.X-low.X, high.Y-low.Y)
}

// Solve finds the movements and forces of the frame under c and puts them into r,
// whose slices are used again; once r has held a result of this frame, Solve
// allocates nothing. Of a frame that hangs in balance on a single spring the forces
// are right, and the turn is one of many.
//
// Errors. A *MechanismError if the springs that c leaves, or those among them that
// stay taut, do not hold the frame; an *UnsettledError if these do not settle; a
// *ResidualError if the forces found do not balance the loads; a plain error that
// names the part of c that is not finite or does not exist. After an error r holds
// nothing.
func (s *Solver) Solve(c *Case, r *Result) error {
	r.clear()
	if err := s.bear(c); err != nil {
		return err
	}
	if err := c.checkSupports(s); err != nil {
		return err
	}
	s.apply(c)
	if err := s.findTaut(); err != nil {
		return err
	}
	return s.report(r)
}
