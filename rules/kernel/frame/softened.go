package frame

// softened is the frame on springs that are all at work and all so soft that the
// frame itself takes part of any load: the one factor from which every set of taut
// springs follows. Those that only push, as ledgers do, are in few cases; they have no
// part in it if the others hold the frame.
//
// Method. A spring that is stiffer, or does not work at all, is a change of rank one:
// its node bears a force beside that of the soft spring (the Woodbury formula: Golub and
// Van Loan, Matrix Computations, 3rd edition, p. 51, by a page that cites it). Of each
// spring
//
//	near = rest + S·extra,  Sᵢⱼ being near of spring i by a unit force at spring j,
//	extra = −(k−soft)·near − k·longer if it is taut, extra = soft·near if not,
//
// which is one symmetric equation for the force of each spring that is taut or soft. They
// are quasi-definite: positive definite for the springs that are taut, negative for the
// others if those hold the frame. What elimination leaves of such a matrix is
// quasi-definite again, whatever the order of its rows (Vanderbei, Linear Programming,
// chapter 20, section 2), so that no rows need be exchanged.
type softened struct {
	stiffness
	soft    []float64   // by spring
	columns [][]float64 // by spring: movements by a unit force on its node toward its other end; none until a case has it
	unit    []float64   // S, by rows
	bears   int         // which loads rest is the answer to
	rest    []float64   // movements by the loads alone
	resting []float64   // near by them, by spring
	extra   []float64   // by spring
	active  []int       // the springs with an extra force in the case at hand
	a       []float64   // the equations, of the active springs
	scale   []float64   // by row: the greatest that its diagonal is the sum of, in its sense
	y       []float64   // by row: the right-hand side, then the solution
}

const (
	// mostSprings is how many springs a frame may have for their equations to cost
	// less than a factor of the frame.
	mostSprings = 32
	// leastPivot is the share of a diagonal that elimination must leave of it: as many
	// figures are lost.
	leastPivot = 1e-6
	// asBent is the stiffness of a softened spring, by that of the frame in bending as
	// a whole, EI/L³: some 50 by a cantilever's 3 and a fixed beam's 192.
	asBent = 50
	// heldAtOneEnd is the share of the softest motion of N equal elements in a row, held
	// at one end, times N⁴. A frame that is held worse loses more figures.
	heldAtOneEnd = 0.5
)

// newSoftened is the stiffness of the frame on softened springs.
func (s *Solver) newSoftened() *softened {
	f := &softened{stiffness: *s.newStiffness(), rest: make([]float64, s.free), soft: make([]float64, len(s.springs))}
	n := float64(len(s.members))
	if s.soften(f, func(sp *spring) bool { return sp.sign >= 0 }); !(f.share > heldAtOneEnd/(n*n*n*n)) {
		s.soften(f, func(*spring) bool { return true })
	}
	if m := len(s.springs); m <= mostSprings && f.sound() {
		room := make([]float64, 2*m*m+4*m)
		f.unit, f.a, room = room[:m*m], room[m*m:2*m*m], room[2*m*m:]
		f.resting, f.extra, f.scale, f.y = room[:m], room[m:2*m], room[2*m:3*m], room[3*m:]
		f.active = make([]int, 0, m)
		f.columns = make([][]float64, m)
	}
	return f
}

// needColumns works out the columns of the active springs, where no case before had them.
func (s *Solver) needColumns() {
	f := s.softened
	for _, j := range f.active {
		if f.columns[j] != nil {
			continue
		}
		u := make([]float64, s.free)
		s.springs[j].push(u, 1)
		f.solve(u)
		f.columns[j] = u
		for i := range s.springs {
			f.unit[i*len(s.springs)+j] = s.springs[i].near(u)
		}
	}
}

// soften factors f on some of the springs, softened.
func (s *Solver) soften(f *softened, some func(*spring) bool) {
	bent := 0.0
	for i := range s.members {
		bent += s.members[i].section.EI / float64(len(s.members))
	}
	bent *= asBent / (s.size * s.size * s.size)
	s.assemble(&f.band)
	for i := range s.springs {
		if sp := &s.springs[i]; some(sp) {
			f.soft[i] = min(bent, sp.k/2)
			sp.stiffen(&f.band, f.soft[i])
		}
	}
	s.finish(&f.stiffness)
}

// bearSoftened finds what the loads at hand do to the softened springs.
func (s *Solver) bearSoftened() {
	f := s.softened
	if f.columns == nil || f.bears == s.bears && !s.settled {
		return
	}
	f.bears = s.bears
	if s.settled {
		f.bears = 0 // nothing that another case may use
	}
	copy(f.rest, s.base)
	f.solve(f.rest)
	for i := range s.springs {
		f.resting[i] = s.springs[i].near(f.rest)
	}
}

