package seasons_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/sample"
	"dryfit/spec/record"
)

// number is a figure that comes from nothing.
func number(v float64) layout.Number { return record.Of(nil, func() float64 { return v }) }

// Vertical-grain white oak, Wood Handbook 2010, table 13-5: C_R = 0.00180 by
// percent, C_T = 0.00365. From the shop's 8.485 % to the wet season's 10.9 %, by
// hand: the width of 90 mm is radial, 90·0.00180·ΔM; the strips' thickness, and
// so the depth, is tangential.
func TestWetSeason(t *testing.T) {
	c := sample.Room(t, nil)
	s := seasons.Of(c)
	points := 100 * (c.Climate.Wet.Get() - c.Climate.Shop.Get())
	require.InDelta(t, 2.4, points, 0.1)
	require.NoError(t, s.Wet.RibWidth.Get().Err)
	assert.InDelta(t, 0.090*0.00180*points, s.Wet.RibWidth.Get().Value, 1e-9)
	assert.InDelta(t, 6*0.090*0.00180*points, s.Wet.Along.Get().Value, 1e-9, "six rib widths along the vault")
	assert.InDelta(t, 0.00365*points, s.Wet.RibDepth.Get().Value, 1e-9)
	assert.InDelta(t, 0.090*0.00365*points, s.Wet.RailWidth.Get().Value, 1e-9, "the rail is of flat grain")
	assert.InDelta(t, 0.010-0.090*0.00180*points, s.Wet.Reveal.Get().Value, 1e-9)
}

// Panels that meet close a reveal no further: a growth of 0.39mm closes it by a
// gap of 0.1mm, and by all of 0.39mm where the gap is 2mm.
func TestARevealClosesByItsSeamsGap(t *testing.T) {
	for gap, want := range map[string]float64{"0.1mm": 0.0099, "0mm": 0.010} {
		assert.InDelta(t, want, seasons.Of(sample.Room(t, map[string]any{"seam.gap": gap})).Wet.Reveal.Get().Value, 1e-12, gap)
	}
	s := seasons.Of(sample.Room(t, map[string]any{"seam.gap": "2mm"}))
	assert.InDelta(t, 0.010-s.Wet.RibWidth.Get().Value, s.Wet.Reveal.Get().Value, 1e-12)
	assert.Greater(t, s.Dry.Reveal.Get().Value, 0.010, "drying opens it")
}

// The dry season lies under 6 %, where the handbook's second equation holds:
// D·(M_f − M_i)/(3000/S − 30 + M_i), S = 5.6 % radial shrinkage, by hand.
func TestDrySeason(t *testing.T) {
	c := sample.Room(t, nil)
	shop, dry := 100*c.Climate.Shop.Get(), 100*c.Climate.Dry.Get()
	require.Less(t, dry, 6.0)
	want := 0.090 * (dry - shop) / (30*100/5.6 - 30 + shop)
	assert.InDelta(t, want, seasons.Of(c).Dry.RibWidth.Get().Value, 1e-9)
}

// The circular arc's own formula: the chord becomes 2R(1 + e)·sin(φ/(1 + e)).
func TestFeetOfAnArc(t *testing.T) {
	c := sample.Room(t, nil)
	s := seasons.Of(c)
	for _, season := range []seasons.Season{s.Dry, s.Wet} {
		e := season.RibDepth.Get().Value
		// The arc's length is that of the intrados, which the form of the angle
		// keeps: R·φ = R(1 + e)·φ/(1 + e).
		want := 3.045*(1+e)*math.Sin(c.Vault.HalfAngle.Get()/(1+e)) - 2.1
		assert.InDelta(t, want, season.Foot.Get().Value, 1e-6, season.Name)
	}
	assert.Less(t, s.Dry.Foot.Get().Value, 0.0, "drying closes the curve and draws the feet in")
	assert.Greater(t, s.Wet.Foot.Get().Value, 0.0)
}

func TestAFlatCeilingsFeetStay(t *testing.T) {
	c := sample.Room(t, map[string]any{"vault": map[string]any{"profile": "flat", "span": "4200mm", "length": "7080mm"}})
	assert.Zero(t, seasons.Of(c).Wet.Foot.Get().Value)
}

