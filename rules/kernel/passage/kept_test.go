package passage_test

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/outline"
)

// What is kept about a body is one value for all who ask at once, in any wrap, and another
// body has its own.
func TestABodyKeepsOneValueOfAType(t *testing.T) {
	type note struct{ length float64 }
	begin := func(b *passage.Body) *note { return &note{b.Length()} }
	b := passage.NewBody(outline.Rectangle(2, 0.1), 3, 0.02)
	var all [8]*note
	var done sync.WaitGroup
	for i := range all {
		done.Go(func() { all[i] = passage.Kept(b.Wrapped(float64(i)), begin) })
	}
	done.Wait()
	for _, n := range all {
		assert.Same(t, all[0], n)
	}
	assert.InDelta(t, 3, all[0].length, 0)
	other := passage.NewBody(outline.Rectangle(2, 0.1), 4, 0.02)
	assert.InDelta(t, 4, passage.Kept(other, begin).length, 0)
}
