package transit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/transit"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// van is a shop's own, on the fourth line of its file.
func van(t *testing.T, length string) *standards.Standards {
	doc, problems := spec.Parse("shop/dryfit.toml", []byte(`dryfit = 1
name = "this test"

[[default.route]]
name   = "van"
kind   = "vehicle"
door   = { width = "2050mm", height = "2100mm" }
inside = { length = "`+length+`", width = "2200mm", height = "2300mm" }
`))
	require.Empty(t, problems)
	layer, problems := standards.Read(doc, nil, nil)
	require.Empty(t, problems)
	return standards.With(layer)
}

// Panels of 13ft along the axis, an arch of 1200mm by 100mm at the most, do not
// lie in a van of 10ft by 2.2m by 2.3m: its longest line, corner to corner, is
// √(3048² + 2200² + 2300²) = 4404mm, and a bar of 13ft = 3962mm with 25mm of wrap at
// each end is 4012mm long; laid along the diagonal of the floor, √(3048² + 2200²) =
// 3759mm, it is too long. A van of 16ft = 4877mm takes it straight.
func TestOwnVan(t *testing.T) {
	src, _ := ruletest.Compose(`[vault]
profile = "flat"
span    = "1200mm"
length  = "78ft"
[grid]
around = 2
along  = 6
[panels]
along = 6
[skin]
material = "bendable plywood"
[[route]]
name   = "street door"
kind   = "door"
width  = "3m"
height = "3m"
`)
	for length, held := range map[string]bool{"10ft": true, "16ft": false} {
		s := review.Spec("long.ceiling.toml", []byte(src), review.Options{
			Rules: only("transit.vehicle"), Standards: van(t, length), Offers: true,
		})
		require.Empty(t, s.Problems)
		require.Equal(t, held, len(s.Findings) == 1, "%s: %v", length, s.Findings)
		for _, f := range s.Findings {
			assert.Equal(t, engine.Hold, f.Severity)
			assert.Equal(t, "default.route.1.door.width", f.At)
			assert.Equal(t, "shop/dryfit.toml:7", f.Origin.String())
			assert.Equal(t, 20, f.Start.Column)
			for _, o := range f.Offers {
				assert.False(t, standards.OwnLeg(o.Key), "no spec changes %s", o.Key)
			}
		}
	}
}

// A spec without a route is judged by the shop's legs, and the legs of one that has
// a route keep their keys.
func TestOwnLegsComeFirst(t *testing.T) {
	slot := "[[route]]\nname = \"slot\"\nkind = \"door\"\nwidth = \"100mm\"\nheight = \"2m\"\n"
	for route, want := range map[string][]string{"": {"default.route.1.door.width"}, slot: {"route.1.width", "default.route.1.door.width"}} {
		src, _ := ruletest.Compose(slot)
		src = strings.Replace(src, slot, route, 1)
		s := review.Spec("x.ceiling.toml", []byte(src), review.Options{
			Rules: append(only("transit.vehicle"), only("transit.door")...), Standards: van(t, "3m"),
		})
		require.Empty(t, s.Problems)
		var at []string
		for _, f := range s.Findings {
			at = append(at, f.At)
		}
		assert.Equal(t, want, at)
		assert.Empty(t, s.NotChecked)
	}
}

func only(id string) (out []*engine.Rule) {
	for _, r := range transit.Family().List() {
		if r.ID == id {
			out = append(out, r)
		}
	}
	return out
}
