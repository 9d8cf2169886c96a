package space

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

// Quaternion is a turn as one real and three imaginary parts, of length 1.
type Quaternion [4]float64

// Turn is the matrix of a quaternion of length 1: its closed form.
func (q Quaternion) Turn() Turn {
	w, a, b, c := q[0], q[1], q[2], q[3]
	return Turn{
		{w*w + a*a - b*b - c*c, 2 * (a*b - w*c), 2 * (a*c + w*b)},
		{2 * (a*b + w*c), w*w - a*a + b*b - c*c, 2 * (b*c - w*a)},
		{2 * (a*c - w*b), 2 * (b*c + w*a), w*w - a*a - b*b + c*c},
	}
}

// Quaternion is that of a turn, its greatest part positive.
func (t Turn) Quaternion() Quaternion {
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
	rows := [4]Quaternion{
		{squares[0], x, y, z}, {x, squares[1], xy, xz}, {y, xy, squares[2], yz}, {z, xz, yz, squares[3]},
	}
	return rows[k].Unit()
}

// Unit is the quaternion made of length 1.
func (q Quaternion) Unit() Quaternion {
	l := math.Sqrt(q.Dot(q))
	for i := range q {
		q[i] /= l
	}
	return q
}

// RandomQuaternion is a turn in a random direction, each as likely.
func RandomQuaternion(r *rand.Rand) (q Quaternion) {
	for i := range q {
		q[i] = r.NormFloat64()
	}
	return q.Unit()
}

// Nearby is a random turn within about an angle, in rad, of one.
func (q Quaternion) Nearby(r *rand.Rand, by float64) Quaternion {
	for i := range q {
		q[i] += by / 2 * r.NormFloat64()
	}
	return q.Unit()
}

// Dot is the product of two, part by part: the cosine of half the angle from one turn to
// the other, or its negative.
func (q Quaternion) Dot(r Quaternion) float64 {
	return q[0]*r[0] + q[1]*r[1] + q[2]*r[2] + q[3]*r[3]
}

// Apart is the angle of the rotation that takes one turn to the other.
func (q Quaternion) Apart(r Quaternion) float64 {
	return 2 * math.Acos(min(1, math.Abs(q.Dot(r))))
}

// Between is the turn part of the way from one to another, by the short way and
// at an even rate.
func (q Quaternion) Between(r Quaternion, part float64) Quaternion {
	d := q.Dot(r)
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
	return q.Unit()
}

// Between is the turn part of the way from t to u, by the short way and at an even
// rate, part from 0 to 1. Half a turn apart, where both ways are as short, either
// may be taken. Source: spherical linear interpolation of quaternions, its closed
// form.
func (t Turn) Between(u Turn, part float64) Turn {
	return t.Quaternion().Between(u.Quaternion(), part).Turn()
}

// Apart is the angle of the rotation from t to u, in rad from 0 to π: 2·acos of the
// product of their quaternions.
func (t Turn) Apart(u Turn) float64 { return t.Quaternion().Apart(u.Quaternion()) }

// Tilt is how far the body's length and the long side of its section's box are
// off level, in rad from 0 to π/2.
func (t Turn) Tilt() (length, chord float64) {
	return math.Asin(min(1, math.Abs(t[2].X))), math.Asin(min(1, math.Abs(t[2].Y)))
}

// About is the turn of an upright body axis u, with the world's first axis at an
// angle from a fixed direction square to it.
func About(u Vec, angle float64) Turn {
	a := Vec{Y: 1}
	if math.Abs(u.Y) > 0.9 {
		a = Vec{X: 1}
	}
	f := a.Minus(u.Times(a.Dot(u)))
	f = f.Times(1 / f.Length())
	g := u.Cross(f)
	s, c := math.Sincos(angle)
	e := f.Times(c).Add(g.Times(s))
	return Turn{e, u.Cross(e), u}
}

// Mirrored is a turn with the world's left and right exchanged, and the two ends of
// the body.
func (t Turn) Mirrored() Turn {
	for k, axis := range t {
		t[k] = Vec{-axis.X, axis.Y, axis.Z}
	}
	t[1] = t[1].Times(-1)
	return t
}

// Place is where a place of the body is.
func (p Pose) Place(v Vec) Vec {
	return Vec{p.At.X + p.Turn[0].Dot(v), p.At.Y + p.Turn[1].Dot(v), p.At.Z + p.Turn[2].Dot(v)}
}
