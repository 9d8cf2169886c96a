package frame

import "math"

// member is an element made ready for solving.
type member struct {
	number   [6]int // of x, y and turning at I, then at J
	length   float64
	cos, sin float64 // of the angle from x to the line from I to J
	section  Section

	// The stiffness in the axes of the frame, by what it resists: a movement of one end
	// against the other, a turn of one end.
	xx, xy, yy float64 // force by a movement
	tx, ty     float64 // couple by a movement, and force by a turn
	near, far  float64 // couple by a turn of its own end, and of the other
}

// newMember is the element of section s from i to j. Its stiffness is that of
// Timoshenko's beam with Φ = 12·EI/(GA·L²), the nodal forces being exact:
// Przemieniecki, Theory of Matrix Structural Analysis, section 5.6 (from memory).
// The tests hold it to closed forms.
func newMember(i, j Vector, s Section) member {
	l := math.Hypot(j.X-i.X, j.Y-i.Y)
	m := member{length: l, cos: (j.X - i.X) / l, sin: (j.Y - i.Y) / l, section: s}

	phi := 12 * s.EI / (s.GA * l * l)
	axial := s.EA / l
	across := 12 * s.EI / (l * l * l * (1 + phi))
	lever := 6 * s.EI / (l * l * (1 + phi))
	m.near = (4 + phi) * s.EI / (l * (1 + phi))
	m.far = (2 - phi) * s.EI / (l * (1 + phi))
	m.xx = axial*m.cos*m.cos + across*m.sin*m.sin
	m.xy = (axial - across) * m.cos * m.sin
	m.yy = axial*m.sin*m.sin + across*m.cos*m.cos
	m.tx, m.ty = -lever*m.sin, lever*m.cos
	return m
}

// matrix is the stiffness by the ways to move of both ends.
func (m *member) matrix() [6][6]float64 {
	return [6][6]float64{
		{m.xx, m.xy, m.tx, -m.xx, -m.xy, m.tx},
		{m.xy, m.yy, m.ty, -m.xy, -m.yy, m.ty},
		{m.tx, m.ty, m.near, -m.tx, -m.ty, m.far},
		{-m.xx, -m.xy, -m.tx, m.xx, m.xy, -m.tx},
		{-m.xy, -m.yy, -m.ty, m.xy, m.yy, -m.ty},
		{m.tx, m.ty, m.far, -m.tx, -m.ty, m.near},
	}
}

// endForces is what the nodes must exert on the member's ends, in the axes of
// the frame, to give it the movements u of all unknowns: matrix times these.
func (m *member) endForces(u []float64) [6]float64 {
	n := &m.number
	x, y := u[n[0]]-u[n[3]], u[n[1]]-u[n[4]]
	i, j := u[n[2]], u[n[5]]
	fx, fy := m.xx*x+m.xy*y+m.tx*(i+j), m.xy*x+m.yy*y+m.ty*(i+j)
	couple := m.tx*x + m.ty*y
	return [6]float64{fx, fy, couple + m.near*i + m.far*j, -fx, -fy, couple + m.far*i + m.near*j}
}

// nodalLoads replaces the load w per length, in the axes of the frame, by loads
// on the ends: half the load on each, and the couples q·L²/12 of the part q
// across the member, which shear strain leaves as they are, by symmetry.
func (m *member) nodalLoads(w Vector) [6]float64 {
	x, y := w.X*m.length/2, w.Y*m.length/2
	couple := m.across(w) * m.length * m.length / 12
	return [6]float64{x, y, couple, x, y, -couple}
}

// along and across are the parts of p in the member's own axes: from I to J, and
// to the left of that.
func (m *member) along(p Vector) float64  { return m.cos*p.X + m.sin*p.Y }
func (m *member) across(p Vector) float64 { return m.cos*p.Y - m.sin*p.X }

// perLength turns a spread load into one by the member's length.
func (m *member) perLength(l SpreadLoad) Vector {
	if l.Per == PerProjection {
		return Vector{l.X * math.Abs(m.sin), l.Y * math.Abs(m.cos)}
	}
	return Vector{l.X, l.Y}
}
