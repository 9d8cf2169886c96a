package hanging

import (
	"slices"
	"sync"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/layout"
)

// Memory keeps the frames that were solved last, each with its cases, and the
// weights on them, for many reviews at a time: ceilings whose ribs are equal have
// equal frames. What is forgotten is solved again, and comes out the same. A nil one
// keeps nothing.
type Memory struct {
	mu      sync.Mutex
	frames  []*runner // the latest last
	weights []weights // likewise
}

// weights are what the stretches between some places weigh.
type weights struct {
	by    layout.Weighing
	at    []float64
	lumps []layout.Lump
}

// How many frames are kept, and how many cases of each: those of a few ceilings
// whose arch is split.
const (
	mostFrames = 16
	mostCases  = 1024
	usualCases = 64
)

// compile makes a rib ready to be solved, or gives the runner of one that is equal.
func (m *Memory) compile(rib *rib, model frame.Model, title title) (*runner, error) {
	if m == nil {
		return compile(rib, model, title)
	}
	had := recall(m, &m.frames, func(r *runner) bool { return r.title == title && r.rib.equal(rib) })
	if had != nil {
		return *had, nil
	}
	r, err := compile(rib, model, title)
	if err == nil {
		keep(m, &m.frames, r)
	}
	return r, err
}

// stretches is what the stretches between some places weigh, for reading only.
func (m *Memory) stretches(by layout.Weighing, at []float64) []layout.Lump {
	if m == nil {
		return by.Stretches(at)
	}
	had := recall(m, &m.weights, func(w weights) bool { return slices.Equal(w.at, at) && w.by.Equal(&by) })
	if had != nil {
		return had.lumps
	}
	w := weights{by, at, by.Stretches(at)}
	keep(m, &m.weights, w)
	return w.lumps
}

// recall is the one of a list of the memory that is asked for, which becomes the
// last; nil of none.
func recall[T any](m *Memory, list *[]T, is func(T) bool) *T {
	m.mu.Lock()
	defer m.mu.Unlock()
	at := slices.IndexFunc(*list, is)
	if at < 0 {
		return nil
	}
	had := (*list)[at]
	*list = append(slices.Delete(*list, at, at+1), had)
	return &had
}

// keep adds one to a list of the memory, in place of the first where there are too
// many.
func keep[T any](m *Memory, list *[]T, more T) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(*list) == mostFrames {
		*list = slices.Delete(*list, 0, 1)
	}
	*list = append(*list, more)
}

// equal reports whether two ribs are the same, number by number.
func (r *rib) equal(o *rib) bool {
	samePart := func(a, b part) bool {
		return a.from == b.from && a.to == b.to && a.middle == b.middle && slices.Equal(a.loads, b.loads)
	}
	return r.section == o.section && r.weight == o.weight && r.crown == o.crown &&
		slices.Equal(r.at, o.at) && slices.Equal(r.nodes, o.nodes) && slices.Equal(r.bends, o.bends) &&
		slices.Equal(r.loads, o.loads) && slices.Equal(r.spread, o.spread) && slices.EqualFunc(r.parts, o.parts, samePart) &&
		slices.Equal(r.straps, o.straps) && slices.Equal(r.numbers, o.numbers) && slices.Equal(r.lifts, o.lifts) &&
		slices.Equal(r.feet, o.feet) && slices.Equal(r.seams, o.seams) &&
		slices.Equal(r.kinds, o.kinds) && slices.Equal(r.stiff, o.stiff) && slices.Equal(r.names, o.names)
}
