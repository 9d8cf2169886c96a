package turns

import (
	"math"
	"math/bits"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// MeshCell is a cell of turns in a mesh.
type MeshCell struct {
	Cube
	Kids    int   // the first, or 0
	sides   int   // that are cut, a bit for each of the three axes
	Blocked bool  // nothing in it is free
	Near    []int // leaves that it touches, none of them blocked
}

// Mesh is cells of turns that are cut where that is asked for, and which
// of them touch. Its first cells are one cube for each part of the quaternion
// that may be the greatest; Glued brings the other parts to the front.
type Mesh struct {
	Cells   []MeshCell
	Glued   [4]Alike
	Price   int                                     // of a cell, in those of the budget; 0 where it is paid otherwise
	Measure func(parent int, c Cube) (blocked bool) // of a new cell, which comes last
}

// Begin makes the first cells and cuts them some times.
func (m *Mesh) Begin(fronts, cuts int, budget *passage.Budget) bool {
	for f := range fronts {
		m.Cells = append(m.Cells, MeshCell{Cube: Cube{f, space.Cell{Half: [3]float64{1, 1, 1}}}})
	}
	from, to := 0, len(m.Cells)
	for range cuts {
		for i := from; i < to; i++ {
			if !m.Cells[i].Blocked && !m.Cut(i, AllSides, budget) {
				return false
			}
		}
		from, to = to, len(m.Cells)
	}
	return true
}

// AllSides cuts a cell in eight.
const AllSides = 7

// Cut makes cells of a leaf, in two by each of some sides.
func (m *Mesh) Cut(i, sides int, budget *passage.Budget) bool {
	first := len(m.Cells)
	m.Cells[i].sides = sides
	if !budget.Spend(m.Cells[i].count() * m.Price) {
		return false
	}
	m.Cells[i].Kids = first
	for k := range 8 {
		if k&^sides != 0 {
			continue
		}
		c := m.Cells[i].Cube
		for axis := range 3 {
			if sides>>axis&1 == 1 {
				c.Half[axis] /= 2
				c.At[axis] += c.Half[axis] * float64(2*(k>>axis&1)-1)
			}
		}
		m.Cells = append(m.Cells, MeshCell{Cube: c, Blocked: m.Measure(i, c)})
	}
	for _, j := range m.Cells[i].Near {
		if j != i {
			m.Cells[j].Near = without(m.Cells[j].Near, i)
		}
	}
	m.Cells[i].Near = nil
	for k := range m.Cells[i].count() {
		m.join(first + k)
	}
	return true
}

// count is that of a cell's kids.
func (c *MeshCell) count() int { return 1 << bits.OnesCount(uint(c.sides)) }

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
func (m *Mesh) join(i int) {
	if m.Cells[i].Blocked {
		return
	}
	c := m.Cells[i].Cube
	for axis := range 3 {
		for _, sign := range [2]float64{-1, 1} {
			f := c.across(axis, sign, &m.Glued)
			m.touch(i, f.front, f)
		}
	}
}

// touch joins a cell to the leaves under a node that touch a face.
func (m *Mesh) touch(i, at int, f face) {
	n := &m.Cells[at]
	if n.Kids == 0 {
		if !n.Blocked && at != i {
			m.link(i, at)
		}
		return
	}
	for k := range n.count() {
		if m.Cells[n.Kids+k].meets(f) {
			m.touch(i, n.Kids+k, f)
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

func (m *Mesh) link(i, j int) {
	for _, k := range m.Cells[i].Near {
		if k == j {
			return
		}
	}
	m.Cells[i].Near = append(m.Cells[i].Near, j)
	m.Cells[j].Near = append(m.Cells[j].Near, i)
}

// FirstCuts is how often the cubes are cut in eight before anything is looked
// for: coarser cells block nothing.
const FirstCuts = 2
