package options

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// studyOf is a whole study of the demo.
func studyOf(t *testing.T, vary ...string) Study {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	base := review.Spec("demo.ceiling.toml", sample.Source(t, sample.ReadingRoom), o)
	require.Empty(t, base.Problems)
	made, err := study.New(base, vary, o)
	require.NoError(t, err)
	front, err := study.NewFront(made, study.Weighed)
	require.NoError(t, err)
	s := Study{Study: made, Front: front, First: 1, Last: made.Total, All: true}
	for i := range made.Total {
		r := made.Row(made.Option(i + 1))
		s.Tally.Add(r)
		front.Add(r)
		s.Rows = append(s.Rows, r)
	}
	return s
}

func numbers(p Places) (out []int) {
	for _, q := range p.List {
		out = append(out, q.Index)
	}
	return out
}

// The key with more values gives the rows. The options are numbered so that the last key
// changes fastest: with 3 along by 2 around they lie 1 2, 3 4, 5 6; with 2 along by 3
// around the rows are those around, 1 4, 2 5, 3 6.
func TestTwoKeysMakeAMatrix(t *testing.T) {
	s := studyOf(t, "grid.along=4..6", "grid.around=5,6")
	p := s.Places()
	require.True(t, p.Matrix())
	assert.Equal(t, []string{"4", "5", "6"}, p.Rows.Values)
	assert.Equal(t, "grid.around", p.Columns.Key)
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6}, numbers(p))
	for _, q := range p.List {
		require.NotNil(t, q.Row)
		require.Len(t, q.Lines, 2)
		assert.Regexp(t, "^panel mass .*, worst strap .*, field joints .*, queries [0-9]+$", q.Lines[0])
		assert.Equal(t, q.Row.Verdict.String(), q.Lines[1])
	}
	across := studyOf(t, "grid.along=5,6", "room.width=4240mm", "grid.around=5..7").Places()
	assert.Equal(t, []string{"5", "6", "7"}, across.Rows.Values)
	assert.Equal(t, []int{1, 4, 2, 5, 3, 6}, numbers(across))
}

// Keys that change together are one.
func TestLinkedKeysAreOne(t *testing.T) {
	p := studyOf(t, "vault.span,rise=4.2m/840mm,4m/800mm", "grid.along=5,6").Places()
	assert.Equal(t, "vault.span / vault.rise", p.Rows.Key)
	assert.Equal(t, []string{"4.2m / 840mm", "4m / 800mm"}, p.Rows.Values)
	assert.Equal(t, []string{"5", "6"}, p.Columns.Values)
	assert.Equal(t, []int{1, 2, 3, 4}, numbers(p))
}

// A place without an option says why.
func TestBlankPlacesSayWhy(t *testing.T) {
	s := studyOf(t, "vault.rise=840mm,2500mm", "grid.along=5,6")
	all := s.Places().List
	assert.Nil(t, all[2].Row)
	assert.Equal(t, "CAN'T BE MADE", all[2].Lines[0])
	assert.Regexp(t, "^vault.rise: a rise of 2500mm is impossible", all[2].Lines[1])
	why := func(s Study, at int) string {
		p := s.Places().List[at]
		assert.Nil(t, p.Row)
		return strings.Join(p.Lines, " ")
	}
	few := s
	few.Rows = s.Rows[:1]
	assert.Contains(t, why(few, 1), "does not pass")
	few.Tally.Done = 1
	assert.Contains(t, why(few, 1), "interrupted")
	few.First, few.Last = 1, 2
	assert.Contains(t, why(few, 3), "another part")
}

// One key, three, or more options than are drawn make a list of those that can be made.
func TestElseTheyAreAList(t *testing.T) {
	for want, vary := range map[int][]string{
		2: {"grid.along=5,6"}, 8: {"grid.along=5,6", "grid.around=5,6", "rib.depth=60mm,62mm"}, 1: {"vault.rise=840mm,2500mm"},
		MostPlaces: {"grid.along=3..10", "rib.depth=56mm..63mm/1mm"},
	} {
		s := studyOf(t, vary...)
		p := s.Places()
		assert.False(t, p.Matrix())
		assert.Len(t, p.List, want)
		assert.Equal(t, len(s.made())-want, p.Left)
		assert.Contains(t, p.List[0].Lines[0], s.Vary[0].Key)
	}
}
