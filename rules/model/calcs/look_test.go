package calcs

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// looks are the figures of a look, by key, in SI.
func looks(c *layout.Ceiling) map[string]float64 {
	out := map[string]float64{}
	for _, f := range Figures(c) {
		if f.Subject == "look" {
			out[f.Key] = f.Value.SI
		}
	}
	return out
}

// By hand, of modules of 1180 by 772.428 with members 90 wide, in an arc of 4634.568
// by 7080: the members take 1 − 36·1090·682.428/(4634.568·7080) = 18.39%; the coffer
// is 51 deep and 682.428 wide, 7.47%; 1180/772.428 by 7144/4240 is 0.9067.
func TestLookOfCoffers(t *testing.T) {
	got := looks(sample.Room(t, nil))
	assert.InDelta(t, 0.1839, got["look.member-share"], 5e-5)
	assert.InDelta(t, 0.0747, got["look.coffer-depth"], 5e-5)
	assert.InDelta(t, 0.9067, got["look.coffer-room"], 5e-5)
	assert.Zero(t, got["look.crown-coffers"], "a rail at the crown of six")
	assert.InDelta(t, 1, looks(sample.Room(t, map[string]any{"grid.around": int64(7)}))["look.crown-coffers"], 0)
	assert.NotContains(t, got, "look.aligned", "no window is named")
	// A grid that fills its ends with whole ribs: (7080 − 90)/6 = 1165 of module.
	full := looks(sample.Room(t, map[string]any{"grid.ends": "full"}))
	assert.InDelta(t, 1-36*1075*682.428/(4634.568*7080), full["look.member-share"], 5e-7)
}

// curves are vaults 4200 wide whose row at the crown was placed by hand, with six
// around: half a module off the crown.
func curves() map[string]struct {
	vault map[string]any
	row   float64
} {
	pointed := (2.6*2.6 + 2.1*2.1) / 4.2 // radius
	half := math.Acos(1 - 2.1/pointed)   // angle of one side
	crown := 3.0                         // radius, with the rise of 1.5 and haunches of r
	r := (2*crown*1.5 - 2.1*2.1 - 1.5*1.5) / (2 * (crown - 2.1))
	beta := math.Atan((2.1 - r) / (crown - 1.5))
	arc := 2 * (crown*beta + r*(math.Pi/2-beta))
	type row = struct {
		vault map[string]any
		row   float64
	}
	return map[string]row{
		"flat":          {map[string]any{"profile": "flat"}, 0},
		"segmental":     {map[string]any{"profile": "segmental", "rise": "840mm"}, 0.84 - 3.045*(1-math.Cos(4.63457/12/3.045))},
		"semicircular":  {map[string]any{"profile": "semicircular"}, 2.1 * math.Cos(math.Pi/12)},
		"pointed":       {map[string]any{"profile": "pointed", "rise": "2600mm"}, pointed * math.Sin(half*5/6)},
		"three-centred": {map[string]any{"profile": "three-centred", "rise": "1500mm", "crown_radius": "3000mm"}, 1.5 - crown*(1-math.Cos(arc/12/crown))},
	}
}

func TestRowAtTheCrown(t *testing.T) {
	for name, of := range curves() {
		of.vault["span"], of.vault["length"] = "4200mm", "7080mm"
		changes := map[string]any{"vault": of.vault, "springing": map[string]any{}}
		c := sample.Room(t, changes)
		assert.InDelta(t, of.row, crownRow(c), 1e-5, name)
		up := 1.1 + of.row // from the eye at 1600 to a springing at 2700
		want := min(6, math.Ceil((1.090*up/0.051-0.089)/1.180))
		assert.InDelta(t, want, looks(c)["look.coffers-met"], 0, name)
		changes["grid.around"] = int64(7)
		odd := sample.Room(t, changes)
		assert.InDelta(t, odd.Vault.Rise.Get(), crownRow(odd), 1e-9, "%s: seven have a coffer at the crown", name)
	}
}

// Under a flat ceiling 100 above the eye a line of sight past a rib at x rises by 51
// in 0.51x, and meets the skin before the next rib, 1090 on, up to x = 2137. The first
// ribs end at 89, 1269 and 2449: two coffers. From the side, between rails 610 apart,
// up to x = 1196, where rails end at 45, 745 and 1445: two again; 50 above the eye up
// to 598, one.
func TestCoffersMet(t *testing.T) {
	flat := func(eye, entry string) *layout.Ceiling {
		return sample.Room(t, map[string]any{
			"vault": map[string]any{"profile": "flat", "span": "4200mm", "length": "7080mm"}, "room.eye": eye, "room.entry": entry,
		})
	}
	assert.InDelta(t, 2, looks(flat("2600mm", "end"))["look.coffers-met"], 0)
	assert.InDelta(t, 2, looks(flat("2600mm", "side"))["look.coffers-met"], 0)
	assert.InDelta(t, 1, looks(flat("2650mm", "side"))["look.coffers-met"], 0)
	for _, entry := range []string{"end", "side"} {
		assert.NotContains(t, looks(flat("2700mm", entry)), "look.coffers-met", "an eye at the springing")
	}
}

// In half a circle of 2100 with the skin 300 behind, the eye at the left springing:
// lines of sight past the edges of the first coffer stand 0.6 and 12.2 degrees off
// the plumb, half of the angles at the centre, and its skin ends at −4.8. Of the second
// coffer they stand 13.5 and 25.1 off, and the skin ends at 17.0. It is hidden in the
// first of seven only.
func TestCoffersMetBesideTheEye(t *testing.T) {
	c := sample.Room(t, map[string]any{
		"vault":     map[string]any{"profile": "semicircular", "span": "4200mm", "length": "7080mm"},
		"springing": map[string]any{}, "grid.around": int64(7), "room.eye": "2699mm", "room.entry": "side",
		"rib.depth": "320mm", "rail.depth": "300mm", "skin.setback": "300mm", "rib.lamination": "5mm",
	})
	assert.Equal(t, 6, coffersAround(c))
}

// The vault begins 44 from the wall; the first seam's gap is 0.4. Rib 1 is at 1224.2,
// rib 2 at 2404.6, the middle between them at 1814.4: 1750 is 64.4 off, 1800 14.4,
// 1225 0.8.
func TestAligned(t *testing.T) {
	c := sample.Room(t, map[string]any{"align": []any{
		map[string]any{"name": "north window", "at": "1750mm"}, map[string]any{"at": "1800mm"}, map[string]any{"at": "4ft 7/32in"},
	}})
	got := looks(c)
	assert.InDelta(t, 0.0644, got["look.align.1"], 1e-6)
	assert.InDelta(t, 0.0144, got["look.align.2"], 1e-6)
	assert.InDelta(t, 1.2242-1.22476, -got["look.align.3"], 1e-5)
	assert.InDelta(t, 2, got["look.aligned"], 0)
	var names []string
	for _, f := range Figures(c) {
		if f.Key == "look.align.1" || f.Key == "look.align.2" {
			names = append(names, f.Name)
			require.NotEqual(t, figure.Figure{}.Inputs, f.Inputs)
		}
	}
	assert.Contains(t, names[0], "north window")
	assert.Contains(t, names[1], "middle of 2")
}
