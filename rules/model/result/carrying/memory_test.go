package carrying

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
)

// However many legs and panels a long search tries, so many are kept and no more;
// those that are asked for again and again stay.
func TestTheMemoryIsBounded(t *testing.T) {
	m := NewMemory()
	often, rarely := mark{1}, mark{2}
	leg := func(i int) remembered { return remembered{leg: sizes{of: [21]float64{float64(i)}}} }
	frequent := remembered{leg: sizes{turn: "often"}}
	m.of(often).recall(frequent, nil, func() Way { return Way{Motion: "often"} })
	for i := range 5 * mostWays {
		way := m.of(often).recall(leg(i), nil, func() Way { return Way{Margin: float64(i)} })
		assert.InDelta(t, float64(i), way.Margin, 0)
		if i%mostWays == 0 {
			m.of(often).recall(frequent, nil, func() Way { t.Error("forgotten"); return Way{} })
		}
	}
	m.of(rarely).recall(frequent, nil, func() Way { return Way{} })
	for _, kept := range []*panels{m.all, m.own} {
		ways := kept.of(often).ways
		assert.LessOrEqual(t, len(ways.now)+len(ways.was), 2*mostWays)
	}
	for i := range 5 * mostPanels {
		m.of(mark{3, byte(i), byte(i >> 8)}).recall(leg(i), nil, func() Way { return Way{} })
		if i%mostPanels == 0 {
			m.of(often).recall(frequent, nil, func() Way { t.Error("forgotten"); return Way{} })
		}
	}
	for _, kept := range []*panels{m.all, m.own} {
		assert.LessOrEqual(t, len(kept.list.now)+len(kept.list.was), 2*mostPanels)
	}
	again := false
	m.of(rarely).recall(frequent, nil, func() Way { again = true; return Way{} })
	assert.True(t, again, "a panel is forgotten with its ways")
}

// What was forgotten is decided again.
func TestWhatIsForgottenIsDecidedAgain(t *testing.T) {
	k, runs := NewMemory().of(mark{}), 0
	first := remembered{leg: sizes{turn: "first"}}
	decide := func() Way { runs++; return Way{Motion: "found"} }
	for range 2 {
		assert.Equal(t, "found", k.recall(first, nil, decide).Motion)
	}
	assert.Equal(t, 1, runs)
	for i := range 3 * mostWays {
		k.recall(remembered{leg: sizes{of: [21]float64{float64(i)}}}, nil, func() Way { return Way{} })
	}
	assert.Equal(t, "found", k.recall(first, nil, decide).Motion)
	assert.Equal(t, 2, runs)
}

// A brief search has no more for a leg than so many cells, but takes what the whole search
// decided with more: else a change would be worse for the legs that it leaves as they are.
func TestABriefSearchTakesWhatTheWholeOneDecided(t *testing.T) {
	k, brief := NewMemory().of(mark{}), Search{Brief: true}
	key := remembered{leg: sizes{turn: "half"}}
	dear := func(left *passage.Budget) func() Way {
		return func() Way {
			ranOut := !left.Spend(briefly + 1)
			return Way{RanOut: ranOut}
		}
	}
	whole := Search{}.budget()
	assert.False(t, Search{}.leg(whole, func(left *passage.Budget) Way { return k.recall(key, left, dear(left)) }).RanOut)
	assert.Equal(t, cells-briefly-1, whole.Cells)
	key.brief = true
	left := brief.budget()
	assert.False(t, brief.leg(left, func(left *passage.Budget) Way { return k.recall(key, left, dear(left)) }).RanOut)
	assert.Equal(t, cells, left.Cells)
	key.leg.turn = "quarter"
	assert.True(t, brief.leg(left, func(left *passage.Budget) Way { return k.recall(key, left, dear(left)) }).RanOut)
}

// The next review knows what the one before decided, but as if it had none: a brief search
// takes what a whole one of its own review decided, and not of the one before, or beside.
func TestTheNextMemoryComesToTheSame(t *testing.T) {
	whole, brief := remembered{leg: sizes{turn: "half"}}, remembered{leg: sizes{turn: "half"}, brief: true}
	once := func(name string) func() Way { return func() Way { return Way{Motion: name} } }
	again := func() Way { t.Error("decided again"); return Way{} }

	panel := mark{1}
	first := NewMemory()
	next, last := first.Next(), first.Next().Next()
	first.of(panel).recall(whole, nil, once("by the whole search"))
	assert.Equal(t, "briefly", next.of(panel).recall(brief, nil, once("briefly")).Motion)
	assert.Equal(t, "by the whole search", next.of(panel).recall(whole, nil, again).Motion)
	assert.Equal(t, "by the whole search", next.of(panel).recall(brief, nil, again).Motion)
	assert.Equal(t, "briefly", last.of(panel).recall(brief, nil, again).Motion)
	other := mark{2}
	last.of(other).recall(brief, nil, once("of another panel"))

	body := next.of(panel).all.bodyOr(func() *passage.Body { return &passage.Body{} })
	assert.Same(t, body, last.of(panel).all.bodyOr(func() *passage.Body { t.Error("made again"); return nil }))
}

// Panels are told apart by every number that their bodies are made of.
func TestPanelsAreToldApart(t *testing.T) {
	outline := []space.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 0.125}}
	had := map[mark]bool{}
	for _, m := range []mark{
		markOf(outline, 1, 0.02), markOf(outline, 1.1, 0.02), markOf(outline, 1, 0.03), markOf(outline[:2], 1, 0.02),
		markOf([]space.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: math.Nextafter(0.125, 1)}}, 1, 0.02),
	} {
		assert.False(t, had[m])
		had[m] = true
	}
	moved := []space.Point{{X: 2, Y: 4}, {X: 3, Y: 4}, {X: 3, Y: 4.125}}
	assert.Equal(t, markOf(outline, 1, 0.02), markOf(moved, 1, 0.02), "one that is drawn elsewhere is alike")
}
