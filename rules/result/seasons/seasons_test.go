package seasons_test

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/layout"
	"dryfit/rules/result/seasons"
	"dryfit/rules/standards"
	"dryfit/spec"
)

func demo(t *testing.T, changes map[string]any) *layout.Ceiling {
	src, err := os.ReadFile("../../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	d, problems := spec.Parse("demo", src)
	require.Empty(t, problems)
	tree := d.Tree
	for key, value := range changes {
		changed, ok := spec.With(tree, key, value)
		require.True(t, ok, key)
		tree = changed
	}
	c, faults := layout.Resolve(tree, standards.BuiltIn())
	require.Empty(t, faults)
	return c
}

// Vertical-grain white oak, Wood Handbook 2010, table 13-5: C_R = 0.00180 by
// percent, C_T = 0.00365. From the shop's 8.485 % to the wet season's 10.9 %, by
// hand: the width of 90 mm is radial, 90·0.00180·ΔM; the strips' thickness, and
// so the depth, is tangential.
func TestWetSeason(t *testing.T) {
	c := demo(t, nil)
	s := seasons.Of(c)
	points := 100 * (c.Climate.Wet - c.Climate.Shop)
	require.InDelta(t, 2.4, points, 0.1)
	require.NoError(t, s.Wet.RibWidth.Err)
	assert.InDelta(t, 0.090*0.00180*points, s.Wet.RibWidth.Value, 1e-9)
	assert.InDelta(t, 6*0.090*0.00180*points, s.Wet.Along.Value, 1e-9, "six rib widths along the vault")
	assert.InDelta(t, 0.00365*points, s.Wet.RibDepth.Value, 1e-9)
	assert.InDelta(t, 0.090*0.00365*points, s.Wet.RailWidth.Value, 1e-9, "the rail is of flat grain")
	assert.InDelta(t, 0.010-0.090*0.00180*points, s.Wet.Reveal.Value, 1e-9)
}

// The dry season lies under 6 %, where the handbook's second equation holds:
// D·(M_f − M_i)/(3000/S − 30 + M_i), S = 5.6 % radial shrinkage, by hand.
func TestDrySeason(t *testing.T) {
	c := demo(t, nil)
	shop, dry := 100*c.Climate.Shop, 100*c.Climate.Dry
	require.Less(t, dry, 6.0)
	want := 0.090 * (dry - shop) / (30*100/5.6 - 30 + shop)
	assert.InDelta(t, want, seasons.Of(c).Dry.RibWidth.Value, 1e-9)
}

// The circular arc's own formula: the chord becomes 2R(1 + e)·sin(φ/(1 + e)).
func TestFeetOfAnArc(t *testing.T) {
	c := demo(t, nil)
	s := seasons.Of(c)
	for _, season := range []seasons.Season{s.Dry, s.Wet} {
		e := season.RibDepth.Value
		// The arc's length is that of the intrados, which the form of the angle
		// keeps: R·φ = R(1 + e)·φ/(1 + e).
		want := 3.045*(1+e)*math.Sin(c.Vault.HalfAngle/(1+e)) - 2.1
		assert.InDelta(t, want, season.Foot.Value, 1e-6, season.Name)
	}
	assert.Less(t, s.Dry.Foot.Value, 0.0, "drying closes the curve and draws the feet in")
	assert.Greater(t, s.Wet.Foot.Value, 0.0)
}

func TestAFlatCeilingsFeetStay(t *testing.T) {
	c := demo(t, map[string]any{"vault": map[string]any{"profile": "flat", "span": "4200mm", "length": "7080mm"}})
	assert.Zero(t, seasons.Of(c).Wet.Foot.Value)
}

func TestAMissingFigureIsSaid(t *testing.T) {
	c := demo(t, map[string]any{"rail.species": "white spruce"})
	s := seasons.Of(c)
	assert.NoError(t, s.Wet.RibWidth.Err)
	assert.Error(t, s.Wet.RailWidth.Err, "no coefficient is held for white spruce")
}

// A sawn rib's depth is its boards' width.
func TestSawnRibs(t *testing.T) {
	c := demo(t, map[string]any{"rib": map[string]any{
		"species": "white oak", "cut": "vertical", "construction": "sawn", "width": "90mm", "depth": "60mm",
	}})
	s := seasons.Of(c)
	points := 100 * (c.Climate.Wet - c.Climate.Shop)
	assert.InDelta(t, 0.00180*points, s.Wet.RibDepth.Value, 1e-9)
	assert.InDelta(t, 0.090*0.00365*points, s.Wet.RibWidth.Value, 1e-9)
}
