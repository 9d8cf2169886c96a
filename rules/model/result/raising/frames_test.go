package raising_test

import (
	"strings"
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
	return result.Of(sample.Room(t, changes), carrying.Search{}, nil).Frames()
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
		"split": {map[string]any{"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}}, 7},
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
	list := result.Of(c, carrying.Search{}, nil).Frames()
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

// By hand, of the demo in two pieces: each is 2317mm of an arc of R 3045mm, 43.60 degrees;
// its chord is 2·3045·sin 21.80° = 2262mm and its rise 3045·(1 − cos 21.80°) = 217.8mm, its
// extrados 60mm over that. On edge it is 1180mm high, its box √(1180² + 277.8²) = 1212mm on
// the way down. Both pieces together weigh what the whole arch does: raise.weight, 629.9N.
func TestAPieceComesAndIsTurnedOnItsChord(t *testing.T) {
	changes := map[string]any{"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}, "lift.stations": []any{"25%", "75%"}}
	list := framed(t, changes)
	require.Len(t, list, 7)
	const mm = 0.0005
	comes, down := list[0], list[1]
	assert.Equal(t, "piece 1 arrives on its edge", comes.Name)
	assert.Equal(t, "piece 1 is turned down onto the ends of its chord", down.Name)
	assert.Equal(t, 1, comes.Piece)
	assert.InDelta(t, 1.180, comes.Top, mm)
	assert.InDelta(t, 1.212, down.Top, mm)
	low, high := comes.Plan[0].Bounds()
	assert.InDelta(t, 0.2778, high.Z-low.Z, mm)
	assert.InDelta(t, 629.9/2, comes.Weight, 0.006*629.9, "one half has a fitting of 0.4kg, 3.9N")
	// Its centre is over the chord by less than its rise, and by more than 2/3 of it: the
	// middle of a thin arc is at 2/3, and skin and ribs lie behind it.
	lift := comes.Weight * (comes.Centre.Along - down.Centre.Along) / 0.2778
	assert.InDelta(t, down.Carried[0].Force, -lift, 0.01*down.Weight)
	assert.Greater(t, down.Carried[0].Force/down.Weight, 2.0/3*217.8/277.8)
	assert.Less(t, down.Carried[0].Force/down.Weight, 1.0)
	assert.InDelta(t, down.Weight/2, down.Also[0].Force, 1e-9, "its mass is half way along, and it is held at its end")
	assert.Contains(t, strings.Join(list[4].Lines(quantity.Metric), "\n"), "It arrives and is turned down in the same way as piece 1.")
	assert.Contains(t, strings.Join(list[2].Lines(quantity.Metric), "\n"), "onto its forks is not computed and not drawn")
}

// The concourse's arch in four has plumb feet at its springings alone: of its outer pieces
// the first is drawn turned, of the inner ones the second, and the others as they are.
func TestPiecesThatDifferAreEachTurned(t *testing.T) {
	var names, same []string
	for _, f := range result.Of(sample.Ceiling(t, "concourse", nil), carrying.Search{}, nil).Frames() {
		if strings.Contains(f.Name, "arrives") {
			names = append(names, f.Name)
		}
		for _, line := range f.Unknown {
			if strings.Contains(line, "is turned down in the same way as") {
				same = append(same, f.Of+": "+line)
			}
		}
	}
	assert.Equal(t, []string{"piece 1 arrives on its edge", "piece 2 arrives on its edge"}, names)
	assert.Equal(t, []string{"panel 7: It arrives and is turned down in the same way as piece 2.", "panel 8: It arrives and is turned down in the same way as piece 1."}, same)
}

// Forks stowed at 700mm do not go under 622mm of clear height: blocks of 78mm.
func TestBlocksLetTheForksUnder(t *testing.T) {
	c := sample.Ceiling(t, "reading-room", map[string]any{"lift.stowed": "700mm"})
	f := result.Of(c, carrying.Search{}, nil).Frames()[2]
	assert.InDelta(t, 0.700, f.Forks[0].Height, 1e-9)
	assert.Contains(t, f.Hands, raising.Hands{For: "to lift it onto blocks under its feet", Takes: 6})
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
	b := result.Of(c, carrying.Search{}, nil).Frames()[4].Base
	require.NotNil(t, b)
	assert.InDelta(t, 0.600, b.Before, 1e-9)
	assert.InDelta(t, 0.628, b.After, 1e-9)
	assert.InDelta(t, 0.900, b.End, 1e-9)
}

// Where there is no plan there are no frames.
func TestNoPlanNoFrames(t *testing.T) {
	assert.Empty(t, framed(t, map[string]any{"lift.stations": []any{"2%", "4%"}}))
}
