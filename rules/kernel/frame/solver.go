package frame

import (
	"math"
	"math/rand/v2"
)

// Solver is a compiled model. It owns the workspace of a solve, so only one
// goroutine may use it at a time.
type Solver struct {
	numbering
	members  []member
	springs  []spring
	supports int
	size     float64 // diagonal of the box around the nodes
	halfBand int
	softened *softened    // from which the cases follow
	parts    []*stiffness // with some springs, where they don't, as many as most
	oldest   int          // of the parts, to be factored anew for one more set
	seed     []float64    // where the search for the softest motion begins
	steps    int          // limit of the search for taut springs

	// The loads at hand, which most cases of a frame share.
	bears   int // counts them, from 1
	loads   []NodalLoad
	spreads []SpreadLoad
	onFrame loads
	pull    float64 // sum of all forces on nodes, either way
	units   units

	// The case at hand.
	longer  []float64  // by spring: its misfit, and how far a support at its node moves toward its other end
	gone    []bool     // by spring
	settled bool       // supports move
	base    []float64  // load on the unknowns with that of the moving supports; then the movements of these
	taut    []bool     // by spring: works now
	held    *stiffness // that of the taut springs, where they were held by it
	reduced bool       // they were held by the softened springs
	near    []float64  // by spring: how far its node has moved toward its other end
	ahead   []float64  // the same, on trial
	u       []float64  // movement by number
	left    []float64  // load by number that nothing bears yet
	force   []float64  // by spring, tension positive
}

// loads are those of a frame, by its numbers.
type loads struct {
	load   []float64    // by number
	spread []Vector     // by element, per length
	given  [][6]float64 // by element: what spread puts on its ends
}

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
		bears:     1,
		size:      size(m.Nodes),
		halfBand:  n.halfBand(),
		seed:      seed(n.free),
		members:   make([]member, 0, len(m.Elements)),
		steps:     stepsPerSpring * len(m.Springs),
		onFrame:   loads{make([]float64, total), make([]Vector, len(m.Elements)), make([][6]float64, len(m.Elements))},
		units:     units{springs: make([]unit, len(m.Springs)), sums: make([][]float64, len(m.Springs))},
		longer:    make([]float64, len(m.Springs)),
		gone:      make([]bool, len(m.Springs)),
		base:      make([]float64, total),
		taut:      make([]bool, len(m.Springs)),
		near:      make([]float64, len(m.Springs)),
		ahead:     make([]float64, len(m.Springs)),
		u:         make([]float64, total),
		left:      make([]float64, total),
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
	s.softened = s.newSoftened()
	if !s.softened.sound() {
		return nil, s.mechanism(&s.softened.stiffness)
	}
	return s, nil
}

// assemble puts into k the stiffness without springs.
func (s *Solver) assemble(k *band) {
	clear(k.k)
	for i := range s.members {
		m := &s.members[i]
		own := m.matrix()
		for a, row := range m.number {
			for b := a; b < len(m.number); b++ {
				if column := m.number[b]; row < s.free && column < s.free {
					k.add(row, column, own[a][b])
				}
			}
		}
	}
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
	if err := s.settle(c); err != nil {
		return err
	}
	return s.tell(r)
}

// settle finds which springs are taut in c, and what then holds the frame.
func (s *Solver) settle(c *Case) error {
	if err := s.bear(c); err != nil {
		return err
	}
	if err := c.checkSupports(s); err != nil {
		return err
	}
	s.apply(c)
	return s.findTaut()
}

// tell puts the case at hand into r, by a factor of its own if the softened springs lose
// too many figures.
func (s *Solver) tell(r *Result) error {
	if err := s.report(r); err == nil || !s.reduced {
		return err
	}
	if !s.exact(s.near) {
		return s.mechanism(s.held)
	}
	s.pullAll()
	return s.report(r)
}
