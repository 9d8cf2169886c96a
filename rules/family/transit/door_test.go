package transit_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/transit"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// doors is the rule on doors alone.
func doors() []*engine.Rule {
	list := transit.Family().List()
	return slices.DeleteFunc(list, func(r *engine.Rule) bool { return r.ID != "transit.door" })
}

// A door of the least clear width and height of the accessibility standard,
// 32 in by 80 in (2010 ADA Standards, 404.2.3), with 10 mm to spare on every
// side of a flat panel's wrap: 812.8 − 20 = 792.8 mm. The vault's length over
// six panels and the wrap of 25 mm on both sides make up what goes through.
func TestAccessibleDoor(t *testing.T) {
	for wrapped, passes := range map[float64]bool{792: true, 793: false} {
		src, _ := ruletest.Compose(fmt.Sprintf(`[vault]
profile = "flat"
span    = "4200mm"
length  = "%vmm"
[rib]
species = "white oak"
width   = "90mm"
depth   = "1960mm"
[skin]
material = "bendable plywood"
[[route]]
name   = "accessible door"
kind   = "door"
width  = "32in"
height = "80in"
`, 6*(wrapped-50)))
		s := review.Spec("ada", []byte(src), review.Options{
			Rules: doors(), Standards: standards.BuiltIn(),
		})
		require.Empty(t, s.Problems)
		assert.Equal(t, passes, len(s.Findings) == 0, "%vmm: %v", wrapped, s.Findings)
	}
}
