package carrying

import (
	"crypto/sha256"
	"encoding/binary"
	"math"
	"sync"
	"sync/atomic"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
)

// Memory is what was decided last of panels and legs, and the panels' bodies, for
// many reviews at a time. What is forgotten is decided again, and comes out the
// same.
type Memory struct {
	before atomic.Pointer[Memory] // of the review before, nil of the first
	mu     sync.Mutex
	ways   recent[remembered, decided]
	bodies recent[[sha256.Size]byte, *passage.Body]
	rooms  recent[entered, bool]
}

// How many ways, bodies and rooms are remembered, and as many again of those before:
// the ways of some panels on a route of a thousand legs.
const (
	mostWays   = 16384
	mostBodies = 64
	mostRooms  = 1024
)

// NewMemory is an empty one.
func NewMemory() *Memory {
	return &Memory{
		ways:   recent[remembered, decided]{most: mostWays},
		bodies: recent[[sha256.Size]byte, *passage.Body]{most: mostBodies},
		rooms:  recent[entered, bool]{most: mostRooms},
	}
}

// Next is an empty memory for the next review, which knows again what m knew of the
// same questions, and comes to the same as with an empty one: what the review before
// searched whole does not serve a brief search, which might not have found it.
func (m *Memory) Next() *Memory {
	next := NewMemory()
	m.before.Store(nil)
	next.before.Store(m)
	return next
}

// recent remembers so many things that were put or asked for last, and at most as
// many of those before.
type recent[K comparable, V any] struct {
	most     int
	now, was map[K]V
}

func (r *recent[K, V]) get(key K) (V, bool) {
	v, ok := r.now[key]
	if ok {
		return v, true
	}
	if v, ok = r.was[key]; ok {
		r.put(key, v)
	}
	return v, ok
}

func (r *recent[K, V]) put(key K, v V) {
	if _, had := r.now[key]; !had && len(r.now) >= r.most {
		r.was, r.now = r.now, nil
	}
	if r.now == nil {
		r.now = map[K]V{}
	}
	r.now[key] = v
}

// remembered is all that a decision hangs on but what may be spent.
type remembered struct {
	body  [sha256.Size]byte
	leg   sizes
	depth Depth
	brief bool
}

// decided is a way with what it was given to spend and what it took.
type decided struct {
	way         Way
	given, took passage.Budget
}

// recall is what was decided, or decides it. What ran out counts only where there is as
// much again, and all else where there is as much as it took. A brief search takes what
// one that was not brief decided, whatever it took: a change is no worse for a leg that it
// leaves as it was.
func (m *Memory) recall(key remembered, left *passage.Budget, decide func() Way) Way {
	if key.brief {
		if had, known := m.own(key.unabridged()); known && !had.way.RanOut {
			had.way.Size = Size{}
			return had.way
		}
	}
	had, known := m.had(key)
	given := whole(left)
	if known && (given == had.given || !had.way.RanOut && given.Cells >= had.took.Cells && given.Looks >= had.took.Looks) {
		if left != nil {
			left.Cells -= had.took.Cells
			left.Looks -= had.took.Looks
		}
		return had.way
	}
	way := decide()
	now := whole(left)
	m.mu.Lock()
	m.ways.put(key, decided{way, given, passage.Budget{Cells: given.Cells - now.Cells, Looks: given.Looks - now.Looks}})
	m.mu.Unlock()
	return way
}

// unabridged is the same of a search that is not brief.
func (r remembered) unabridged() remembered {
	r.brief = false
	return r
}

// had is what was decided, in the review before too.
func (m *Memory) had(key remembered) (decided, bool) {
	had, known := m.own(key)
	before := m.before.Load()
	if known || before == nil {
		return had, known
	}
	if had, known = before.own(key); known {
		m.mu.Lock()
		m.ways.put(key, had)
		m.mu.Unlock()
	}
	return had, known
}

// own is what was decided in this review.
func (m *Memory) own(key remembered) (decided, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.ways.get(key)
}

// known gives a panel the body of the one like it, which keeps what was worked out.
func (m *Memory) known(mark [sha256.Size]byte, p *panel) {
	if before := m.before.Load(); before != nil {
		before.lend(mark, p)
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if had, ok := m.bodies.get(mark); ok {
		p.body = had
		return
	}
	m.bodies.put(mark, p.body)
}

func (m *Memory) lend(mark [sha256.Size]byte, p *panel) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if had, ok := m.bodies.get(mark); ok {
		p.body = had
	}
}

// entered is all that it hangs on whether a panel comes into a room only on edge, and
// whether that can be proven with so many cells.
type entered struct {
	body  [sha256.Size]byte
	door  opening.Door
	high  float64
	cells int
}

// enters is what was proven, or proves it.
func (m *Memory) enters(key entered, prove func() bool) bool {
	if m == nil {
		return prove()
	}
	m.mu.Lock()
	had, known := m.rooms.get(key)
	m.mu.Unlock()
	if known {
		return had
	}
	proven := prove()
	m.mu.Lock()
	m.rooms.put(key, proven)
	m.mu.Unlock()
	return proven
}

// whole is what may be spent, nothing of none.
func whole(left *passage.Budget) passage.Budget {
	if left == nil {
		return passage.Budget{}
	}
	return *left
}

// mark tells the wrapped panel from all others.
func (p *panel) mark() [sha256.Size]byte {
	section := p.body.Section()
	all := make([]byte, 0, 8*(2+2*len(section)))
	add := func(x float64) { all = binary.LittleEndian.AppendUint64(all, math.Float64bits(x)) }
	add(p.wrap)
	add(p.body.Length())
	for _, q := range section {
		add(q.X)
		add(q.Y)
	}
	return sha256.Sum256(all)
}
