package ruletest

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/record"
)

// Whatever key of a spec is put otherwise, the rules say the same of it with what they
// have said of the spec as without, and have read the same keys; and the calculation
// sheet is the same.
func TestAPrecedentChangesNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
	const one = 6 // variant in so many
	for turn, name := range sample.Names(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			tree, std := sample.Tree(t, name, nil), standards.BuiltIn()
			base, faults := layout.Resolve(tree, std, nil)
			require.Empty(t, faults)
			means := engine.Means{Search: carrying.Search{Memory: carrying.NewMemory()}, Frames: new(hanging.Memory)}
			outcome := engine.Run(every, base, std, means)
			like := outcome.Precedent(base)
			taken := 0
			for i, v := range variants(tree, func(record.Set) bool { return true }) {
				if (i+turn)%one != 0 {
					continue
				}
				alone, ok := layout.Resolve(v.tree, std, nil)
				if len(ok) > 0 {
					continue
				}
				beside, _ := layout.Resolve(v.tree, std, like.Ceiling)
				beside.Take(like.Done)
				want := engine.Run(every, alone, std, means)
				with := means
				with.Like = like
				got := engine.Run(every, beside, std, with)
				at := []any{"%s, %s", v.key, v.what}
				assert.Equal(t, said(want), said(got), at...)
				for r, keys := range want.Inputs {
					assert.Equal(t, spec.Names(keys), spec.Names(got.Inputs[r]), "%s: %s, %s", r.ID, v.key, v.what)
				}
				assert.Equal(t, want.Quiet, got.Quiet, at...)
				assert.Equal(t, want.Loosened, got.Loosened, at...)
				for r := range got.Inputs {
					if beside.Differ(like.Ceiling).And(got.Inputs[r]).Empty() {
						taken++
					}
				}
				if i%(4*one) != 0 { // the sheet costs the most
					continue
				}
				sheet := got.Results.Figures()
				for k, f := range want.Results.Figures() {
					assert.Equal(t, shown(f), shown(sheet[k]), at...)
				}
			}
			assert.Positive(t, taken)
		})
	}
}
