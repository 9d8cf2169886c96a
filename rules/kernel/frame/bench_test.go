package frame_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/frame/framecases"
)

// benchRib is a rib of 64 elements on four one-sided straps, in N and m, and two
// of its cases: all straps taut, and one set so long that it hangs slack.
func benchRib() (m frame.Model, hung, slack frame.Case) {
	m = framecases.HungRib(45, 64, frame.Rectangle(12e9, 0.7e9, 0.04, 0.09), 4e6, -45, -22.5, 22.5, 45)
	hung = frame.Case{Spread: framecases.Everywhere(m, 0, -60, frame.PerLength)}
	slack = hung
	slack.Misfits = []frame.Misfit{{Spring: 1, Longer: 0.05}}
	return m, hung, slack
}

func TestSolveDoesNotAllocate(t *testing.T) {
	m, hung, slack := benchRib()
	s, err := m.Compile()
	require.NoError(t, err)
	var r frame.Result
	var brief frame.Summary
	require.NoError(t, s.Solve(&slack, &r))
	require.True(t, r.Springs[1].Slack)
	require.NoError(t, s.Summarize(&slack, &brief))
	assert.Zero(t, testing.AllocsPerRun(10, func() {
		assert.NoError(t, s.Solve(&hung, &r))
		assert.NoError(t, s.Solve(&slack, &r))
		assert.NoError(t, s.Summarize(&hung, &brief))
		assert.NoError(t, s.Summarize(&slack, &brief))
	}))
}

func BenchmarkCompile(b *testing.B) {
	m, _, _ := benchRib()
	for b.Loop() {
		if _, err := m.Compile(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSolve alternates between cases of other sets of straps.
func BenchmarkSolve(b *testing.B) {
	var r frame.Result
	benchmarkCases(b, func(s *frame.Solver, c *frame.Case) error { return s.Solve(c, &r) })
}

// BenchmarkSummarize asks for the summaries of the same cases.
func BenchmarkSummarize(b *testing.B) {
	var brief frame.Summary
	benchmarkCases(b, func(s *frame.Solver, c *frame.Case) error { return s.Summarize(c, &brief) })
}

func benchmarkCases(b *testing.B, solve func(*frame.Solver, *frame.Case) error) {
	m, hung, slack := benchRib()
	lost := hung
	lost.Without = []int{2}
	for _, bb := range []struct {
		name  string
		cases []frame.Case
	}{
		{"all taut", []frame.Case{hung}},
		{"one slack, then one lost", []frame.Case{slack, lost}},
	} {
		b.Run(bb.name, func(b *testing.B) {
			s, err := m.Compile()
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				for i := range bb.cases {
					if err := solve(s, &bb.cases[i]); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
