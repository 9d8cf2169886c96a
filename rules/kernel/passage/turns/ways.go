package turns

import (
	"container/heap"
	"iter"
	"math"
	"slices"
)

// WayEnd is the end of a way through cells, and what the way costs.
type WayEnd struct {
	Node int
	Cost float64
}

// WayHeap are the ends of ways, for a search of the cheapest one.
type WayHeap []WayEnd

// Len, Less, Swap, Push and Pop make it a heap of container/heap, the cheapest end
// first.
func (h WayHeap) Len() int { return len(h) }

// Swap exchanges two ends.
func (h WayHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }

// Less decides between equal costs by the node, so that the order is the same on
// every machine.
func (h WayHeap) Less(i, j int) bool {
	return h[i].Cost < h[j].Cost || h[i].Cost == h[j].Cost && h[i].Node < h[j].Node
}

// Push appends an end.
func (h *WayHeap) Push(x any) { *h = append(*h, x.(WayEnd)) }

// Pop takes off the last end.
func (h *WayHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}

// Ways are the cheapest ways to nodes, which are numbered from 0. Costs are not negative.
// Source: Dijkstra, A note on two problems in connexion with graphs (1959), from memory.
type Ways struct {
	to   []float64 // the cost of the way to each node
	from []int     // the one before it, -1 where a way begins
	open WayHeap
}

// Clear forgets all ways, for so many nodes.
func (w *Ways) Clear(nodes int) {
	w.to, w.from, w.open = slices.Grow(w.to[:0], nodes)[:nodes], slices.Grow(w.from[:0], nodes)[:nodes], w.open[:0]
	for i := range w.to {
		w.to[i] = math.MaxFloat64
	}
}

// Reach takes a way to a node that costs so much in all, if none as cheap is known: from
// the node before it, or -1 where it begins.
func (w *Ways) Reach(node, before int, cost float64) {
	if cost < w.to[node] {
		w.to[node], w.from[node] = cost, before
		heap.Push(&w.open, WayEnd{node, cost})
	}
}

// Next is the end of the cheapest way that was not given yet, and false if there is none.
// From there ways go on by Reach.
func (w *Ways) Next() (end WayEnd, ok bool) {
	for w.open.Len() > 0 {
		if end = heap.Pop(&w.open).(WayEnd); end.Cost <= w.to[end.Node] {
			return end, true
		}
	}
	return WayEnd{}, false
}

// Back goes along the way to a node, from there to where it begins.
func (w *Ways) Back(node int) iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := node; i >= 0; i = w.from[i] {
			if !yield(i) {
				return
			}
		}
	}
}

// Doubtful are the cells to be cut next, at least so many if there are: those in doubt on
// the ways of least cost to a node where ways end. Other nodes lead on. There are none exactly
// if there is no way. If none is in doubt on a way, that is a way through.
func (w *Ways) Doubtful(least int, ends func(node int) bool, leadOn func(WayEnd), inDoubt func(node int) []int) (cells []int, through bool) {
	have := map[int]bool{}
	for len(cells) < least {
		end, ok := w.Next()
		if !ok {
			break
		}
		if !ends(end.Node) {
			leadOn(end)
			continue
		}
		cut := inDoubt(end.Node)
		if len(cut) == 0 {
			return nil, true
		}
		for _, c := range cut {
			if !have[c] {
				have[c] = true
				cells = append(cells, c)
			}
		}
	}
	return cells, false
}
