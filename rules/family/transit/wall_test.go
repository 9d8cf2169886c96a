package transit_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/transit"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

const streetDoor = `[[route]]
name   = "street door"
kind   = "door"
width  = "%s"
height = "2040mm"
before = "6000mm"
after  = "6000mm"
beside = "6000mm"
`

// An arch that goes through a door only along its curve needs the depth of its
// wall; one that goes straight through, or through none, does not.
func TestDoorWithoutWall(t *testing.T) {
	for _, c := range []struct {
		width, wall string
		findings    int
		absent      bool
	}{
		{"900mm", "", 0, true},
		{"900mm", `wall = "220mm"`, 0, false},
		{"1300mm", "", 0, false}, // its height by its length, both in the wrap, are 905mm by 1230mm
		{"105mm", "", 1, false},  // it is 110mm thick in its wrap
	} {
		src, _ := ruletest.Compose(fmt.Sprintf(streetDoor, c.width) + c.wall + "\n")
		s := review.Spec("door", []byte(src), review.Options{Rules: doors(), Standards: standards.BuiltIn()})
		require.Empty(t, s.Problems)
		assert.Len(t, s.Findings, c.findings, "%s %s: %v", c.width, c.wall, s.Findings)
		assert.Equal(t, c.absent, len(s.NotChecked) > 0, "%s %s: %v", c.width, c.wall, s.NotChecked)
	}
}

// nothing is what a finding may not say of a size: that it is none too large, or
// that none is to spare.
var nothing = regexp.MustCompile(`(^|[^\d.])(0mm|0m|0in) (to spare|too|over|short|larger)|larger by 0m`)

// Random legs about as large as the panel in its wrap, of which many are touched.
func TestNoFindingSaysNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 12))
	list := slices.DeleteFunc(transit.Family().List(), func(r *engine.Rule) bool { return r.ID != "transit.door" && r.ID != "transit.corridor" })
	said := 0
	for range 12 {
		src := `[vault]
profile = "flat"
span    = "4200mm"
length  = "7080mm"
`
		size := func(about int) string { return fmt.Sprintf("%.1fmm", float64(about)+float64(r.IntN(21)-10)/10) }
		for i := range 12 {
			src += fmt.Sprintf("[[route]]\nname = \"door %d\"\nkind = \"door\"\nwidth = %q\nheight = %q\nwall = \"100mm\"\n", i, size(1230), size(110))
			src += fmt.Sprintf("[[route]]\nname = \"passage %d\"\nkind = \"corridor\"\nlength = \"3m\"\nwidth = %q\nheight = %q\n", i, size(110), size(1230))
		}
		whole, _ := ruletest.Compose(src)
		s := review.Spec("legs", []byte(whole), review.Options{Rules: list, Standards: standards.BuiltIn(), Search: carrying.Search{Depth: carrying.None}})
		require.Empty(t, s.Problems)
		for _, f := range s.Findings {
			said++
			assert.NotRegexp(t, nothing, f.Text)
		}
	}
	assert.NotZero(t, said)
}
