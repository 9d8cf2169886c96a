package passage

import (
	"math"
	"math/bits"

	"dryfit/rules/kernel/passage/space"
)

// meshCell is a cell of turns in a mesh.
type meshCell struct {
	Cube
	kids    int   // the first, or 0
	sides   int   // that are cut, a bit for each of the three axes
	blocked bool  // nothing in it is free
	near    []int // leaves that it touches, none of them blocked
}

// mesh is cells of turns that are cut where that is asked for, and which
// of them touch. Its first cells are one cube for each part of the quaternion
// that may be the greatest; glued brings the other parts to the front.
type mesh struct {
	cells   []meshCell
	glued   [4]alike
	price   int                                     // of a cell, in those of the budget; 0 where it is paid otherwise
	measure func(parent int, c Cube) (blocked bool) // of a new cell, which comes last
}

// begin makes the first cells and cuts them some times.
func (m *mesh) begin(fronts, cuts int, budget *Budget) bool {
	for f := range fronts {
		m.cells = append(m.cells, meshCell{Cube: Cube{f, space.Cell{Half: [3]float64{1, 1, 1}}}})
	}
	from, to := 0, len(m.cells)
	for range cuts {
		for i := from; i < to; i++ {
			if !m.cells[i].blocked && !m.cut(i, allSides, budget) {
				return false
			}
		}
		from, to = to, len(m.cells)
	}
	return true
}

// allSides cuts a cell in eight.
const allSides = 7

// cut makes cells of a leaf, in two by each of some sides.
func (m *mesh) cut(i, sides int, budget *Budget) bool {
	first := len(m.cells)
	m.cells[i].sides = sides
	if !budget.Spend(m.cells[i].count() * m.price) {
		return false
	}
	m.cells[i].kids = first
	for k := range 8 {
		if k&^sides != 0 {
			continue
		}
		c := m.cells[i].Cube
		for axis := range 3 {
			if sides>>axis&1 == 1 {
				c.Half[axis] /= 2
				c.At[axis] += c.Half[axis] * float64(2*(k>>axis&1)-1)
			}
		}
		m.cells = append(m.cells, meshCell{Cube: c, blocked: m.measure(i, c)})
	}
	for _, j := range m.cells[i].near {
		if j != i {
			m.cells[j].near = without(m.cells[j].near, i)
		}
	}
	m.cells[i].near = nil
	for k := range m.cells[i].count() {
		m.join(first + k)
	}
	return true
}

// count is that of a cell's kids.
func (c *meshCell) count() int { return 1 << bits.OnesCount(uint(c.sides)) }

func without(list []int, i int) []int {
	for k, j := range list {
		if j == i {
			list[k] = list[len(list)-1]
			return list[:len(list)-1]
		}
	}
	return list
}

// join finds the leaves that a cell touches through its faces.
func (m *mesh) join(i int) {
	if m.cells[i].blocked {
		return
	}
	c := m.cells[i].Cube
	for axis := range 3 {
		for _, sign := range [2]float64{-1, 1} {
			f := c.across(axis, sign, &m.glued)
			m.touch(i, f.front, f)
		}
	}
}

// touch joins a cell to the leaves under a node that touch a face.
func (m *mesh) touch(i, at int, f face) {
	n := &m.cells[at]
	if n.kids == 0 {
		if !n.blocked && at != i {
			m.link(i, at)
		}
		return
	}
	for k := range n.count() {
		if m.cells[n.kids+k].meets(f) {
			m.touch(i, n.kids+k, f)
		}
	}
}

// meets reports whether a cell reaches beyond a face, and touches it. All sides are
// powers of two, so that sums are exact.
func (c Cube) meets(f face) bool {
	for axis := range 3 {
		d := c.At[axis] - f.at[axis]
		if axis == f.axis {
			if math.Abs(d) > c.Half[axis] || d*f.sign == -c.Half[axis] {
				return false
			}
		} else if math.Abs(d) >= c.Half[axis]+f.half[axis] {
			return false
		}
	}
	return true
}

func (m *mesh) link(i, j int) {
	for _, k := range m.cells[i].near {
		if k == j {
			return
		}
	}
	m.cells[i].near = append(m.cells[i].near, j)
	m.cells[j].near = append(m.cells[j].near, i)
}
