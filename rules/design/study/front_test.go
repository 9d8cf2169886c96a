package study_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/rules/design/study"
	"dryfit/rules/engine"
)

// rows makes rows of a study whose figures are a few small numbers, or none, so
// that many are equal.
func rows(t *rapid.T, s *study.Study) []study.Row {
	figure := rapid.SampledFrom([]float64{0, 1, 2, 3, math.NaN(), math.Inf(1)})
	n := rapid.IntRange(0, 40).Draw(t, "rows")
	out := make([]study.Row, n)
	for i := range out {
		out[i] = study.Row{
			Index:   i + 1,
			Figures: rapid.SliceOfN(figure, len(s.Columns), len(s.Columns)).Draw(t, "figures"),
			Verdict: rapid.SampledFrom([]engine.Verdict{engine.Passed, engine.PassedWithNotes, engine.Failed}).Draw(t, "verdict"),
		}
		if rapid.IntRange(0, 9).Draw(t, "made") == 0 {
			out[i] = study.Row{Index: i + 1, Key: "k", Reason: "r"}
		}
	}
	return out
}

// beats is the definition, written apart from the program: as good in all and
// better in one, lower or higher by the column, and nothing is worse than none.
func beats(s *study.Study, columns []int, a, b study.Row) bool {
	goodness := func(r study.Row, i int) float64 {
		x := r.Figures[i]
		switch {
		case math.IsNaN(x):
			return -1000
		case math.IsInf(x, 1):
			x = 500
		}
		if s.Columns[i].Better == study.Lower {
			x = -x
		}
		return x
	}
	better := false
	for _, i := range columns {
		if goodness(a, i) < goodness(b, i) {
			return false
		}
		better = better || goodness(a, i) > goodness(b, i)
	}
	return better
}

// No member is beaten by any option that stands; each that stands and is no
// member is beaten by a member; and what does not stand is no member. The order
// in which options come does not matter.
func TestFront(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	keys := []string{"ratio", "mass", "joints", "margin"}
	rapid.Check(t, func(t *rapid.T) {
		list := rows(t, s)
		f, err := study.NewFront(s, keys[:rapid.IntRange(1, len(keys)).Draw(t, "weighed")])
		require.NoError(t, err)
		for _, r := range list {
			f.Add(r)
		}
		for _, r := range list {
			beaten := slices.ContainsFunc(list, func(o study.Row) bool {
				return r.Stands() && o.Stands() && beats(s, columnsOf(f), o, r)
			})
			assert.Equal(t, r.Stands() && !beaten, f.Has(r.Index), "option %d", r.Index)
			by, in, ok := study.Row{}, []int(nil), false
			if r.Stands() {
				by, in, ok = f.BeatenBy(r)
			}
			assert.Equal(t, beaten, ok)
			if ok {
				assert.True(t, f.Has(by.Index) && beats(s, columnsOf(f), by, r))
				assert.NotEmpty(t, in)
			}
			assert.Equal(t, f.Has(r.Index), s.Loses(f, r) == "", "each other loses something")
		}
		again, _ := study.NewFront(s, keys[:len(f.Aims)])
		for _, r := range list {
			again.Add(r)
		}
		assert.Equal(t, len(f.Members), len(again.Members))
	})
}

func columnsOf(f *study.Front) (out []int) {
	for _, a := range f.Aims {
		out = append(out, a.Column)
	}
	return out
}

func TestFrontRefuses(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	for key, says := range map[string]string{
		"mas": "is it mass?", "module-around": "has no better direction", "option": "there is no figure", "gap": "has no better direction",
	} {
		_, err := study.NewFront(s, []string{key})
		assert.ErrorContains(t, err, says, key)
	}
	_, err := study.NewFront(s, []string{"mass", "ratio", "mass"})
	assert.ErrorContains(t, err, "weighed twice")
}

// A front of more than may be kept says so and keeps none.
func TestFrontOverfull(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	f, err := study.NewFront(s, []string{"mass", "ratio"})
	require.NoError(t, err)
	for i := range study.MostUnbeaten + 5 {
		figures := make([]float64, len(s.Columns))
		figures[f.Aims[0].Column], figures[f.Aims[1].Column] = float64(i), float64(-i)
		f.Add(study.Row{Index: i + 1, Figures: figures, Verdict: engine.Passed})
	}
	assert.True(t, f.Full)
	assert.Empty(t, f.Members)
}

// Rows sort best first, those without a figure last whichever way.
func TestSort(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6", "grid.around=5,6")
	var list []study.Row
	for i := range s.Total {
		list = append(list, s.Row(s.Option(i+1)))
	}
	list[2] = study.Row{Index: 3, Key: "k", Reason: "r"}
	order := func(keys ...string) []int {
		require.NoError(t, s.Sort(list, keys))
		var out []int
		for _, r := range list {
			out = append(out, r.Index)
		}
		return out
	}
	assert.Equal(t, []int{7, 8, 5, 6, 4, 1, 2, 3}, order("mass"))
	assert.Equal(t, []int{2, 1, 4, 6, 5, 8, 7, 3}, order("-mass"))
	assert.Equal(t, []int{7, 8, 5, 6, 4, 1, 2, 3}, order("margin", "mass"))
	assert.Equal(t, []int{1, 3, 5, 7, 2, 4, 6, 8}, order("grid.around", "grid.along"))
	assert.Equal(t, []int{8, 7, 6, 5, 4, 3, 2, 1}, order("-option"))
	// Panels of 2360mm do not go through the street door of 2040mm.
	assert.Equal(t, []int{4, 5, 6, 7, 8, 1, 2, 3}, order("verdict"))
	assert.ErrorContains(t, s.Sort(nil, []string{"mas"}), "is it mass?")
	assert.ErrorContains(t, s.Sort(nil, []string{"grid.ends"}), "keys that are varied")
}