func TestAMissingFigureIsSaid(t *testing.T) {
	c := sample.Room(t, map[string]any{"rail.species": "white spruce"})
	s := seasons.Of(c)
	assert.NoError(t, s.Wet.RibWidth.Get().Err)
	assert.Error(t, s.Wet.RailWidth.Get().Err, "no coefficient is held for white spruce")
}

// A sawn rib's depth is its boards' width.
func TestSawnRibs(t *testing.T) {
	c := sample.Room(t, map[string]any{"rib": map[string]any{
		"species": "white oak", "cut": "vertical", "construction": "sawn", "width": "90mm", "depth": "60mm",
	}})
	s := seasons.Of(c)
	points := 100 * (c.Climate.Wet.Get() - c.Climate.Shop.Get())
	assert.InDelta(t, 0.00180*points, s.Wet.RibDepth.Get().Value, 1e-9)
	assert.InDelta(t, 0.090*0.00365*points, s.Wet.RibWidth.Get().Value, 1e-9)
}

// A three-centred curve of span 4200, rise 1500 and haunches of 900mm has a crown
// of (2.1² + 1.5² − 2·2.1·0.9)/(2·0.6) = 2.4m to sin⁻¹((2.1 − 0.9)/(2.4 − 0.9)) =
// sin⁻¹ 0.8. With k = 1/(1 + e) each arc gives R·(sin kψ₂ − sin kψ₁)/k of the half
// chord.
func TestFeetOfThreeCentres(t *testing.T) {
	c := sample.Room(t, map[string]any{"springing": map[string]any{}, "vault": map[string]any{
		"profile": "three-centred", "span": "4200mm", "rise": "1500mm", "haunch_radius": "900mm", "length": "7080mm",
	}})
	s := seasons.Of(c)
	for _, season := range []seasons.Season{s.Dry, s.Wet} {
		k := 1 / (1 + season.RibDepth.Get().Value)
		join := math.Asin(0.8)
		half := (2.4*math.Sin(k*join) + 0.9*(math.Sin(k*math.Pi/2)-math.Sin(k*join))) / k
		assert.InDelta(t, half-2.1, season.Foot.Get().Value, 1e-6, season.Name)
		assert.InDelta(t, math.Pi/2*(k-1), season.Angle.Get().Value, 1e-9, season.Name)
	}
}

// The wetter the season, the wider the members, the tighter the reveal and the
// flatter the arch; in the shop's own air nothing moves.
func TestMoreMoistureNeverMovesBack(t *testing.T) {
	c := sample.Room(t, nil)
	c.Climate.Wet = c.Climate.Shop
	still := seasons.Of(c).Wet
	for _, v := range []seasons.Figure{still.RibWidth, still.RailWidth, still.RibDepth, still.Along, still.Angle, still.Foot} {
		require.NoError(t, v.Get().Err)
		assert.InDelta(t, 0, v.Get().Value, 1e-15)
	}
	assert.InDelta(t, 0.010, still.Reveal.Get().Value, 1e-15)

	for _, within := range [][2]float64{{0.06, 0.14}, {0.141, 0.25}} {
		var last seasons.Season
		for i := range 20 {
			c.Climate.Wet = number(within[0] + (within[1]-within[0])*float64(i)/20)
			s := seasons.Of(c).Wet
			if i > 0 {
				assert.Greater(t, s.RibWidth.Get().Value, last.RibWidth.Get().Value)
				assert.Greater(t, s.Along.Get().Value, last.Along.Get().Value)
				assert.Greater(t, s.Foot.Get().Value, last.Foot.Get().Value)
				assert.Less(t, s.Angle.Get().Value, last.Angle.Get().Value)
				assert.LessOrEqual(t, s.Reveal.Get().Value, last.Reveal.Get().Value)
			}
			last = s
		}
	}
}

