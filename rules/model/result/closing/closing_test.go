package closing_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/closing"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// closed is the closing of the example with some lines changed.
func closed(t testing.TB, changes ...string) (*closing.Closing, *layout.Ceiling) {
	doc, problems := spec.Parse("example", sample.Source(t, sample.ReadingRoom, changes...))
	require.Empty(t, problems)
	c, faults := layout.Resolve(doc.Tree, standards.BuiltIn(), nil)
	require.Empty(t, faults)
	s := seasons.Of(c)
	return closing.Of(c, s), c
}

// By hand: 7144 − 18 − 7080 − 5·0.4 = 44mm; 4 + 6·1 + 5·0.3 = 11.5mm; √(4² + 6·1² +
// 5·0.3²) = 4.738mm. Wood Handbook 2010, table 13-5: white oak of vertical grain
// 0.00180 by percent, from 8.47% to 5.90% at 28% and 21C, over 6·90mm: 2.5 to 2.8mm.
func TestLastGap(t *testing.T) {
	k, _ := closed(t)
	ends, ok := k.Ends()
	require.True(t, ok)
	assert.InDelta(t, 0.044, ends.Last.Get(), 1e-9)
	assert.InDelta(t, 0.0325, ends.Least.Get(), 1e-9)
	require.NoError(t, ends.Most.Get().Err)
	assert.InDelta(t, 0.0555+0.00265, ends.Most.Get().Value, 0.00015)
	assert.InDelta(t, 0.004738, ends.Spread.Get(), 1e-6)
	assert.InDelta(t, 0.025, k.Projection.Get(), 1e-12)
	assert.True(t, ends.Odds.Get().Decided)
	assert.Equal(t, 1.0, ends.Odds.Get().ByChance.Share)
}

// The same panels, hung in the room's air: 0.00180·540·(10.87 − 8.49) = 2.3mm less,
// which the sum of the chain, the least gap and the chance each count.
func TestPanelsGrowUntilTheyAreHung(t *testing.T) {
	for _, hung := range []string{`hung      = "room"`, ""} {
		k, _ := closed(t, `hung      = "shop"`, hung)
		ends, _ := k.Ends()
		assert.InDelta(t, 0.00232, ends.Growth.Get().Value, 5e-5)
		assert.InDelta(t, 0.0325-0.00232, ends.Least.Get(), 5e-5)
		assert.InDelta(t, 0.044-0.00232, ends.Stack.Get().Nominal(), 5e-5)
		k, _ = closed(t, `hung      = "shop"`, hung, `first_gap = "18mm"`, `first_gap = "36mm"`)
		ends, _ = k.Ends()
		odds := ends.Odds.Get()
		assert.InDelta(t, 0.199, odds.ByChance.Share, 3*odds.ByChance.Error, "Φ((1 − 2.316)/1.558)")
	}
}

func TestFirstGapIsNeverGuessed(t *testing.T) {
	k, _ := closed(t, `first_gap = "18mm"`, "")
	_, ok := k.Ends()
	assert.False(t, ok)
	_, ok = k.Table()
	assert.False(t, ok)
	assert.Positive(t, k.Sides.Least.Get(), "the sides do not hang on it")
}

func TestNothingProjects(t *testing.T) {
	k, _ := closed(t, `last      = "slide"`, `last = "drop"`)
	assert.Zero(t, k.Projection.Get(), "tenons set from above")
	k, _ = closed(t, "along     = 6\naround    = 1", "along = 1\naround = 1")
	assert.Zero(t, k.Projection.Get(), "one panel")
	assert.Zero(t, k.Line.Get().Seams)
	ends, _ := k.Ends()
	assert.InDelta(t, 0.046, ends.Last.Get(), 1e-9, "no seam gaps")
}

// With a first gap of 36mm the last is 1mm over the projection. By the normal
// distribution, cut off at three standard deviations: 0.001/(4.738/3·0.98658) =
// 0.642, Φ = 0.7395; with the panels alike √(16 + 36 + 0.45) = 7.242mm, 0.420, Φ =
// 0.6627. A sum of a dozen terms is as good as normal.
func TestOdds(t *testing.T) {
	k, _ := closed(t, `first_gap = "18mm"`, `first_gap = "36mm"`)
	ends, _ := k.Ends()
	odds := ends.Odds.Get()
	assert.False(t, odds.Decided)
	assert.InDelta(t, 0.7395, odds.ByChance.Share, 3*odds.ByChance.Error)
	assert.InDelta(t, 0.6627, odds.Alike.Share, 3*odds.Alike.Error)
	k, _ = closed(t, `first_gap = "18mm"`, `first_gap = "60mm"`)
	ends, _ = k.Ends()
	assert.True(t, ends.Odds.Get().Decided)
	assert.Zero(t, ends.Odds.Get().ByChance.Share)
}

// The gap beside a foot at its widest and at its tightest differ by both
// tolerances of the room and the panel, and by the form's, halved.
func TestSides(t *testing.T) {
	k, c := closed(t)
	assert.InDelta(t, (0.004+0.001+0.002*c.Vault.Spread.Get())+k.Sides.Least.Get(), c.WidestSideGap(), 1e-12)
	assert.Greater(t, k.Sides.Most.Get().Value, c.WidestSideGap(), "the dry season draws the feet in")
	assert.InDelta(t, math.Sqrt(5+5*0.09)/1000, k.Line.Get().ByChance, 1e-9)
	assert.InDelta(t, math.Sqrt(25+5*0.09)/1000, k.Line.Get().Alike, 1e-9)
	assert.InDelta(t, 0.0065, k.Line.Get().Worst, 1e-12)
}

func TestTableAddsUp(t *testing.T) {
	k, _ := closed(t)
	table, ok := k.Table()
	require.True(t, ok)
	sum, share := 0.0, 0.0
	for _, r := range table.Rows[:len(table.Rows)-1] {
		require.Len(t, r.Values, len(table.Head)-1)
		sign := 1.0
		if strings.HasPrefix(r.Label, "less ") {
			sign = -1
		}
		sum += sign * r.Values[0].SI * r.Values[1].SI
		share += r.Values[3].SI
	}
	ends, _ := k.Ends()
	assert.InDelta(t, ends.Last.Get(), sum, 1e-12)
	assert.InDelta(t, 1, share, 1e-12)
}

func BenchmarkOf(b *testing.B) {
	_, c := closed(b, `first_gap = "18mm"`, `first_gap = "36mm"`)
	s := seasons.Of(c)
	b.Run("decided", func(b *testing.B) {
		for b.Loop() {
			ends, _ := closing.Of(c, s).Ends()
			ends.Odds.Get()
		}
	})
	b.Run("drawn", func(b *testing.B) {
		for b.Loop() {
			ends, _ := closing.Of(c, s).Ends()
			ends.Odds.Get()
		}
	})
}
