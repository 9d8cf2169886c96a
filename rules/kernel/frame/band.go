package frame

import "math"

// band is a symmetric matrix K of n rows with b diagonals above the main one; its
// Cholesky factor U, K = UᵀU, once factor has run. Only the upper band is stored,
// by rows: k[i*(b+1)+d] is K(i, i+d), so len(k) = n·(b+1). For n = 4, b = 2 (the
// places · are never used):
//
//	00 01 02 | 11 12 13 | 22 23  · | 33  ·  ·
type band struct {
	n, b int
	k    []float64
	diag []float64 // K(i, i) before factoring
}

func newBand(n, b int) band {
	return band{n: n, b: b, k: make([]float64, n*(b+1)), diag: make([]float64, n)}
}

// add adds v to K(i, j) and K(j, i), which are one place.
func (m *band) add(i, j int, v float64) {
	if i > j {
		i, j = j, i
	}
	m.k[i*(m.b+1)+j-i] += v
}

// roundoff is half the distance from 1 to the next float64: what one rounding
// can change, as a share.
const roundoff = 0x1p-53

// factor overwrites K by U, in n·b² steps, with the reciprocals of U's diagonal
// in place of the diagonal, so that solve need not divide.
//
// A pivot no larger than the rounding of its own K(i, i) is lifted to that. K is
// then singular as far as the arithmetic can tell, and U belongs to a neighbour
// of it in whose solutions the motion that nothing resists stands out: the
// caller must look at softest before it believes a solution.
//
// Source: Golub and Van Loan, Matrix Computations, 4th edition, section 4.3 (from
// memory); held to an outside library in the tests.
func (m *band) factor() {
	w := m.b + 1
	for i := range m.n {
		m.diag[i] = m.k[i*w]
	}
	for i := range m.n {
		row := m.k[i*w : i*w+min(w, m.n-i)]
		least := roundoff * m.diag[i]
		if !(row[0] > least) {
			row[0] = least
		}
		row[0] = 1 / math.Sqrt(row[0])
		for d := 1; d < len(row); d++ {
			row[d] *= row[0]
		}
		for d := 1; d < len(row); d++ {
			f, rest := row[d], row[d:]
			below := m.k[(i+d)*w : (i+d)*w+len(rest)]
			for e := range rest {
				below[e] -= f * rest[e]
			}
		}
	}
}

// solve overwrites f by the solution u of K u = f, len(f) = n, in 2·n·b steps.
func (m *band) solve(f []float64) {
	w := m.b + 1
	for i := range m.n {
		row := m.k[i*w : i*w+min(w, m.n-i)]
		right, rest := row[1:], f[i+1:i+len(row)]
		v := f[i] * row[0]
		for d := range right {
			rest[d] -= right[d] * v
		}
		f[i] = v
	}
	for i := m.n - 1; i >= 0; i-- {
		row := m.k[i*w : i*w+min(w, m.n-i)]
		right, rest := row[1:], f[i+1:i+len(row)]
		v := f[i]
		for d := range right {
			v -= right[d] * rest[d]
		}
		f[i] = v * row[0]
	}
}

// softest returns how stiff K is in its softest motion, as a share of what its
// diagonal promises, and puts that motion into x: the least of xᵀKx/xᵀDx, where
// D is the diagonal of K. The share has no unit, and multiplying the unit of one
// unknown does not change it. K must be factored; seed has irregular entries.
//
// Method. One inverse iteration from the seed: x = K⁻¹√D·seed contains each
// motion in proportion to its softness, so a motion of share 1e-15 drowns the
// rest, which in a sound frame begins near 1e-8. The result is never less than
// the true least, and close to it where it matters. (Derived.) With no unknowns
// at all nothing moves, and the share is infinite.
func (m *band) softest(seed, x []float64) float64 {
	if m.n == 0 {
		return math.Inf(1)
	}
	for i, d := range m.diag {
		x[i] = math.Sqrt(d) * seed[i]
	}
	m.solve(x)
	var work, promise float64
	for i, d := range m.diag {
		work += x[i] * math.Sqrt(d) * seed[i]
		promise += x[i] * x[i] * d
	}
	return work / promise
}
