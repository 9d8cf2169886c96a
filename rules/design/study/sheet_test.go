package study_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
)

// Any figure of the calculation sheet is a column. By hand, three along and six around
// of 4634.568 by 7080 with members of 90: the members take
// 1 − 18·(2360 − 90)·(772.428 − 90)/(4634.568·7080) = 15.02%; six along 18.39%.
func TestFiguresOfTheSheetAreColumns(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	before := len(s.Columns)
	chosen, err := s.Choose([]string{"look.member-share", "mass", " vault.radius"})
	require.NoError(t, err)
	assert.Len(t, s.Columns, before+2)
	again, err := s.Choose([]string{"vault.radius"})
	require.NoError(t, err)
	assert.Equal(t, chosen[2], again[0], "a figure is one column, however often it is named")
	for option, want := range map[int]float64{1: 0.1502, 4: 0.1839} {
		row := s.Row(s.Option(option))
		assert.InDelta(t, want, row.Figures[chosen[0]], 5e-5)
		assert.InDelta(t, 3.045, row.Figures[chosen[2]], 1e-9)
		assert.InDelta(t, s.Option(option).Assessment.Ceiling.Panel.Mass.Get(), row.Figures[chosen[1]], 1e-3)
	}
	assert.Len(t, newStudy(t, "reading-room", "grid.along=3..6").Columns, before, "another study has the usual columns")
}

// What only some options have is a column too, empty for the others; so is a radius
// that has no end.
func TestFiguresThatOnlySomeOptionsHave(t *testing.T) {
	s := newStudy(t, "reading-room", "room.eye=1600mm,2700mm")
	chosen, err := s.Choose([]string{"look.coffers-met"})
	require.NoError(t, err)
	assert.InDelta(t, 6, s.Row(s.Option(1)).Figures[chosen[0]], 0)
	assert.True(t, math.IsNaN(s.Row(s.Option(2)).Figures[chosen[0]]))
	flat := newStudy(t, "gallery-soffit", "grid.along=6")
	chosen, err = flat.Choose([]string{"vault.radius"})
	require.NoError(t, err)
	assert.True(t, math.IsNaN(flat.Row(flat.Option(1)).Figures[chosen[0]]))
	sawn := newStudy(t, "reading-room", "rib.lamination=6mm,5mm", "room.eye=2700mm,1600mm")
	_, err = sawn.Choose([]string{"look.coffers-met"})
	assert.NoError(t, err)
}

// An aim may be at any figure of the sheet.
func TestAimsAtFiguresOfTheSheet(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..6")
	f, err := study.NewFront(s, []string{"look.coffer-room=1"})
	require.NoError(t, err)
	for i := 1; i <= s.Total; i++ {
		row := s.Row(s.Option(i))
		row.Verdict = 1
		f.Add(row)
	}
	// By hand: 1416/772.428 by 7144/4240 is 1.088, of six along 0.907, whose distances
	// are 0.084 and 0.098.
	assert.True(t, f.Has(3) && !f.Has(4) && !f.Has(1))
	_, err = study.NewFront(s, []string{"look.coffer-rom=1"})
	assert.ErrorContains(t, err, "is it look.coffer-room?")
	_, err = s.Choose([]string{"mass", "mass"})
	assert.ErrorContains(t, err, "named twice")
	_, err = s.Choose([]string{"xyzzyplugh"})
	assert.ErrorContains(t, err, "all that calcs prints")
}
