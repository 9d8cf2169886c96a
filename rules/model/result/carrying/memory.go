package carrying

import (
	"crypto/sha256"
	"encoding/binary"
	"math"
	"sync"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
)

// Memory is what is decided in a review of panels and legs, beside what other reviews
// have decided; for many goroutines. What is forgotten is decided again, and comes out
// the same.
type Memory struct {
	all *panels // of all reviews, which all may use
	own *panels // by whole searches in this one, which its brief ones may use
}

// How many panels are remembered, and ways and rooms of each; and as many again of those
// before. A route has a thousand legs at most.
const (
	mostPanels = 32
	mostWays   = 2048
	mostRooms  = 64
)

// NewMemory is an empty one.
func NewMemory() *Memory { return &Memory{all: newPanels(), own: newPanels()} }

// Next is the memory of another review, after this one or beside it. It knows again what
// both decide, and comes to the same as an empty one: what another review searched whole
// does not serve a brief search, which might not have found it.
func (m *Memory) Next() *Memory { return &Memory{all: m.all, own: newPanels()} }

// panels are wrapped panels with what is known of each.
type panels struct {
	mu   sync.Mutex
	list recent[mark, *about]
}

func newPanels() *panels { return &panels{list: recent[mark, *about]{most: mostPanels}} }

// of is what is known of a panel.
func (p *panels) of(panel mark) *about {
	p.mu.Lock()
	defer p.mu.Unlock()
	had, ok := p.list.get(panel)
	if !ok {
		had = &about{ways: recent[remembered, decided]{most: mostWays}, rooms: recent[entered, bool]{most: mostRooms}}
		p.list.put(panel, had)
	}
	return had
}

// about is what is known of one panel.
type about struct {
	mu    sync.Mutex
	body  *passage.Body // which keeps what was worked out of it; nil before it was asked for
	ways  recent[remembered, decided]
	rooms recent[entered, bool]
}

// remembered is all that a decision on a panel hangs on but what may be spent.
type remembered struct {
	leg   sizes
	depth Depth
	brief bool
}

// decided is a way with what it was given to spend and what it took.
type decided struct {
	way         Way
	given, took passage.Budget
}

// entered is all that it hangs on whether a panel comes into a room only on edge, and
// whether that can be proven with so many cells.
type entered struct {
	door  opening.Door
	high  float64
	cells int
}

// bodyOr is the panel's body, or makes it.
func (a *about) bodyOr(make func() *passage.Body) *passage.Body {
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.body == nil {
		a.body = make()
	}
	return a.body
}

func (a *about) way(key remembered) (decided, bool) {
	a.mu.Lock()
	defer a.mu.Unlock()
	return a.ways.get(key)
}

func (a *about) keep(key remembered, way decided) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.ways.put(key, way)
}

// enters is what was proven, or proves it.
func (a *about) enters(key entered, prove func() bool) bool {
	a.mu.Lock()
	had, known := a.rooms.get(key)
	a.mu.Unlock()
	if known {
		return had
	}
	proven := prove()
	a.mu.Lock()
	a.rooms.put(key, proven)
	a.mu.Unlock()
	return proven
}

// known is what a review knows of one panel.
type known struct{ all, own *about }

func (m *Memory) of(panel mark) known { return known{m.all.of(panel), m.own.of(panel)} }

// recall is what was decided, or decides it. What ran out counts only where there is as
// much again, and all else where there is as much as it took. A brief search takes what
// one that was not brief decided in the same review, whatever it took: a change is no worse
// for a leg that it leaves as it was.
func (k known) recall(key remembered, left *passage.Budget, decide func() Way) Way {
	if key.brief {
		if had, is := k.own.way(key.unabridged()); is && !had.way.RanOut {
			had.way.Size = Size{}
			return had.way
		}
	}
	had, is := k.all.way(key)
	given := whole(left)
	if is && (given == had.given || !had.way.RanOut && given.Cells >= had.took.Cells && given.Looks >= had.took.Looks) {
		if left != nil {
			left.Cells -= had.took.Cells
			left.Looks -= had.took.Looks
		}
	} else {
		way := decide()
		now := whole(left)
		had = decided{way, given, passage.Budget{Cells: given.Cells - now.Cells, Looks: given.Looks - now.Looks}}
		k.all.keep(key, had)
	}
	if !key.brief {
		k.own.keep(key, had)
	}
	return had.way
}

// unabridged is the same of a search that is not brief.
func (r remembered) unabridged() remembered {
	r.brief = false
	return r
}

// whole is what may be spent, nothing of none.
func whole(left *passage.Budget) passage.Budget {
	if left == nil {
		return passage.Budget{}
	}
	return *left
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

// mark tells a wrapped panel from all others, wherever its section is drawn.
type mark [sha256.Size]byte

func markOf(section []space.Point, long, wrap float64) mark {
	low, high := space.Box(section)
	middle := space.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}
	all := make([]byte, 0, 8*(2+2*len(section)))
	add := func(x float64) { all = binary.LittleEndian.AppendUint64(all, math.Float64bits(x)) }
	add(wrap)
	add(long)
	for _, p := range section {
		p = p.Minus(middle)
		add(p.X)
		add(p.Y)
	}
	return sha256.Sum256(all)
}
