package study_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
	"dryfit/rules/engine"
)

// A vault 15ft wide, 3ft high and 16ft 3in long has an intrados of 16.547ft: the radius
// is (7.5² + 3²)/6 = 10.875ft, and half of the angle asin(7.5/10.875) = 0.7610rad. In 8
// modules around each is 2.069ft, so that 5, 6, 7 and 8 along are 1.57, 1.31, 1.12 and
// 0.98 times as long as wide. For long coffers, and few, four along (1.96) and three are
// unbeaten; sixteen, 2.04 the other way, is furthest off.
func TestAims(t *testing.T) {
	s := newStudy(t, "reading-room", "vault.span=15ft", "vault.rise=3ft", "vault.length=16ft 3in", "grid.around=8", "grid.along=3..16")
	f, err := study.NewFront(s, []string{"ratio=2:along", "coffers=least"})
	require.NoError(t, err)
	hand := map[int]float64{5: 1.57, 6: 1.31, 7: 1.12, 8: 0.98, 4: 1.96}
	var rows []study.Row
	for i := 1; i <= s.Total; i++ {
		o := s.Option(i)
		row := s.Row(o)
		require.True(t, row.Made(), row.Reason)
		row.Verdict = engine.Passed // as far as taste goes
		rows = append(rows, row)
		f.Add(row)
		if want, ok := hand[i+2]; ok {
			assert.InDelta(t, want, row.Figures[f.Aims[0].Column], 0.005, "%d along", i+2)
		}
	}
	for i, row := range rows {
		assert.Equal(t, i < 2, f.Has(row.Index), "%d along", i+3)
	}
	last := rows[len(rows)-1].Figures[f.Aims[0].Column]
	assert.InDelta(t, 1/2.04, last, 0.003)
	unsigned, err := study.NewFront(s, []string{"ratio=2"})
	require.NoError(t, err)
	for _, row := range rows {
		unsigned.Add(row)
	}
	assert.True(t, unsigned.Has(2) != unsigned.Has(14), "by its inverse sixteen along is as good as four, to two digits")
}

// An option inside of a range is as good as any other, and half of a value as far off
// as double.
func TestAimsAreDistances(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	row := func(index int, column int, figure float64) study.Row {
		r := study.Row{Index: index, Figures: make([]float64, len(s.Columns)), Verdict: engine.Passed}
		for i := range r.Figures {
			r.Figures[i] = math.NaN()
		}
		r.Figures[column] = figure
		return r
	}
	inside, err := study.NewFront(s, []string{"module along=600mm..1200mm"})
	require.NoError(t, err)
	c := inside.Aims[0].Column
	assert.False(t, inside.Beats(row(1, c, 0.6), row(2, c, 1.2)) || inside.Beats(row(2, c, 1.2), row(1, c, 0.6)))
	assert.True(t, inside.Beats(row(1, c, 0.6), row(2, c, 1.3)))
	assert.True(t, inside.Beats(row(1, c, 1.3), row(2, c, math.NaN())), "to have no figure is worst")
	near, err := study.NewFront(s, []string{"mass=60kg"})
	require.NoError(t, err)
	c = near.Aims[0].Column
	assert.False(t, near.Beats(row(1, c, 30), row(2, c, 120)) || near.Beats(row(2, c, 120), row(1, c, 30)))
	assert.True(t, near.Beats(row(1, c, 50), row(2, c, 30)))
	gap, err := study.NewFront(s, []string{"gap=40mm"})
	require.NoError(t, err)
	c = gap.Aims[0].Column
	assert.True(t, gap.Beats(row(1, c, 0.001), row(2, c, -0.002)) && gap.Beats(row(1, c, -0.002), row(2, c, math.NaN())))
	most, err := study.NewFront(s, []string{"gap=most"})
	require.NoError(t, err)
	c = most.Aims[0].Column
	assert.True(t, most.Beats(row(1, c, 0.05), row(2, c, 0.04)))
}

func TestAimsThatMeanNothing(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	for text, says := range map[string]string{
		"mas=least": "is it mass?", "mass=heavy": "mass", "mass=60mm": "60mm of mass", "mass=70kg..60kg": "ends before it begins",
		"ratio=2:up": "along or around", "ratio=0.5:along": "at least 1", "-ratio": "--aim ratio=most", "coffers": "--aim coffers=least",
		"mass=0kg": "greater than 0",
	} {
		_, err := study.NewFront(s, []string{text})
		assert.ErrorContains(t, err, says, text)
	}
	_, err := study.NewFront(s, []string{"mass=least", "mass=most"})
	assert.NoError(t, err, "aims may contradict each other")
}
