package standards_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
)

// What no file says of the shop is common practice: 12 ft boards, an eighth of an inch
// of kerf, scarfs of 1 in 12.
func TestTheShopAsBuiltIn(t *testing.T) {
	s := standards.BuiltIn().Shop()
	assert.InDelta(t, 3.66, s.Blank, 1e-12)
	assert.Zero(t, s.Press)
	assert.Zero(t, s.Pick)
	assert.InDelta(t, 0.0032, s.Kerf, 1e-12)
	assert.InDelta(t, 0.0008, s.Plane, 1e-12)
	assert.InDelta(t, 0.006, s.Joint, 1e-12)
	assert.InDelta(t, 12, s.Scarf.Slope, 0)
	assert.True(t, s.Scarf.Allowed)
	assert.InDelta(t, 1.4e6, s.Clamp.Hardwood, 1e-6)
	assert.InDelta(t, 0.2, s.Defect.Hardwood, 1e-12)
	assert.Equal(t, []int{4, 5, 6, 8, 10, 12, 16}, s.Stock)
	for _, d := range s.Settings() {
		assert.True(t, d.Origin.BuiltIn(), d.Key)
		assert.Equal(t, "common practice", d.Source, d.Key)
	}
}

// Key by key the nearest file says what the shop has.
func TestTheNearestShopWins(t *testing.T) {
	near := layer(t, "near", "[shop]\nblank = \"14ft\"\nscarf = { allowed = false }\nsource = \"our bench\"")
	far := layer(t, "far", "[shop]\nblank = \"3m\"\npress = \"6m\"\nstock = [\"8/4\", \"4/4\"]\nscarf = { slope = 8 }")
	s := standards.With(near, far).Shop()
	assert.InDelta(t, 14*0.3048, s.Blank, 1e-12)
	assert.InDelta(t, 6, s.Press, 1e-12)
	assert.False(t, s.Scarf.Allowed)
	assert.InDelta(t, 8, s.Scarf.Slope, 0)
	assert.Equal(t, []int{4, 8}, s.Stock)
	set, ok := s.Set("blank")
	require.True(t, ok)
	assert.Equal(t, standards.Setting{Value: "14ft", Source: "our bench", Origin: standards.Origin{File: "near", Line: 4}}, set)
	set, _ = s.Set("press")
	assert.Equal(t, "far", set.Source, "without a source the file's own name stands for it")
	_, ok = s.Set("kerf")
	assert.False(t, ok)
}

// What no shop can have is refused at its place.
func TestMistakesInTheShop(t *testing.T) {
	for _, c := range []struct{ src, key, message string }{
		{`blank = "0mm"`, "shop.blank", `"0mm" must be greater than zero`},
		{`kerf = "-1mm"`, "shop.kerf", `"-1mm" must be greater than zero`},
		{`trim = { strip = "0mm" }`, "shop.trim.strip", `"0mm" must be greater than zero`},
		{`pick = "60mm"`, "shop.pick", ""},
		{`scarf = { slope = 3 }`, "shop.scarf.slope", "a scarf of 1 in 3 is too steep; the minimum is 1 in 4"},
		{`scarf = { slope = -3 }`, "shop.scarf.slope", ""},
		{`blank = "150mm"`, "shop.blank", "a blank of 150mm is no longer than the trim of a strip's two ends, 2 × 75mm"},
		{`trim = { strip = "2m" }`, "shop.trim.strip", "a blank of 3660mm is no longer"},
		{`press = "100mm"`, "shop.press", "a press of 100mm is no longer"},
		{`stock = []`, "shop.stock", ""},
		{`stock = ["7/4"]`, "shop.stock.1", "no surfaced thickness is published for 7/4 stock"},
		{`stock = ["2in"]`, "shop.stock.1", "not a nominal stock"},
		{`defect = { hardwood = "100%" }`, "shop.defect.hardwood", "less than 100%"},
		{`blanks = "3m"`, "shop.blanks", "blank"},
		{`source = " "`, "shop.source", "state where the values come from"},
	} {
		_, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[shop]\n"+c.src))
		if assert.Len(t, problems, 1, c.src) {
			assert.Equal(t, c.key, problems[0].Key, c.src)
			assert.Contains(t, problems[0].Message, c.message, c.src)
			assert.Equal(t, 4, problems[0].Position.Line, c.src)
		}
	}
}
