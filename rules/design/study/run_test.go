package study_test

import (
	"context"
	"errors"
	"os"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
)

func index(o study.Option) int { return o.Index }

// Options come in order, whatever the number of workers.
func TestRunIsInOrder(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..9", "grid.around=3..9")
	for _, jobs := range []int{1, 3, 16} {
		next := 5
		err := study.Run(context.Background(), s, 5, 47, jobs, index, func(i int) error {
			assert.Equal(t, next, i)
			next++
			return nil
		})
		require.NoError(t, err)
		assert.Equal(t, 48, next)
	}
	none := study.Run(context.Background(), s, 6, 5, 2, index, func(int) error { return errors.New("called") })
	assert.NoError(t, none)
}

// An interruption stops it soon, and what was yielded has no gap.
func TestRunStops(t *testing.T) {
	s := newStudy(t, "reading-room", "vault.rise=700mm..900mm/0.1mm", "grid.around=3..9")
	ctx, cancel := context.WithCancel(context.Background())
	last := 0
	err := study.Run(ctx, s, 1, s.Total, 3, index, func(i int) error {
		assert.Equal(t, last+1, i)
		if last = i; i == 20 {
			cancel()
		}
		return nil
	})
	require.NoError(t, err)
	assert.GreaterOrEqual(t, last, 20)
	assert.Less(t, last, 400, "only what was begun is done to its end")

	full := errors.New("full")
	calls := 0
	err = study.Run(context.Background(), s, 1, s.Total, 3, index, func(int) error {
		calls++
		return full
	})
	assert.ErrorIs(t, err, full)
	assert.Equal(t, 1, calls)
}

// Memory does not grow with the number of options. It takes minutes, so it runs
// only where DRYFIT_LONG_TESTS is set.
func TestMemoryIsFlat(t *testing.T) {
	if os.Getenv("DRYFIT_LONG_TESTS") == "" {
		t.Skip("set DRYFIT_LONG_TESTS to work out 100000 options")
	}
	s := newStudy(t, "reading-room", "vault.rise=700mm..900mm/0.1mm", "grid.around=5..9", "rib.depth=55mm..64mm/1mm")
	front, err := study.NewFront(s, study.Weighed)
	require.NoError(t, err)
	var tally study.Tally
	live := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	var early uint64
	err = study.Run(context.Background(), s, 1, 100_000, runtime.NumCPU(), s.Row, func(r study.Row) error {
		tally.Add(r)
		front.Add(r)
		if r.Index == 1000 {
			early = live()
		}
		return nil
	})
	require.NoError(t, err)
	late := live()
	t.Logf("live after 1000 options: %d KiB, after %d: %d KiB, %d unbeaten", early>>10, tally.Done, late>>10, len(front.Members))
	const most = 8 << 20
	assert.Less(t, late, early+most)
}
