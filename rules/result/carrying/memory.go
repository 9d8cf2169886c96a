package carrying

import (
	"crypto/sha256"
	"encoding/binary"
	"math"
	"sync"

	"dryfit/rules/kernel/passage"
)

// Memory is what was decided of panels and legs, and the panels' bodies, for many
// reviews at a time.
type Memory struct {
	mu     sync.Mutex
	ways   map[remembered]decided
	bodies map[[sha256.Size]byte]*passage.Body
}

// NewMemory is an empty one.
func NewMemory() *Memory {
	return &Memory{ways: map[remembered]decided{}, bodies: map[[sha256.Size]byte]*passage.Body{}}
}

// remembered is all that a decision hangs on but what may be spent.
type remembered struct {
	body  [sha256.Size]byte
	leg   sizes
	depth Depth
	brief bool
}

// decided is a way with the cells that it was given and those that it took.
type decided struct {
	way         Way
	given, took int
}

// recall is what was decided, or decides it. What ran out of cells counts only
// where there are as many again, and all else where there are as many as it took.
func (m *Memory) recall(key remembered, left *passage.Budget, decide func() Way) Way {
	m.mu.Lock()
	had, known := m.ways[key]
	m.mu.Unlock()
	given := cellsOf(left)
	if known && (given == had.given || !had.way.RanOut && given >= had.took) {
		if left != nil {
			left.Cells -= had.took
		}
		return had.way
	}
	way := decide()
	m.mu.Lock()
	m.ways[key] = decided{way, given, given - cellsOf(left)}
	m.mu.Unlock()
	return way
}

// known gives a panel the body of the one like it, which keeps what was worked out.
func (m *Memory) known(mark [sha256.Size]byte, p *panel) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if had, ok := m.bodies[mark]; ok {
		p.body = had
		return
	}
	m.bodies[mark] = p.body
}

func cellsOf(left *passage.Budget) int {
	if left == nil {
		return 0
	}
	return left.Cells
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
