package raising_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/raising"
	"dryfit/rules/model/sample"
	"dryfit/spec/quantity"
)

func framed(t *testing.T, changes map[string]any) []raising.Frame {
	t.Helper()
	return result.Of(sample.Room(t, changes), carrying.Search{}).Frames()
}

func total(list []raising.Share) (sum float64) {
	for _, s := range list {
		sum += s.Force
	}
	return sum
}

// In each frame, and after each of its steps, what carries the panel carries its weight:
// balance of the upright forces, to a thousandth.
func TestEachFrameCarriesTheWeight(t *testing.T) {
	for name, tt := range map[string]struct {
		changes map[string]any
		frames  int
	}{
		"whole": {map[string]any{}, 6},
		"one":   {map[string]any{"panels.along": int64(1), "grid.along": int64(1)}, 6},
		"split": {map[string]any{"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}}, 5},
		"five":  {map[string]any{"strap.stations": []any{"10%", "30%", "50%", "70%", "90%"}}, 6},
	} {
		tt.changes["lift.stations"] = []any{"25%", "75%"}
		list := framed(t, tt.changes)
		require.Len(t, list, tt.frames, name)
		for _, f := range list {
			assert.InEpsilon(t, f.Weight, total(f.Carried), 1e-3, "%s: %s", name, f.Name)
			for _, s := range f.After {
				assert.InEpsilon(t, f.Weight, total(s.Carried), 1e-3, "%s: %s", name, s.Name)
			}
			assert.Equal(t, raising.NoRelease, f.Release, name)
			lines := f.Lines(quantity.Metric)
			assert.Equal(t, "Do not pass until "+f.Until+".", lines[len(lines)-1])
		}
	}
}

// By hand, of the demo, whose intrados has R 3045mm: at a quarter of its arc, 21.80
// degrees from the crown, it is 3045·cos 21.80° − 2205 = 622mm over the springing, and
// with the springing at 2700mm 3322mm over the floor. Its extrados is 60mm over the
// crown, 3600mm over the floor. Of 4240mm ± 4mm 18mm is left on each side of 4200mm. The
// slide is half of 50mm and 3mm. The box on edge is 1180mm by 900mm: √ of the sum of
// squares 1484mm.
func TestTheFramesOfTheReadingRoom(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", nil)
	list := result.Of(c, carrying.Search{}).Frames()
	require.Len(t, list, 6)
	const mm = 0.0005
	assert.InDelta(t, 1.180, list[0].Top, mm)
	assert.InDelta(t, 1.484, list[1].Top, mm)
	assert.InDelta(t, 0.622, list[2].Forks[0].Height, mm)
	assert.InDelta(t, 3.322, list[3].Forks[1].Height, mm)
	assert.InDelta(t, 3.600, list[3].Top, mm)
	assert.InDelta(t, 0.018, list[3].Gap.Size, mm)
	assert.InDelta(t, 0.003, list[4].Gap.Size, mm)
	assert.Contains(t, list[4].Name, "slid home by 28mm")
	assert.Equal(t, []raising.Hands{{For: "to lift it off what it rolls on", Takes: 6}}, list[0].Hands)
	assert.Equal(t, "straps tight on both ribs, in the order 1, 4, 2, 3", list[5].After[0].Name)
	assert.Equal(t, 2, list[3].Panel)
}

// Forks stowed at 700mm do not go under 622mm of clear height: blocks of 78mm.
func TestBlocksLetTheForksUnder(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", map[string]any{"lift.stowed": "700mm"})
	f := result.Of(c, carrying.Search{}).Frames()[2]
	assert.InDelta(t, 0.700, f.Forks[0].Height, 1e-9)
	assert.Contains(t, f.Hands, raising.Hands{For: "to lift it on to blocks under its feet", Takes: 6})
	for _, g := range raising.Figures(c) {
		if g.Key == "raise.blocks" {
			assert.InDelta(t, 0.078, g.Value.SI, 0.0005)
		}
	}
}

// With a base the mass is placed on it before and after the slide: a panel of 1180mm
// whose forks' load centre is 600mm from the heel has its mass there, and 28mm on.
func TestTheMassOnItsBases(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", map[string]any{"lift.base": map[string]any{"along": "900mm", "across": "700mm", "heel": "600mm"}})
	b := result.Of(c, carrying.Search{}).Frames()[4].Base
	require.NotNil(t, b)
	assert.InDelta(t, 0.600, b.Before, 1e-9)
	assert.InDelta(t, 0.628, b.After, 1e-9)
	assert.InDelta(t, 0.900, b.End, 1e-9)
}

// Where there is no plan there are no frames.
func TestNoPlanNoFrames(t *testing.T) {
	assert.Empty(t, framed(t, map[string]any{"lift.stations": []any{"2%", "4%"}}))
}
