package frame

// softened is the frame on springs that are all at work and all so soft that the
// frame itself takes part of any load: the one factor from which every set of taut
// springs follows.
//
// Method. A spring that is stiffer, or does not work at all, is a change of rank one:
// its node bears a force beside that of the soft spring (the Woodbury formula: Golub and
// Van Loan, Matrix Computations, 3rd edition, p. 51, by a page that cites it). Of each
// spring
//
//	near = rest + S·extra,  Sᵢⱼ being near of spring i by a unit force at spring j,
//	extra = −(k−soft)·near − k·longer if it is taut, extra = soft·near if not,
//
// which is one symmetric equation a spring for the forces. It is quasi-definite:
// positive definite for the springs that are taut, negative for the others if those
// hold the frame. What elimination leaves of such a matrix is quasi-definite again,
// whatever the order of its rows (Vanderbei, Linear Programming, chapter 20, section 2),
// so that no rows need be exchanged.
type softened struct {
	stiffness
	soft    []float64   // by spring
	columns [][]float64 // by spring: movements by a unit force on its node toward its other end
	unit    []float64   // S, by rows
	bears   int         // which loads rest is the answer to
	rest    []float64   // movements by the loads alone
	near    []float64   // of them, by spring
	a       []float64   // the equations
	scale   []float64   // by row: the greatest that its diagonal is the sum of, in its sense
	extra   []float64
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
)

// newSoftened is the stiffness of the frame on softened springs, with its answers to
// forces at springs.
func (s *Solver) newSoftened() *softened {
	f := &softened{stiffness: *s.newStiffness(), rest: make([]float64, s.free)}
	copy(f.k, s.bare)
	bent := 0.0
	for i := range s.members {
		bent += s.members[i].section.EI / float64(len(s.members))
	}
	bent *= asBent / (s.size * s.size * s.size)
	for i := range s.springs {
		sp := &s.springs[i]
		f.soft = append(f.soft, min(bent, sp.k/2))
		sp.stiffen(&f.band, f.soft[i])
	}
	s.finish(&f.stiffness)
	if m := len(s.springs); m <= mostSprings && f.sound() {
		f.near, f.a, f.scale, f.extra = make([]float64, m), make([]float64, m*m), make([]float64, m), make([]float64, m)
		for j := range s.springs {
			u := make([]float64, s.free)
			s.springs[j].push(u, 1)
			f.solve(u)
			f.columns = append(f.columns, u)
		}
		for i := range s.springs {
			for _, u := range f.columns {
				f.unit = append(f.unit, s.springs[i].near(u))
			}
		}
	}
	return f
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
		f.near[i] = s.springs[i].near(f.rest)
	}
}

// fromSoftened does what exact does by the softened springs. It reports false also
// where it would lose too many figures.
func (s *Solver) fromSoftened(near []float64) bool {
	f := s.softened
	if f.columns == nil {
		return false
	}
	copy(f.a, f.unit)
	m := len(s.springs)
	for i := range s.springs {
		stiffer := s.springs[i].k - f.soft[i]
		f.extra[i] = -f.near[i]
		if s.taut[i] {
			f.a[i*m+i] += 1 / stiffer
			f.scale[i] = f.a[i*m+i]
			f.extra[i] -= s.springs[i].k * s.longer[i] / stiffer
		} else {
			f.a[i*m+i] -= 1 / f.soft[i]
			f.scale[i] = -1 / f.soft[i]
		}
	}
	if !solveQuasidefinite(f.a, f.scale, f.extra) {
		return false
	}
	for i, x := range f.extra {
		if s.taut[i] {
			near[i] = -(x + s.springs[i].k*s.longer[i]) / (s.springs[i].k - f.soft[i])
		} else {
			near[i] = x / f.soft[i]
		}
	}
	s.reduced = true
	return true
}

// move puts into s.u how the frame has moved, from how it was held last.
func (s *Solver) move() {
	copy(s.u[s.free:], s.base[s.free:])
	if !s.reduced {
		return
	}
	f, u := s.softened, s.u[:s.free]
	copy(u, f.rest)
	j := 0
	for ; j+3 < len(f.extra); j += 4 { // at one time, which spares three of four ways to memory
		w, x, y, z := f.extra[j], f.extra[j+1], f.extra[j+2], f.extra[j+3]
		a, b, c, d := f.columns[j][:len(u)], f.columns[j+1][:len(u)], f.columns[j+2][:len(u)], f.columns[j+3][:len(u)]
		for n := range u {
			u[n] += w*a[n] + x*b[n] + y*c[n] + z*d[n]
		}
	}
	for ; j < len(f.extra); j++ {
		for n, by := range f.columns[j] {
			u[n] += f.extra[j] * by
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