// fromSoftened does what exact does by the softened springs. It reports false also
// where it would lose too many figures.
func (s *Solver) fromSoftened(near []float64) bool {
	f := s.softened
	if f.columns == nil {
		return false
	}
	clear(f.extra)
	f.active = f.active[:0]
	for i, taut := range s.taut { // first, so that no step of the elimination leaves a frame that nothing holds
		if taut {
			f.active = append(f.active, i)
		}
	}
	for i, taut := range s.taut {
		if !taut && f.soft[i] > 0 {
			f.active = append(f.active, i)
		}
	}
	s.needColumns()
	if !s.solveExtra() {
		return false
	}
	for i := range s.springs {
		switch {
		case s.taut[i]:
			near[i] = -(f.extra[i] + s.springs[i].k*s.longer[i]) / (s.springs[i].k - f.soft[i])
		case f.soft[i] > 0:
			near[i] = f.extra[i] / f.soft[i]
		default:
			near[i] = f.nearBy(i)
		}
	}
	s.reduced = true
	return true
}

// solveExtra finds the extra forces of the active springs.
func (s *Solver) solveExtra() bool {
	f := s.softened
	n, m := len(f.active), len(s.springs)
	a, scale, y := f.a[:n*n], f.scale[:n], f.y[:n]
	for r, i := range f.active {
		row := a[r*n : (r+1)*n]
		for c, j := range f.active {
			row[c] = f.unit[i*m+j]
		}
		y[r] = -f.resting[i]
		if s.taut[i] {
			stiffer := s.springs[i].k - f.soft[i]
			row[r] += 1 / stiffer
			scale[r] = row[r]
			y[r] -= s.springs[i].k * s.longer[i] / stiffer
		} else {
			row[r] -= 1 / f.soft[i]
			scale[r] = -1 / f.soft[i]
		}
	}
	if !solveQuasidefinite(a, scale, y) {
		return false
	}
	for r, i := range f.active {
		f.extra[i] = y[r]
	}
	return true
}

// nearBy is how far the node of spring i has moved toward its other end by the loads and
// the extra forces.
func (f *softened) nearBy(i int) float64 {
	near, m := f.resting[i], len(f.resting)
	for _, j := range f.active {
		near += f.unit[i*m+j] * f.extra[j]
	}
	return near
}

// move puts into s.u how the frame has moved, from how it was held last.
func (s *Solver) move() {
	copy(s.u[s.free:], s.base[s.free:])
	if f := s.softened; s.reduced {
		f.superpose(s.u[:s.free], f.rest, f.columns)
	}
}

// superpose puts into out what the loads make of something, and beside it the extra
// forces, each by what a unit of it makes.
func (f *softened) superpose(out, loaded []float64, units [][]float64) {
	copy(out, loaded)
	at := f.active
	for ; len(at) > 3; at = at[4:] { // at one time, which spares three of four ways to memory
		w, x, y, z := f.extra[at[0]], f.extra[at[1]], f.extra[at[2]], f.extra[at[3]]
		a, b, c, d := units[at[0]][:len(out)], units[at[1]][:len(out)], units[at[2]][:len(out)], units[at[3]][:len(out)]
		for n := range out {
			out[n] += w*a[n] + x*b[n] + y*c[n] + z*d[n]
		}
	}
	for _, j := range at {
		by := units[j][:len(out)]
		for n := range out {
			out[n] += f.extra[j] * by[n]
		}
	}
}

// solveQuasidefinite overwrites y by the solution of a·x = y, a being symmetric and
// quasi-definite, by rows, and overwritten. It gives up where a pivot is small beside
// the scale of its row, or of the other sign.
func solveQuasidefinite(a, scale, y []float64) bool {
	n := len(y)
	for i := range n {
		row := a[i*n : (i+1)*n]
		if !(row[i]/scale[i] > leastPivot) {
			return false
		}
		for r := i + 1; r < n; r++ {
			f, below := row[r]/row[i], a[r*n:(r+1)*n]
			for c := r; c < n; c++ {
				below[c] -= f * row[c]
			}
			y[r] -= f * y[i]
		}
	}
	for i := n - 1; i >= 0; i-- {
		row := a[i*n : (i+1)*n]
		for c := i + 1; c < n; c++ {
			y[i] -= row[c] * y[c]
		}
		y[i] /= row[i]
	}
	return true
}
