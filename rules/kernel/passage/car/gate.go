package car

import (
	"container/heap"
	"math"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/kernel/passage/turns"
)

// depths are an interval of how far the body's origin is in.
type depths [2]float64

// allDepths are those of any motion.
var allDepths = depths{math.Inf(-1), math.Inf(1)}

// By how much, in m, a gate is longer than what is between the ends of the ways that
// were followed, and by how much where no way out is known and the gate has no end.
// Chosen by trial on random vehicles: they change what is found, and not what is true.
const (
	gateMargin = 0.4
	openMargin = 0.1
)

// gate is the depths between where ways out ended and where ways in did, or from
// there on if no way out is known.
func gate(out, in float64) depths {
	switch {
	case math.IsInf(in, 0):
		return allDepths
	case math.IsInf(out, 0):
		return depths{in - openMargin, out}
	default:
		return depths{min(out, in) - gateMargin, max(out, in) + gateMargin}
	}
}

// shutOut proves, if it can, that no motion takes the body into a car: by a gate, or
// if that does not tell, by all depths.
//
// Theorem. Let the body rest nowhere with its origin before the gate. A motion begins
// with it there. The last time that it is at the gate's beginning, the body goes on
// within the gate until it is at the gate's end or rests. If no way through the gate's
// cells leads there, there is no motion. Derived.
func shutOut(b *passage.Body, c Car, gate depths, budget *passage.Budget) (proven, ranOut bool) {
	if gate != allDepths && !mayRest(b, c, gate[0], budget) {
		if proven, _ = enclosed(b, c, gate, budget); proven {
			return true, false
		}
	}
	return enclosed(b, c, allDepths, budget)
}

// gateCells are those that it may take to find out whether the body may rest before a
// gate.
const gateCells = 1000

// mayRest reports whether the body may be wholly in a car with its origin before a
// depth, or it could not be found out.
//
// Method. As turns.Within, with one more length: what is behind the origin is no more than
// the depth. Of what is before it and behind the lesser is taken, so that the turns
// that are alike for widths are alike for it.
func mayRest(b *passage.Body, c Car, depth float64, budget *passage.Budget) bool {
	part := &passage.Budget{Cells: min(gateCells, budget.Cells)}
	given := part.Cells
	defer func() { budget.Cells -= given - part.Cells }()
	sizes := [3]float64{c.Length, c.Width, c.Height}
	open := &turns.CellHeap{}
	free := false
	look := func(cell space.Cell) {
		turn, a := cell.Quaternion().Turn(), cell.Radius()
		at, most := turns.Room(b, turn, sizes, a)
		behind, least := math.Inf(1), math.Inf(1)
		for _, e := range [2]space.Vec{turn[0], turn[0].Times(-1)} {
			p := b.Reach(e)
			behind = min(behind, p.Dot(e))
			least = min(least, a.Least(p.Dot(e), p.Dot(p)))
		}
		free = free || min(at, depth-b.Wrap()-behind) >= 0
		if most = min(most, depth-b.Wrap()-least); most >= 0 {
			heap.Push(open, turns.CellBound{Cell: cell, Most: most})
		}
	}
	for _, c := range turns.Cells(b) {
		look(c)
	}
	for open.Len() > 0 && !free {
		top := heap.Pop(open).(turns.CellBound)
		if !part.Spend(2) {
			return true
		}
		for _, c := range top.Cell.Halves() {
			look(c)
		}
	}
	return free
}
