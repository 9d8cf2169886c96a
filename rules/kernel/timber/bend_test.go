package timber_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/timber"
)

// Least radii in feet: APA, Concrete Forming Design/Construction Guide, three
// pages agree. Least radii in inches: FAA AC 43.13-1B, table 1-2.
func TestBendTables(t *testing.T) {
	for _, r := range []struct {
		name                   string
		unit                   float64
		thickness, along, over float64
	}{
		{"softwood plywood", foot, 1.0 / 4, 5, 2},
		{"softwood plywood", foot, 5.0 / 16, 6, 2},
		{"softwood plywood", foot, 3.0 / 8, 8, 3},
		{"softwood plywood", foot, 1.0 / 2, 12, 6},
		{"softwood plywood", foot, 5.0 / 8, 16, 8},
		{"softwood plywood", foot, 3.0 / 4, 20, 12},
		{"aircraft plywood", inch, 0.035, 2.0, 1.1},
		{"aircraft plywood", inch, 0.070, 5.2, 3.2},
		{"aircraft plywood", inch, 0.100, 8.6, 5.2},
		{"aircraft plywood", inch, 0.125, 12, 7.1},
		{"aircraft plywood", inch, 0.155, 16, 10},
		{"aircraft plywood", inch, 0.160, 17, 11},
		{"aircraft plywood", inch, 0.185, 20, 13},
		{"aircraft plywood", inch, 0.190, 21, 14},
		{"aircraft plywood", inch, 0.225, 27, 17},
		{"aircraft plywood", inch, 0.250, 31, 20},
		{"aircraft plywood", inch, 0.315, 43, 28},
		{"aircraft plywood", inch, 0.375, 54, 36},
	} {
		s := sheet(t, r.name)
		for long, want := range map[bool]float64{true: r.along, false: r.over} {
			got, err := s.LeastRadius(r.thickness*inch, long)
			require.NoError(t, err)
			assert.InDelta(t, want*r.unit, got, 1e-9, "%s %v", r.name, r.thickness)
		}
	}
}

// A sheet that is thicker than a row is of the next one; past the last there is no
// figure.
func TestRowsEndAtTheirThickness(t *testing.T) {
	const past = 0.0002 // more than the slack of a row
	for _, name := range []string{"bendable plywood", "softwood plywood", "aircraft plywood"} {
		s := sheet(t, name)
		for long, rows := range map[bool][]timber.BendRow{true: s.LongBent, false: s.ShortBent} {
			for i, row := range rows {
				got, err := s.LeastRadius(row.Thickness+past, long)
				switch {
				case i == len(rows)-1:
					assert.Error(t, err, "%s %v", name, row.Thickness)
				case rows[i+1].Thickness-row.Thickness > past:
					assert.Equal(t, rows[i+1].Radius, got, "%s %v", name, row.Thickness)
				}
			}
		}
	}
	// The printed thicknesses of the aircraft plywood, in thousandths of an inch.
	for i, want := range []float64{35, 70, 100, 125, 155, 160, 185, 190, 225, 250, 315, 375} {
		assert.InDelta(t, want*inch/1000, sheet(t, "aircraft plywood").LongBent[i].Thickness, 1e-9)
		assert.InDelta(t, want*inch/1000, sheet(t, "aircraft plywood").ShortBent[i].Thickness, 1e-9)
	}
}

func TestBendTablesEnd(t *testing.T) {
	_, err := sheet(t, "softwood plywood").LeastRadius(0.006, true)
	assert.EqualError(t, err, "thickness 6mm is outside 6.35mm to 19.05mm, the range of the bend table of softwood plywood")
	_, err = sheet(t, "MDF").LeastRadius(0.006, true)
	assert.EqualError(t, err, "dryfit has no bend table for MDF; put the maker's figure into the standards")
	end, err := sheet(t, "bendable plywood").LeastRadius(0.009525, true)
	require.NoError(t, err, "3/8in, but for the last digit")
	assert.InDelta(t, 12*inch, end, 1e-9)
	// The guide prints its sizes in millimetres too, rounded: 6.4, 7.9, 9.5, 12.7,
	// 15.9 and 19.1. Between two rows it prints nothing: the safer one holds.
	for _, r := range []struct{ thickness, feet float64 }{
		{0.0064, 5},
		{0.0079, 6},
		{0.0095, 8},
		{0.0127, 12},
		{0.0159, 16},
		{0.0191, 20},
		{0.4375 * inch, 12},
		{0.0066, 6},
		{0.013, 16},
	} {
		got, err := sheet(t, "softwood plywood").LeastRadius(r.thickness, true)
		require.NoError(t, err)
		assert.InDelta(t, r.feet*foot, got, 1e-9, "%v", r.thickness)
	}
	_, err = sheet(t, "softwood plywood").LeastRadius(math.NaN(), true)
	assert.Error(t, err)
}

func TestThickerNeverBendsTighter(t *testing.T) {
	s := sheet(t, "aircraft plywood")
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0.036, 0.374).Draw(t, "a") * inch
		thin, err1 := s.LeastRadius(a, true)
		thick, err2 := s.LeastRadius(a+0.0005*inch, true)
		if err1 != nil || err2 != nil || thick < thin {
			t.Fatalf("%v, then %v", thin, thick)
		}
	})
}
