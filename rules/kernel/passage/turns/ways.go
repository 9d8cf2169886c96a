package turns

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
