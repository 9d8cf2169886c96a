package hanging_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/sample"
)

// A piece of a split arch on two straps is determinate: by the balance of moments
// about one of them the other carries W·(x − c)/(x − y), c being the place of the
// panel's centre, which the masses of its pieces give. With the weight of ribs
// and skin spread evenly over the arc this was up to 3% off.
func TestWeightFollowsTheCut(t *testing.T) {
	for _, cut := range []string{"radial", "plumb", "level"} {
		c := sample.Room(t, map[string]any{
			"springing.cut": cut, "panels.around": int64(2),
			"rib.depth": "120mm", "strap": map[string]any{"width": "25mm", "thickness": "1.5mm", "stations": []any{"5%", "40%", "60%", "95%"}},
		})
		h := solve(t, c)
		at := func(share float64) float64 {
			in := c.Vault.Intrados.Get()
			s := share * c.Vault.Arc.Get()
			return in.At(s).Y + 0.060*curve.Normal(in.Tangent(s)).Y
		}
		centre := c.Panel.Centre.Get().Y
		if centre > 2.1 {
			centre = 4.2 - centre
		}
		weight := c.Panel.Mass.Get() * 9.80665 / 2
		assert.InDelta(t, weight*(at(0.40)-centre)/(at(0.40)-at(0.05)), h.Alone.Straps[0], 0.0005*weight, cut)
		assert.InDelta(t, weight*(centre-at(0.05))/(at(0.40)-at(0.05)), h.Alone.Straps[1], 0.0005*weight, cut)
	}
}
