package hanging_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
)

// By hand, for two pieces of a ceiling whose sine at the springing is 20/29: half
// a rail is 45mm by 51mm at the seam, its middle 22.5mm from the crown. At a
// plumb foot a wedge of it is left, 45mm by 45·21/20 = 47.25mm, and at a level
// one a wedge of 51mm by 51·21/20 = 53.55mm is added. Ribs and skin weigh at their
// centroids, the tenons as good as nothing, and two straps carry by their moments
// about the crown. Straps without a lap are not weighed.
func TestEachEndHasItsOwnHalfRail(t *testing.T) {
	springing := math.Asin(20.0 / 29)
	from := func(share, radius float64) float64 { return radius * math.Sin(springing*(1-2*share)) }
	across := func(along, deep float64) float64 { return 2.1 - along*21/29 + deep*20/29 }
	type wedge struct{ area, from float64 }
	whole := wedge{0.045 * 0.051, across(0.0225, 0.0255)}
	for cut, foot := range map[string][]wedge{
		"plumb": {{0.045 * 0.04725 / 2, across(0.030, 0.01575)}}, "radial": {whole},
		"level": {whole, {0.051 * 0.05355 / 2, across(-0.01785, 0.034)}},
	} {
		c := sample.Room(t, map[string]any{"panels.around": int64(2), "springing.cut": cut, "strap": map[string]any{
			"stations": []any{"10%", "36%", "64%", "90%"}, "width": "25mm", "thickness": "1.5mm",
		}})
		density := 1000 * 0.68 * (1 + c.Climate.Shop.Get()) * 1.090 // white oak
		moment := density * (0.090*0.051*(from(1.0/6, 3.0705)+from(2.0/6, 3.0705)) + 0.045*0.051*0.0225)
		for _, w := range foot {
			moment += density * w.area * w.from
		}
		for _, p := range c.Panel.Pieces.Get() {
			if p.Kind != layout.Rail && p.Kind != layout.HalfRail {
				moment += p.Mass * float64(p.Count) * math.Abs(p.Centre.Y-2.1)
			}
		}
		weight := c.Panel.Mass.Get() / 2 * 9.80665
		outer := (moment/2*9.80665 - weight*from(0.36, 3.075)) / (from(0.10, 3.075) - from(0.36, 3.075))

		h := solve(t, c)
		require.Len(t, h.Alone.Straps, 4, cut)
		assert.InEpsilon(t, 2*weight, h.Weight, 1e-9, cut)
		for name, straps := range map[string][]float64{"alone": h.Alone.Straps, "joined": h.First.Straps} {
			for i, want := range []float64{outer, weight - outer, weight - outer, outer} {
				assert.InEpsilon(t, want, straps[i], 5e-4, "%s feet, %s, strap %d", cut, name, i+1)
			}
			assert.InEpsilon(t, weight, straps[0]+straps[1], 1e-6, "%s feet, %s", cut, name)
		}
	}
}

// The middle one of three pieces has seams at both ends, and its own weight.
func TestEachPieceHasItsOwnWeight(t *testing.T) {
	c := sample.Room(t, map[string]any{
		"panels.around": int64(3), "strap.stations": []any{"5%", "28%", "40%", "60%", "72%", "95%"},
	})
	parts, h := c.Panel.Parts.Get(), solve(t, c)
	require.Len(t, parts, 3)
	assert.Greater(t, parts[1].Mass, 1.01*parts[0].Mass, "a plumb foot is lighter than a seam")
	for k, part := range parts {
		assert.InEpsilon(t, part.Mass/2*9.80665, h.Alone.Straps[2*k]+h.Alone.Straps[2*k+1], 1e-6, "piece %d", k+1)
		lifts := h.Raised.Lifts[2*k : 2*k+2]
		assert.InEpsilon(t, part.Mass/2*9.80665, lifts[0]+lifts[1], 1e-6, "piece %d", k+1)
	}
}

// A strap over a seam within the arch belongs to no piece: nothing is computed of
// it. Half a strap of 30mm is 0.32% of the arc of 4634.6mm.
func TestStrapOnASeamHasNoFigures(t *testing.T) {
	for place, on := range map[string]bool{"50%": true, "50.3%": true, "50.4%": false} {
		err := hanging.Of(sample.Room(t, map[string]any{
			"panels.around": int64(2), "strap.stations": []any{"10%", "40%", place, "60%", "90%"},
		}), nil).Err()
		var seam *hanging.SeamError
		require.Equal(t, on, errors.As(err, &seam), place)
		if on {
			assert.Equal(t, 3, seam.Strap)
		} else {
			assert.NoError(t, err, place)
		}
	}
}

// Lifts at both ends of each piece are two at the seam, one under each piece.
func TestLiftsAtTheEndsOfPieces(t *testing.T) {
	c := sample.Room(t, map[string]any{"panels.around": int64(2), "lift.stations": []any{"0%", "100%"}})
	h := solve(t, c)
	require.Len(t, h.Raised.Lifts, 4)
	assert.InEpsilon(t, h.Weight/2, h.Raised.Lifts[0]+h.Raised.Lifts[1], 1e-6)
	assert.InEpsilon(t, h.Raised.Lifts[0], h.Raised.Lifts[3], 1e-5)
}

// The pieces of a split arch hang alone before they are joined, and that case may
// govern as any other.
func TestPiecesAloneMayGovern(t *testing.T) {
	c := sample.Room(t, map[string]any{"panels.around": int64(2), "strap": map[string]any{
		"stations": []any{"10%", "36%", "64%", "90%"}, "width": "25mm", "thickness": "1.5mm",
	}})
	h := hanging.Of(c, nil)
	all, err := h.Envelope()
	require.NoError(t, err)
	alone := h.Alone.Get().Is
	require.NotNil(t, alone)
	assert.Contains(t, all, alone)
}
