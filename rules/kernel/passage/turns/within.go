package turns

import (
	"container/heap"
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// Covered is the answer of a cover of all turns.
type Covered struct {
	Turn   space.Turn
	Margin float64 // at that turn, in m
	RanOut bool    // the budget was spent before all turns were looked at
}

// Within looks for a turn at which the whole body, in its wrap, is in a box of
// the given sizes along the world's axes, +Inf where there is no wall. It ends
// at the first one found, or when no turn is left: then the margin is below
// nothing, and not the best.
//
// Method. Best first over cells of turns. Over a cell each width is at least
// what its own two points make of it, so that no margin exceeds half of what
// is left by that. A box is convex, so that the body's hull decides. Exact.
func Within(b *passage.Body, sizes [3]float64, budget *passage.Budget) Covered {
	best := Covered{Margin: none}
	open := &CellHeap{}
	look := func(c space.Cell) {
		turn := c.Quaternion().Turn()
		at, most := Room(b, turn, sizes, c.Radius())
		if at > best.Margin {
			best.Turn, best.Margin = turn, at
		}
		if most >= 0 {
			heap.Push(open, CellBound{c, most})
		}
	}
	for _, c := range Cells(b) {
		look(c)
	}
	for open.Len() > 0 && best.Margin < 0 {
		top := heap.Pop(open).(CellBound)
		if !budget.Spend(2) {
			best.RanOut = true
			break
		}
		for _, c := range top.Cell.Halves() {
			look(c)
		}
	}
	return best
}

// Room is the margin, in m, in a box of some sizes at a turn, and the most that it is within an angle
// of it.
func Room(b *passage.Body, t space.Turn, sizes [3]float64, a space.Angle) (at, most float64) {
	at, most = math.Inf(1), math.Inf(1)
	for i, size := range sizes {
		if math.IsInf(size, 1) {
			continue
		}
		d := b.Span(t[i])
		w := d.Dot(t[i])
		at = min(at, (size-w)/2-b.Wrap())
		most = min(most, (size-a.Least(w, d.Dot(d)))/2-b.Wrap())
	}
	return at, most
}

// Cells are cells that hold every turn, but for those whose widths along the
// world's axes are the same: half turns about the world's axes change no width,
// and bring the quaternion's real part to be the greatest; half turns about the
// body's own x, and about y and z too if it is its own mirror image, change
// none either, and with those of the world change the signs of two parts.
func Cells(b *passage.Body) []space.Cell { return CellsOf(b.Mirrored()) }

// CellsOf is Cells for what is even in the section's two sides, or is not.
func CellsOf(even bool) []space.Cell {
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

// CellBound is a cell with what no turn in it exceeds.
type CellBound struct {
	Cell space.Cell
	Most float64 // in m
}

// CellHeap gives the greatest bound first, and of equals the one whose middle
// comes first, so that the order is one on every machine.
type CellHeap []CellBound

// Len, Less, Swap, Push and Pop make it a heap of container/heap, the cell of the
// greatest bound first.
func (h CellHeap) Len() int { return len(h) }

// Swap exchanges two cells.
func (h CellHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Less decides between equal bounds as well, so that the order is the same on every
// machine.
func (h CellHeap) Less(i, j int) bool {
	if h[i].Most != h[j].Most {
		return h[i].Most > h[j].Most
	}
	for k := range 3 {
		if h[i].Cell.At[k] != h[j].Cell.At[k] {
			return h[i].Cell.At[k] < h[j].Cell.At[k]
		}
	}
	return false
}

// Push appends a cell.
func (h *CellHeap) Push(x any) { *h = append(*h, x.(CellBound)) }

// Pop takes off the last cell.
func (h *CellHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}
