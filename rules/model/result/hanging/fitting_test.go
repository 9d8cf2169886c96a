package hanging_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// fitted is the room on two straps, with fittings.
func fitted(t *testing.T, around int64, stations []any, fittings ...map[string]any) *layout.Ceiling {
	list := []any{}
	for _, f := range fittings {
		f["name"], f["kind"], f["size"] = "lamp", "luminaire", map[string]any{"diameter": "90mm"}
		list = append(list, f)
	}
	return sample.Room(t, map[string]any{
		"panels.around": around, "panels.along": int64(3), "fitting": list,
		"strap": map[string]any{"width": "25mm", "thickness": "1.5mm", "stations": stations},
	})
}

// A rib on two straps is determinate. A fitting of 12kg in the third of six
// coffers along is in the second panel of two coffers each, whose near coffer it
// is, so that 3/4 of it is on the near rib, 88.26N; of which the balance of moments
// about one strap gives the other (x2 − x)/(x2 − x1).
func TestAFittingWeighsWhereItIs(t *testing.T) {
	two := []any{"20%", "80%"}
	light := fitted(t, 1, two)
	heavy := fitted(t, 1, two, map[string]any{"coffer": []any{int64(2), int64(3)}, "mass": "12kg"})
	in, arc := heavy.Vault.Intrados.Get(), heavy.Vault.Arc.Get()
	at := func(share, depth float64) float64 {
		return in.At(share*arc).Y + depth*curve.Normal(in.Tangent(share*arc)).Y
	}
	half := heavy.Rib.Depth.Get() / 2
	x := at(1.5/6, heavy.Skin.Setback.Get()+heavy.Skin.Total()/2)
	x1, x2 := at(0.20, half), at(0.80, half)
	force := 0.75 * 12 * 9.80665
	before, after := solve(t, light), solve(t, heavy)
	assert.InDelta(t, force*(x2-x)/(x2-x1), after.First.Straps[0]-before.First.Straps[0], 0.01)
	assert.InDelta(t, force*(x-x1)/(x2-x1), after.First.Straps[1]-before.First.Straps[1], 0.01)
	assert.InDelta(t, 88.26, after.Weight-before.Weight, 0.01)

	m, centre := light.Panel.Mass.Get(), light.Panel.Centre.Get()
	assert.InDelta(t, m+12, heavy.Panel.Mass.Get(), 1e-9)
	assert.InDelta(t, (m*centre.Y+12*x)/(m+12), heavy.Panel.Centre.Get().Y, 1e-6)
	assert.InDelta(t, light.Panel.Most.Get()+12, heavy.Panel.Most.Get(), 1e-9)
}

// The panel that carries most governs: 5kg and 4kg in the third outweigh 8kg in the
// first; one without a mass and one in a coffer that there is not weigh nothing.
func TestTheHeaviestPanelGoverns(t *testing.T) {
	coffer := func(around, along int64, mass string) map[string]any {
		f := map[string]any{"coffer": []any{around, along}}
		if mass != "" {
			f["mass"] = mass
		}
		return f
	}
	two := []any{"20%", "80%"}
	c := fitted(t, 1, two, coffer(1, 1, "8kg"), coffer(2, 5, "5kg"), coffer(5, 6, "4kg"), coffer(3, 6, ""), coffer(9, 9, "50kg"))
	assert.InDelta(t, fitted(t, 1, two).Panel.Mass.Get()+9, c.Panel.Mass.Get(), 1e-9)
	assert.Equal(t, []int{4}, c.Unweighed())

	four := []any{"8%", "40%", "60%", "92%"}
	split := fitted(t, 2, four, coffer(5, 2, "6kg"))
	bare := fitted(t, 2, four)
	assert.InDelta(t, bare.Panel.Mass.Get()+6, split.Panel.Mass.Get(), 1e-9)
	assert.Greater(t, split.Panel.Centre.Get().Y, split.Vault.Span.Get()/2, "the right piece carries it")
	before, after := solve(t, bare).Alone.Straps, solve(t, split).Alone.Straps
	assert.InDelta(t, before[0]+before[1], after[0]+after[1], 0.01)
	assert.InDelta(t, 0.75*6*9.80665, after[2]+after[3]-before[2]-before[3], 0.01)
}
