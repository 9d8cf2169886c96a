package passage

import (
	"container/heap"
	"math"

	"dryfit/rules/kernel/passage/space"
)

// covered is the answer of a cover of all turns.
type covered struct {
	turn   space.Turn
	margin float64 // at that turn
	ranOut bool
}

// within looks for a turn at which the whole body, in its wrap, is in a box of
// the given sizes along the world's axes, +Inf where there is no wall. It ends
// at the first one found, or when no turn is left: then the margin is below
// nothing, and not the best.
//
// Method. Best first over cells of turns. Over a cell each width is at least
// what its own two points make of it, so that no margin exceeds half of what
// is left by that. A box is convex, so that the body's hull decides. Exact.
func (b *Body) within(sizes [3]float64, budget *Budget) covered {
	best := covered{margin: none}
	open := &cellHeap{}
	look := func(c space.Cell) {
		turn := c.Quaternion().Turn()
		at, most := b.room(turn, sizes, c.Radius())
		if at > best.margin {
			best.turn, best.margin = turn, at
		}
		if most >= 0 {
			heap.Push(open, cellBound{c, most})
		}
	}
	for _, c := range b.turns() {
		look(c)
	}
	for open.Len() > 0 && best.margin < 0 {
		top := heap.Pop(open).(cellBound)
		if !budget.Spend(2) {
			best.ranOut = true
			break
		}
		for _, c := range top.cell.Halves() {
			look(c)
		}
	}
	return best
}

// room is the margin in a box at a turn, and the most that it is within an angle
// of it.
func (b *Body) room(t space.Turn, sizes [3]float64, a space.Angle) (at, most float64) {
	at, most = math.Inf(1), math.Inf(1)
	for i, size := range sizes {
		if math.IsInf(size, 1) {
			continue
		}
		d := b.span(t[i])
		w := d.Dot(t[i])
		at = min(at, (size-w)/2-b.wrap)
		most = min(most, (size-a.Least(w, d.Dot(d)))/2-b.wrap)
	}
	return at, most
}

// turns are cells that hold every turn, but for those whose widths along the
// world's axes are the same: half turns about the world's axes change no width,
// and bring the quaternion's real part to be the greatest; half turns about the
// body's own x, and about y and z too if it is its own mirror image, change
// none either, and with those of the world change the signs of two parts.
func (b *Body) turns() []space.Cell { return b.turnsOf(b.mirrored) }

// turnsOf is turns for what is even in the section's two sides, or is not.
func (b *Body) turnsOf(even bool) []space.Cell {
	half := [3]float64{0.5, 0.5, 0.5}
	cells := []space.Cell{
		{At: [3]float64{0.5, 0.5, 0.5}, Half: half},
		{At: [3]float64{0.5, 0.5, -0.5}, Half: half},
	}
	if !even {
		cells = append(cells,
			space.Cell{At: [3]float64{-0.5, 0.5, 0.5}, Half: half},
			space.Cell{At: [3]float64{-0.5, 0.5, -0.5}, Half: half})
	}
	return cells
}

// cellBound is a cell with what no turn in it exceeds.
type cellBound struct {
	cell space.Cell
	most float64
}

// cellHeap gives the greatest bound first, and of equals the one whose middle
// comes first, so that the order is one on every machine.
type cellHeap []cellBound

// Len, Less, Swap, Push and Pop make it a heap of container/heap, the cell of the
// greatest bound first.
func (h cellHeap) Len() int { return len(h) }

// Swap exchanges two cells.
func (h cellHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Less decides between equal bounds as well, so that the order is the same on every
// machine.
func (h cellHeap) Less(i, j int) bool {
	if h[i].most != h[j].most {
		return h[i].most > h[j].most
	}
	for k := range 3 {
		if h[i].cell.At[k] != h[j].cell.At[k] {
			return h[i].cell.At[k] < h[j].cell.At[k]
		}
	}
	return false
}

// Push appends a cell.
func (h *cellHeap) Push(x any) { *h = append(*h, x.(cellBound)) }

// Pop takes off the last cell.
func (h *cellHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}
