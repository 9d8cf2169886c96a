package frame

import "math"

// member is an element made ready for solving.
type member struct {
	number   [6]int // of x, y and turning at I, then at J
	length   float64
	cos, sin float64 // of the angle from x to the line from I to J
	section  Section
	k        [6][6]float64 // stiffness in the axes of the frame
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
	near := (4 + phi) * s.EI / (l * (1 + phi))
	far := (2 - phi) * s.EI / (l * (1 + phi))

	xx := axial*m.cos*m.cos + across*m.sin*m.sin
	xy := (axial - across) * m.cos * m.sin
	yy := axial*m.sin*m.sin + across*m.cos*m.cos
	tx, ty := -lever*m.sin, lever*m.cos
	m.k = [6][6]float64{
		{xx, xy, tx, -xx, -xy, tx},
		{xy, yy, ty, -xy, -yy, ty},
		{tx, ty, near, -tx, -ty, far},
		{-xx, -xy, -tx, xx, xy, -tx},
		{-xy, -yy, -ty, xy, yy, -ty},
		{tx, ty, far, -tx, -ty, near},
	}
	return m
}

// endForces is what the nodes must exert on the member's ends, in the axes of
// the frame, to give it the movements u of all unknowns.
func (m *member) endForces(u []float64) [6]float64 {
	var end, force [6]float64
	for a, id := range m.number {
		end[a] = u[id]
	}
	for a := range force {
		row := &m.k[a]
		force[a] = row[0]*end[0] + row[1]*end[1] + row[2]*end[2] +
			row[3]*end[3] + row[4]*end[4] + row[5]*end[5]
	}
	return force
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
