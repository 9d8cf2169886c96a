package passage

import (
	"math"
	"math/rand/v2"
)

// Turn is how a body is held: the world's three axes, as unit vectors of the
// body. The place of the body's point p along world axis i is Turn[i]·p, and
// where the body's origin is.
type Turn [3]Vec

// Pose is a turn, and the place of the body's origin in the world.
type Pose struct {
	Turn Turn
	At   Vec
}

// quaternion is a turn as one real and three imaginary parts, of length 1.
type quaternion [4]float64

// turn is the matrix of a quaternion of length 1: its closed form.
func (q quaternion) turn() Turn {
	w, a, b, c := q[0], q[1], q[2], q[3]
	return Turn{
		{w*w + a*a - b*b - c*c, 2 * (a*b - w*c), 2 * (a*c + w*b)},
		{2 * (a*b + w*c), w*w - a*a + b*b - c*c, 2 * (b*c - w*a)},
		{2 * (a*c - w*b), 2 * (b*c + w*a), w*w - a*a - b*b + c*c},
	}
}

// quaternion is that of a turn, its greatest part positive.
func (t Turn) quaternion() quaternion {
	// Four times the products of each part with the greatest. Source: S. W.
	// Shepperd, Quaternion from Rotation Matrix, 1978, from memory.
	squares := [4]float64{
		1 + t[0].X + t[1].Y + t[2].Z, 1 + t[0].X - t[1].Y - t[2].Z,
		1 - t[0].X + t[1].Y - t[2].Z, 1 - t[0].X - t[1].Y + t[2].Z,
	}
	k := 0
	for i, s := range squares {
		if s > squares[k] {
			k = i
		}
	}
	x, y, z := t[2].Y-t[1].Z, t[0].Z-t[2].X, t[1].X-t[0].Y
	xy, xz, yz := t[0].Y+t[1].X, t[0].Z+t[2].X, t[1].Z+t[2].Y
	rows := [4]quaternion{
		{squares[0], x, y, z}, {x, squares[1], xy, xz}, {y, xy, squares[2], yz}, {z, xz, yz, squares[3]},
	}
	return rows[k].unit()
}

func (q quaternion) unit() quaternion {
	l := math.Sqrt(q.dot(q))
	for i := range q {
		q[i] /= l
	}
	return q
}

// anyQuaternion is a turn in a random direction, each as likely.
func anyQuaternion(r *rand.Rand) (q quaternion) {
	for i := range q {
		q[i] = r.NormFloat64()
	}
	return q.unit()
}

// nearby is a random turn within about an angle, in rad, of one.
func (q quaternion) nearby(r *rand.Rand, by float64) quaternion {
	for i := range q {
		q[i] += by / 2 * r.NormFloat64()
	}
	return q.unit()
}

func (q quaternion) dot(r quaternion) float64 {
	return q[0]*r[0] + q[1]*r[1] + q[2]*r[2] + q[3]*r[3]
}

// apart is the angle of the rotation that takes one turn to the other.
func (q quaternion) apart(r quaternion) float64 {
	return 2 * math.Acos(min(1, math.Abs(q.dot(r))))
}

// between is the turn part of the way from one to another, by the short way and
// at an even rate.
func (q quaternion) between(r quaternion, part float64) quaternion {
	d := q.dot(r)
	sign := 1.0
	if d < 0 {
		d, sign = -d, -1
	}
	f, g := 1-part, part
	if angle := math.Acos(min(1, d)); angle > 1e-6 {
		s := math.Sin(angle)
		f, g = math.Sin((1-part)*angle)/s, math.Sin(part*angle)/s
	}
	for i := range q {
		q[i] = f*q[i] + sign*g*r[i]
	}
	return q.unit()
}

// Between is the turn part of the way from t to u, by the short way and at an even
// rate, part from 0 to 1. Half a turn apart, where both ways are as short, either
// may be taken. Source: spherical linear interpolation of quaternions, its closed
// form.
func (t Turn) Between(u Turn, part float64) Turn {
	return t.quaternion().between(u.quaternion(), part).turn()
}

// Apart is the angle of the rotation from t to u, in rad from 0 to π: 2·acos of the
// product of their quaternions.
func (t Turn) Apart(u Turn) float64 { return t.quaternion().apart(u.quaternion()) }

// Tilt is how far the body's length and the long side of its section's box are
// off level, in rad from 0 to π/2.
func (t Turn) Tilt() (length, chord float64) {
	return math.Asin(min(1, math.Abs(t[2].X))), math.Asin(min(1, math.Abs(t[2].Y)))
}

// about is the turn of an upright body axis u, with the world's first axis at an
// angle from a fixed direction square to it.
func about(u Vec, angle float64) Turn {
	a := Vec{Y: 1}
	if math.Abs(u.Y) > 0.9 {
		a = Vec{X: 1}
	}
	f := a.minus(u.times(a.dot(u)))
	f = f.times(1 / f.length())
	g := cross3(u, f)
	s, c := math.Sincos(angle)
	e := f.times(c).add(g.times(s))
	return Turn{e, cross3(u, e), u}
}

func cross3(a, b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// cell is a box of turns: quaternions (1, v) made unit length, v within half of
// at on each axis. The cube |v| ≤ 1 holds those whose real part is the greatest
// of the four.
type cell struct{ at, half [3]float64 }

func (c cell) quaternion() quaternion {
	return quaternion{1, c.at[0], c.at[1], c.at[2]}.unit()
}

// angle is a bound of rotation, as its sine and cosine.
type angle struct{ sin, cos float64 }

// radius is an angle within which every turn of the cell is from its middle
// one. For v and v + d the quaternions are apart by the angle whose sine is
// |(1, v) ∧ (1, v + d)| by both lengths, and the wedge's square is
// |d|² + |v × d|², at most |d|²·(1 + |v|²): so sine ≤ |d|/√(1 + |v + d|²). A
// rotation is twice that angle. Derived.
func (c cell) radius() angle {
	d, far := 0.0, 1.0
	for i, h := range c.half {
		d += h * h
		near := max(0, math.Abs(c.at[i])-h)
		far += near * near
	}
	s := min(1, d/far) // the sine's square
	return angle{sin: 2 * math.Sqrt(s*(1-s)), cos: 1 - 2*s}
}

// halves cuts the cell across its longest side.
func (c cell) halves() [2]cell {
	k := 0
	for i, h := range c.half {
		if h > c.half[k] {
			k = i
		}
	}
	c.half[k] /= 2
	a, b := c, c
	a.at[k] -= c.half[k]
	b.at[k] += c.half[k]
	return [2]cell{a, b}
}

// least is a lower bound of d·e over every unit vector e within an angle a of
// one for which the product is w, l2 being the square of d's length:
// l·cos(acos(w/l) + a), and −l once that is past the opposite direction. Derived.
func (a angle) least(w, l2 float64) float64 {
	c := a.cos * math.Abs(a.cos) * l2
	if w*math.Abs(w)+c < 0 {
		return -math.Sqrt(l2)
	}
	return w*a.cos - math.Sqrt(max(0, l2-w*w))*a.sin
}
