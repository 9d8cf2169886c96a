package record_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec/record"
)

func set(ids ...record.ID) (s record.Set) {
	for _, id := range ids {
		s.Add(id)
	}
	return s
}

func TestSet(t *testing.T) {
	a, b := set(0, 63, 64, record.Most-1), set(63, 5)
	assert.Equal(t, []record.ID{0, 63, 64, record.Most - 1}, slices.Collect(a.All()))
	assert.Equal(t, set(0, 5, 63, 64, record.Most-1), a.Or(b))
	assert.Equal(t, set(63), a.And(b))
	assert.Equal(t, set(0, 64, record.Most-1), a.Without(b))
	assert.True(t, a.Has(64) && !a.Has(65) && !a.Empty() && set().Empty())
}

// What is read while a figure is worked out is what it comes from, and who
// reads the figure reads that, first and every time.
func TestAFigureComesFromWhatWasRead(t *testing.T) {
	rec := &record.Recorder{}
	w := record.Stated(rec, 1, "w", 2.0, true)
	d := record.Stated(rec, 2, "d", 3.0, true)
	more := record.Stated(rec, 3, "more", 0.0, false)
	runs := 0
	area := record.Of(rec, func() float64 { runs++; return w.Get() * d.Get() })
	total := record.Named(rec, "total", func() float64 {
		if more.Given() {
			return area.Get() + more.Get()
		}
		return area.Get()
	})
	assert.Equal(t, "total", total.Key())
	assert.Empty(t, rec.During(func() { assert.Equal(t, set(1, 2), area.From(), "asking reads nothing") }))
	for range 2 {
		assert.Equal(t, set(1, 2, 3), rec.During(func() { assert.InDelta(t, 6, total.Get(), 0) }))
		assert.Equal(t, set(1, 2), rec.During(func() { area.Get() }))
	}
	assert.Equal(t, 1, runs, "worked out once")
	assert.Equal(t, set(1, 2, 3), total.From())
}

// A figure is taken from another if that was worked out, and from nothing that differs.
func TestAFigureIsTakenFromWhatIsAlike(t *testing.T) {
	rec := &record.Recorder{}
	width := record.Stated(rec, 1, "w", 2.0, true)
	figure := func(v float64) record.Value[float64] {
		return record.Of(rec, func() float64 { return v * width.Get() })
	}
	was := figure(1)
	fresh := figure(3)
	fresh.Take(was.Done(), set(2))
	assert.InDelta(t, 6, fresh.Get(), 0, "nothing to take yet")
	assert.InDelta(t, 2, was.Get(), 0)

	taken, other := figure(3), figure(3)
	taken.Take(was.Done(), set(2))
	other.Take(was.Done(), set(1, 2))
	assert.Equal(t, set(1), rec.During(func() { assert.InDelta(t, 2, taken.Get(), 0) }))
	assert.InDelta(t, 6, other.Get(), 0, "what it comes from differs")
	fresh.Take(was.Done(), set(2))
	assert.InDelta(t, 6, fresh.Get(), 0, "what is worked out stays")
}

// What is read within counts around it, and what was read before does not
// count within.
func TestDuringNests(t *testing.T) {
	rec := &record.Recorder{}
	var inner record.Set
	outer := rec.During(func() {
		rec.Note(1)
		inner = rec.During(func() { rec.Note(2) })
		rec.Note(3)
	})
	assert.Equal(t, set(2), inner)
	assert.Equal(t, set(1, 2, 3), outer)
}
