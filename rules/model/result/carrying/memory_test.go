package carrying

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
)

// However many legs and panels a long search tries, so many are kept and no more;
// those that are asked for again and again stay.
func TestTheMemoryIsBounded(t *testing.T) {
	m := NewMemory()
	often := remembered{leg: sizes{turn: "often"}}
	m.recall(often, nil, func() Way { return Way{Motion: "often"} })
	for i := range 5 * mostWays {
		key := remembered{leg: sizes{of: [21]float64{float64(i)}}}
		assert.InDelta(t, float64(i), m.recall(key, nil, func() Way { return Way{Margin: float64(i)} }).Margin, 0)
		if i%mostWays == 0 {
			m.recall(often, nil, func() Way { t.Error("forgotten"); return Way{} })
		}
		var mark [32]byte
		mark[0], mark[1] = byte(i), byte(i>>8)
		m.known(mark, &panel{body: &passage.Body{}})
	}
	assert.LessOrEqual(t, len(m.ways.now)+len(m.ways.was), 2*mostWays)
	assert.LessOrEqual(t, len(m.bodies.now)+len(m.bodies.was), 2*mostBodies)
}

// What was forgotten is decided again.
func TestWhatIsForgottenIsDecidedAgain(t *testing.T) {
	m, runs := NewMemory(), 0
	first := remembered{leg: sizes{turn: "first"}}
	decide := func() Way { runs++; return Way{Motion: "found"} }
	for range 2 {
		assert.Equal(t, "found", m.recall(first, nil, decide).Motion)
	}
	assert.Equal(t, 1, runs)
	for i := range 3 * mostWays {
		m.recall(remembered{leg: sizes{of: [21]float64{float64(i)}}}, nil, func() Way { return Way{} })
	}
	assert.Equal(t, "found", m.recall(first, nil, decide).Motion)
	assert.Equal(t, 2, runs)
}

// A brief search has no more for a leg than so many cells, but takes what the whole search
// decided with more: else a change would be worse for the legs that it leaves as they are.
func TestABriefSearchTakesWhatTheWholeOneDecided(t *testing.T) {
	m, brief := NewMemory(), Search{Brief: true}
	key := remembered{leg: sizes{turn: "half"}}
	dear := func(left *passage.Budget) func() Way {
		return func() Way {
			ranOut := !left.Spend(briefly + 1)
			return Way{RanOut: ranOut}
		}
	}
	whole := Search{}.budget()
	assert.False(t, Search{}.leg(whole, func(left *passage.Budget) Way { return m.recall(key, left, dear(left)) }).RanOut)
	assert.Equal(t, cells-briefly-1, whole.Cells)
	key.brief = true
	left := brief.budget()
	assert.False(t, brief.leg(left, func(left *passage.Budget) Way { return m.recall(key, left, dear(left)) }).RanOut)
	assert.Equal(t, cells, left.Cells)
	key.leg.turn = "quarter"
	assert.True(t, brief.leg(left, func(left *passage.Budget) Way { return m.recall(key, left, dear(left)) }).RanOut)
}

// The next review knows what the one before decided, but as if it had none: a brief search
// takes what a whole one of its own review decided, and not of the one before.
func TestTheNextMemoryComesToTheSame(t *testing.T) {
	whole, brief := remembered{leg: sizes{turn: "half"}}, remembered{leg: sizes{turn: "half"}, brief: true}
	once := func(name string) func() Way { return func() Way { return Way{Motion: name} } }
	again := func() Way { t.Error("decided again"); return Way{} }

	first := NewMemory()
	first.recall(whole, nil, once("by the whole search"))
	next := first.Next()
	assert.Equal(t, "briefly", next.recall(brief, nil, once("briefly")).Motion)
	assert.Equal(t, "by the whole search", next.recall(whole, nil, again).Motion)
	assert.Equal(t, "by the whole search", next.recall(brief, nil, again).Motion)

	last := next.Next()
	assert.Equal(t, "briefly", last.recall(brief, nil, again).Motion)
	assert.Nil(t, next.before.Load(), "one review is kept, and none before it")
	body := &panel{body: &passage.Body{}}
	next.known([32]byte{1}, body)
	same := &panel{body: &passage.Body{}}
	last.known([32]byte{1}, same)
	assert.Same(t, body.body, same.body)
}
