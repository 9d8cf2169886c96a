package remedy

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
)

// A step that was tried is not tried again, and counts as it did, so that a search
// ends where it would.
func TestAStepIsTriedOnce(t *testing.T) {
	tree := sample.Tree(t, sample.ReadingRoom, nil)
	tr := newTrial(context.Background(), tree, Options{Review: reviewing(false)})
	knobs := tr.base.knobs(allowed{})
	k := knobs[slices.IndexFunc(knobs, func(k knob) bool { return k.key == "strap.width" })]
	quiet := slices.IndexFunc(tr.options.Rules, func(r *engine.Rule) bool { return quiet(tr.assessment, r) })
	tries := 0
	p := &probe{
		t: tr, st: &state{tree: tree, assessment: tr.assessment}, f: engine.Finding{Rule: tr.options.Rules[quiet]},
		k: k, d: dialsFor(k.key, k.was, k.property)[0],
		fits: func(*state) bool {
			tries++
			tr.reviews++ // as one that judges the state by all rules
			return true
		},
	}
	before := tr.reviews
	require.True(t, p.read(1).cleared)
	assert.True(t, p.read(1).cleared)
	assert.Equal(t, 1, tries)
	assert.Equal(t, before+2*2, tr.reviews)

	tr.limit = tr.reviews
	assert.False(t, p.read(1).valid, "the search is over")
}
