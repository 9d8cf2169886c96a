package hanging_test

import (
	"maps"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/sample"
	"dryfit/spec/record"
)

// seasonal is the cases of the seasons by key.
func seasonal(t *testing.T, c *layout.Ceiling) map[string]hanging.Case {
	t.Helper()
	s := hanging.Of(c, nil).Seasonal.Get()
	require.NoError(t, s.Err)
	out := map[string]hanging.Case{}
	for _, k := range s.Is {
		out[k.Key()] = k
	}
	return out
}

// strapsHung is the reading room's table of straps, hung as said; "" leaves that
// out.
func strapsHung(t *testing.T, said string) map[string]any {
	t.Helper()
	straps := maps.Clone(sample.Tree(t, sample.ReadingRoom, nil)["strap"].(map[string]any))
	delete(straps, "hung")
	if said != "" {
		straps["hung"] = said
	}
	return straps
}

// The reading room by hand. The centre line of an arc is one of radius R + d/2,
// and keeps its length: a point at θ from the crown drops R'(1 − cos θ') with
// R' = (R + d/2)(1 + e), θ' = θ/(1 + e). The straps at 10% and 36% lie at 80% and
// 28% of the half angle.
func TestSeasonsMoveTheStraps(t *testing.T) {
	c := sample.Room(t, map[string]any{"strap": strapsHung(t, "")})
	radius, half := c.Vault.Radius.Get()+c.Rib.Depth.Get()/2, c.Vault.HalfAngle.Get()
	over := func(e float64) float64 { // the inner points over the outer ones
		r := radius * (1 + e)
		return r * (math.Cos(0.28*half/(1+e)) - math.Cos(0.8*half/(1+e)))
	}
	s, cases := seasons.Of(c), seasonal(t, c)
	dry, wet := s.Dry.RibDepth.Get().Value, s.Wet.RibDepth.Get().Value
	for key, want := range map[string]float64{
		"season-dry-hung-shop": over(dry) - over(0),
		"season-wet-hung-shop": over(wet) - over(0),
		"season-dry-hung-wet":  over(dry) - over(wet),
		"season-wet-hung-dry":  over(wet) - over(dry),
	} {
		free := cases[key].Free
		require.Len(t, free, 4, key)
		for i, want := range []float64{0, want, want, 0} {
			assert.InDelta(t, want, free[i], 3e-6, "%s, strap %d", key, i+1)
		}
	}
	assert.InDelta(t, 0.0045, cases["season-dry-hung-shop"].Free[1], 0.0001)
	assert.InDelta(t, -0.0038, cases["season-wet-hung-shop"].Free[1], 0.0001)
	assert.InDelta(t, 0.0083, cases["season-dry-hung-wet"].Free[1], 0.0001)
}

// The worst of the reading room is about 148N without the seasons and about 180N with them.
func TestSeasonsGovernTheReadingRoom(t *testing.T) {
	h := solve(t, sample.Room(t, nil))
	all, err := h.Envelope()
	require.NoError(t, err)
	before, _, _ := hanging.Worst(all[:len(all)-len(h.Seasonal.Get().Is)-len(h.Lowered.Get().Is)])
	assert.InDelta(t, 148, before, 2)
	most, _, in := hanging.Worst(all)
	assert.InEpsilon(t, 177, most, 0.03)
	assert.Equal(t, "season-wet-hung-shop-strap-set-2-shorter", in.Key())
	for _, k := range h.Seasonal.Get().Is {
		assert.InEpsilon(t, h.Weight, sum(k.Straps), 1e-6, k.Key())
	}
}

// strap.hung leaves the states that the wood may be hung in.
func TestWoodIsHungAsSaid(t *testing.T) {
	for said, want := range map[string][]string{
		"":     {"season-dry-hung-shop", "season-wet-hung-shop", "season-dry-hung-wet", "season-wet-hung-dry"},
		"shop": {"season-dry-hung-shop", "season-wet-hung-shop"},
		"room": {"season-dry-hung-wet", "season-wet-hung-dry"},
	} {
		straps := strapsHung(t, said)
		straps["setting"] = "0mm"
		changes := map[string]any{"strap": straps}
		var got []string
		for key := range seasonal(t, sample.Room(t, changes)) {
			got = append(got, key)
		}
		assert.ElementsMatch(t, want, got, said)
	}
}

// Two straps take what statics gives them, and a flat rib stays flat.
func TestSeasonsThatLoadNothing(t *testing.T) {
	assert.Empty(t, seasonal(t, sample.Room(t, map[string]any{"strap.stations": []any{"25%", "75%"}})))
	assert.Empty(t, seasonal(t, sample.Ceiling(t, "lobby", nil)))
}

// Without a coefficient of the wood the cases are left out, and it is said.
func TestSeasonsOfAWoodWithoutFigures(t *testing.T) {
	c := sample.Room(t, nil)
	wood := c.Rib.Species.Get()
	wood.RadialChange, wood.TangentialChange = 0, 0
	c.Rib.Species = record.Of(nil, func() timber.Species { return wood })
	h := hanging.Of(c, nil)
	var unknown *hanging.NoSeasonError
	require.ErrorAs(t, h.Seasonal.Get().Err, &unknown)
	require.NoError(t, h.Err())
	all, err := h.Envelope()
	require.NoError(t, err)
	assert.Len(t, all, 1+8+2+3*9, "three ways of lowering two lifts, each alone and with each of four straps set")
}
