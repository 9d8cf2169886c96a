// Package turns cuts the turns of a body into cells, bounds over a cell how far its places
// reach, and searches the cells. Lengths are in m and angles in rad.
package turns

import "dryfit/rules/kernel/passage/space"

// The turns of a body in a corner, but for those that are alike, are one or two
// cubes of quaternions: in the first the real part is the greatest and 1, in the
// second the first imaginary part. A corner is its own mirror image, up and
// down, and a prism end to end: a turn and the turn mirrored both ways are
// alike, and the quaternion q with k·q·i. A prism whose section is its own
// mirror image has two more such turns, q·k and k·q·j. They bring any part to be
// the real one; without them, any part to be the real or the first imaginary
// one. The faces of the cubes are glued accordingly, so that no turn is cut off
// from its neighbours.

// Alike is one of those maps of quaternions: a signed change of places.
type Alike struct {
	from [4]int
	sign [4]float64
}

// The maps by the part that they bring to the front.
var (
	Same    = Alike{[4]int{0, 1, 2, 3}, [4]float64{1, 1, 1, 1}}
	MirrorX = Alike{[4]int{1, 0, 3, 2}, [4]float64{-1, -1, -1, -1}} // k·q·j
	MirrorY = Alike{[4]int{2, 3, 0, 1}, [4]float64{1, -1, 1, -1}}   // k·q·i
	HalfZ   = Alike{[4]int{3, 2, 1, 0}, [4]float64{-1, 1, -1, 1}}   // q·k
)

// Of is where the map takes a quaternion.
func (m Alike) Of(q space.Quaternion) space.Quaternion {
	var out space.Quaternion
	for i := range q {
		out[i] = m.sign[i] * q[m.from[i]]
	}
	return out
}

// Cube is a cell of turns in one of the cubes.
type Cube struct {
	Front int // the part that is 1
	space.Cell
}

// parts are the quaternion's parts that a cube's three axes are.
var parts = [4][3]int{{1, 2, 3}, {0, 2, 3}, {0, 1, 3}, {0, 1, 2}}

// spread is the quaternion, not of length 1, of a place in a cube.
func spread(front int, at [3]float64) space.Quaternion {
	q := space.Quaternion{}
	q[front] = 1
	for i, p := range parts[front] {
		q[p] = at[i]
	}
	return q
}

// Spread is the quaternion, not of length 1, of the middle.
func (c Cube) Spread() space.Quaternion { return spread(c.Front, c.At) }

// Turn is that of the cell's middle.
func (c Cube) Turn() space.Turn { return c.Spread().Unit().Turn() }

// face is where the cell's face on an axis lies: the cube it belongs to beyond
// it, its middle there, and the axis and the sign of the way on.
type face struct {
	front int
	at    [3]float64
	half  [3]float64 // its sides, but for the one on the axis
	axis  int
	sign  float64
}

// across is the face of a cell on an axis towards a sign, as seen from beyond it.
func (c Cube) across(axis int, sign float64, glued *[4]Alike) face {
	f := face{front: c.Front, at: c.At, half: c.Half, axis: axis, sign: sign}
	f.at[axis] += sign * c.Half[axis]
	if f.at[axis] < 1 && f.at[axis] > -1 {
		return f
	}
	// On the cube's own face two parts are 1: the other one comes to the front.
	q := spread(c.Front, f.at)
	front := parts[c.Front][axis]
	m := glued[front]
	q = m.Of(q)
	f.front = m.to(front)
	old := m.to(c.Front)
	one := q[f.front]
	for i, p := range parts[f.front] {
		f.at[i] = q[p] / one
		if p == old {
			f.axis = i
		}
		for k, from := range parts[c.Front] {
			if from == m.from[p] {
				f.half[i] = c.Half[k]
			}
		}
	}
	f.sign = -f.at[f.axis]
	return f
}

// to is where a part goes.
func (m Alike) to(part int) int {
	for i, p := range m.from {
		if p == part {
			return i
		}
	}
	return part
}
