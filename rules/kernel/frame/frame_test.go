package frame_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/framecases"
)

// solve compiles and solves a frame that is known to stand.
func solve(t testing.TB, m frame.Model, c frame.Case) *frame.Result {
	t.Helper()
	s, err := m.Compile()
	require.NoError(t, err)
	var r frame.Result
	require.NoError(t, s.Solve(&c, &r))
	return &r
}

func TestKnownProblems(t *testing.T) {
	for _, p := range framecases.All() {
		t.Run(p.Name, func(t *testing.T) {
			require.NotEmpty(t, p.Source)
			require.NotEmpty(t, p.Wants)
			r := solve(t, p.Model, p.Case)
			for _, w := range p.Wants {
				assert.InDelta(t, w.Value, w.Of(r), w.Within, "%s (%s)", w.Name, p.Source)
			}
		})
	}
}