func TestWhereARevealLiesAtASeam(t *testing.T) {
	layers := func(outer, inner string) map[string]any {
		layer := func(setback string) map[string]any {
			return map[string]any{"stock": "5/4", "depth": "52mm", "setback": setback}
		}
		return map[string]any{
			"grid.reveal": map[string]any{"width": "27mm", "depth": "8mm", "at": "layers"},
			"rib": map[string]any{
				"species": "white oak", "construction": "sawn", "width": "108mm", "depth": "60mm",
				"layer": []any{layer(outer), layer(inner), layer(inner), layer(outer)},
			},
		}
	}
	at := func(place string) map[string]any {
		return map[string]any{"grid.reveal": map[string]any{"width": "10mm", "depth": "8mm", "at": place}}
	}
	for _, e := range []struct {
		name    string
		changes map[string]any
		width   float64
		ok      bool
	}{
		{"at the seam", at("seam"), 0.010, true},
		{"in the sides of the members", at("sides"), 0, false},
		{"the middle layers set back", layers("0mm", "8mm"), 0.027, true},
		{"the outer layers set back", layers("8mm", "0mm"), 0, false},
		{"one panel, no seam", map[string]any{"panels.along": int64(1)}, 0, false},
	} {
		c := sample.Room(t, e.changes)
		width, ok := seasons.SeamReveal(c)
		assert.Equal(t, e.ok, ok, e.name)
		assert.InDelta(t, e.width, width, 1e-12, e.name)
		assert.Equal(t, e.ok, seasons.Of(c).Wet.Reveal.Get().Value != 0, e.name)
	}
}

// The steps give the closed form of one arc to round-off.
func TestFootStepsSuffice(t *testing.T) {
	for _, half := range []struct{ radius, angle, e float64 }{{3.045, 0.761, 0.0087}, {2.1, math.Pi / 2, -0.02}, {20, 0.2, 0.01}} {
		c := layout.Ceiling{}
		intrados, err := curve.Segmental(2*half.radius*math.Sin(half.angle), half.radius*(1-math.Cos(half.angle)))
		if half.angle == math.Pi/2 {
			intrados, err = curve.Semicircular(2 * half.radius)
		}
		require.NoError(t, err)
		c.Vault.Intrados = record.Of(nil, func() curve.Curve { return intrados })
		c.Vault.Arc, c.Vault.TightestRadius = number(intrados.Length()), number(half.radius)
		c.Vault.Radius, c.Vault.Kink = c.Vault.TightestRadius, number(0)
		c.Vault.Slopes = record.Of(nil, c.Vault.HalfSlopes)
		// Closed form of one arc: R(1 + e)·sin(φ/(1 + e)) − R·sin φ.
		want := half.radius * ((1+half.e)*math.Sin(half.angle/(1+half.e)) - math.Sin(half.angle))
		assert.InDelta(t, want, seasons.FootForTest(&c, half.e), 1e-10)
	}
}

// A pointed arch by hand: arcs of radius R and angle θ that leave the crown at a
// slope κ, sin κ = (R − s/2)/R. A strain e of the depth makes the radius R(1 + e)
// and the angle θ/(1 + e); the mitre runs d·tan κ along the grain over a depth d,
// so that its angle becomes atan(tan κ/(1 + e)). Half the span is
// R(1 + e)(sin(κ' + θ') − sin κ'). For a span of 4.2, a radius of 3 and an e of
// 1 %: κ = 17.457603°, κ' = 17.295112°, θ = 72.542397°, θ' = 71.824156°, and the
// foot moves by 3.03·(sin 89.119267° − sin 17.295112°) − 2.1 = +28.8mm; were the
// mitre an arc, by 3.03·(sin 89.108911° − sin 17.284756°) − 2.1 = +29.3mm.
func TestMitreInTheSeasons(t *testing.T) {
	c := sample.Room(t, map[string]any{"vault": map[string]any{"profile": "pointed", "span": "4200mm", "radius": "3000mm", "length": "7080mm"}})
	kink := math.Asin(0.3)
	assert.InDelta(t, kink, c.Vault.Kink.Get(), 1e-12)
	for _, e := range []float64{0.01, -0.02} {
		angle := math.Pi/2 - kink
		mitre := math.Atan(math.Tan(kink) / (1 + e))
		want := 3*(1+e)*(math.Sin(mitre+angle/(1+e))-math.Sin(mitre)) - 2.1
		assert.InDelta(t, want, seasons.FootForTest(c, e), 1e-9)
		assert.InDelta(t, mitre+angle/(1+e), seasons.Slope(c.Vault, e)(math.Pi/2), 1e-12)
	}
	assert.InDelta(t, 0.0288, seasons.FootForTest(c, 0.01), 0.00005)
}
