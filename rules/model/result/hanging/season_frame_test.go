package hanging

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/sample"
	"dryfit/spec/record"
)

// bent is the frame with the seasons' curvature in its elements and none in its
// straps: an element that would turn by so much is held straight by a couple
// EI·turn/L at each end, and let go under the same couples reversed.
func bent(r *rib, becomes func(float64) float64, slope func(s float64) float64) frame.Case {
	c := frame.Case{Loads: slices.Clone(r.loads), Spread: r.spread, Without: r.but(strapKind)}
	for i := range len(r.nodes) - 1 {
		turned := func(s float64) float64 {
			a := slope(s)
			return math.Copysign(becomes(abs(a)), a) - a
		}
		turn, s := turned(r.at[i+1])-turned(r.at[i]), r.section.stiffness()
		a, b := r.nodes[i], r.nodes[i+1]
		length := distance(a, b)
		if !slices.Contains(r.seams, i+1) {
			couple := s.EI * turn / length
			c.Loads = append(c.Loads, frame.NodalLoad{Node: i, Couple: -couple}, frame.NodalLoad{Node: i + 1, Couple: couple})
			continue
		}
		// With a hinge at its far end that end would move turn·L/2 sideways, and a
		// force on a cantilever holds it.
		force := turn * length / 2 / (length*length*length/(3*s.EI) + length/s.GA)
		x, y := -force*(b.Y-a.Y)/length, force*(b.X-a.X)/length
		c.Loads = append(c.Loads, frame.NodalLoad{Node: i, X: -x, Y: -y, Couple: -force * length}, frame.NodalLoad{Node: i + 1, X: x, Y: y})
	}
	return c
}

// The forces are those of a frame whose elements bend, whole and hinged at the
// seam of a split arch: straps set by the free rise of their points are exact.
func TestSeasonsAgreeWithABentFrame(t *testing.T) {
	for name, changes := range map[string]map[string]any{
		"whole":         {},
		"uneven straps": {"strap.stations": []any{"8%", "30%", "55%", "92%"}},
		"split":         {"panels.around": int64(2), "strap.stations": []any{"5%", "20%", "40%", "60%", "80%", "95%"}},
		"elliptical":    {"vault": map[string]any{"profile": "elliptical", "span": "4200mm", "rise": "900mm", "length": "7080mm"}},
	} {
		c := sample.Room(t, changes)
		r := newRib(c, nil)
		run, err := compile(r, r.model(), wholeArch)
		require.NoError(t, err)
		const e = -0.002 // little, so that no strap goes slack and movements are small
		first, err := run.run(ID{Kind: FirstHung}, r.but(strapKind))
		require.NoError(t, err)
		intrados := c.Vault.Intrados.Get()
		slope := func(s float64) float64 {
			tangent := intrados.Tangent(s)
			return math.Atan2(tangent.Z, tangent.Y)
		}
		becomes := seasons.Slope(c.Vault, e)
		before, err := r.risenIn(c.Vault, strained(0))
		require.NoError(t, err)
		after, err := r.risenIn(c.Vault, strained(e))
		require.NoError(t, err)
		free := r.swing(before, after)
		got, err := run.season(nil, ID{Kind: InSeason, Hung: "shop", Season: "dry"}, free, 0)
		require.NoError(t, err)
		bent := bent(r, becomes, slope)
		require.NoError(t, run.solver.Summarize(&bent, &run.brief))
		for i := range r.straps {
			want, changed := run.brief.Springs[i].Force, got[0].Straps[i]-first.Straps[i]
			assert.InDelta(t, want-first.Straps[i], changed, 0.01*abs(changed)+0.02, "%s, strap %d of %d", name, i+1, len(r.straps))
		}
		assert.Greater(t, abs(got[0].Straps[1]-first.Straps[1]), 1.0, name)
	}
}

// A pointed arch by hand: each half is an arc that leaves the crown at a slope κ.
// Its mitre runs tan κ of the depth along the grain, so that κ becomes
// atan(tan κ/(1 + e)), and the arc's own angle is divided by 1 + e.
func TestSeasonsKeepAMitre(t *testing.T) {
	c := sample.Room(t, map[string]any{
		"vault": map[string]any{"profile": "pointed", "span": "4200mm", "radius": "3000mm", "length": "7080mm"},
	})
	const e = -0.02
	kink := math.Asin(0.3) // (3 − 2.1)/3
	after := math.Atan(math.Tan(kink) / (1 + e))
	becomes := seasons.Slope(c.Vault, e)
	assert.InDelta(t, after, becomes(kink), 1e-12)
	assert.InDelta(t, after+(math.Pi/2-kink)/(1+e), becomes(math.Pi/2), 1e-12)

	// Of the left half, between its straps at 10% and 36%: 80% and 28% of its angle
	// from the crown.
	r, s := newRib(c, nil), newRib(c, nil).straps
	up := r.risen(becomes)
	radius := 3 + c.Rib.Depth.Get()/2
	height := func(share, kink, e float64) float64 {
		return radius * (1 + e) * math.Cos(kink+share*(math.Pi/2-math.Asin(0.3))/(1+e))
	}
	want := height(0.28, after, e) - height(0.8, after, e) - (height(0.28, kink, 0) - height(0.8, kink, 0))
	assert.InDelta(t, want, up[s[1]]-up[s[0]], 2e-5)
	assert.InDelta(t, up[s[0]], up[s[3]], 2e-6, "both sides alike")
}

// strained is a season in which the rib's depth has changed by a strain.
func strained(e float64) seasons.Season {
	return seasons.Season{RibDepth: record.Of(nil, func() seasons.Change { return seasons.Change{Value: e} })}
}
