package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
)

// A straight flight 1.2 m wide meets a landing of 2 m at up to 0.8 m from its left wall, in
// either unit; a stair that turns has its flights at the ends of its landing.
func TestAFlightMeetsItsLanding(t *testing.T) {
	stair := func(turn, left string) map[string]any {
		leg := map[string]any{
			"name": "steps", "kind": "stair", "width": "1200mm", "headroom": "2200mm", "rise": "170mm", "going": "280mm",
			"landing": map[string]any{"width": "2000mm", "length": "1200mm", "left": left},
		}
		if turn != "" {
			leg["turn"] = turn
		}
		return leg
	}
	for _, c := range []struct {
		turn, left, want string
	}{
		{"none", "0mm", ""},
		{"none", "800mm", ""},
		{"", "31.496in", ""},
		{"none", "801mm", "a flight 1200mm wide, 801mm from the left wall of its landing, ends 2001mm from it, and the landing is 2000mm wide"},
		{"half", "0mm", "the flights of a stair that turns are at the two ends of its landing; a place from the left is for a stair that continues straight"},
	} {
		tree := sample.Tree(t, "lobby", map[string]any{"route": []any{stair(c.turn, c.left)}})
		_, faults := layout.Resolve(tree, standards.BuiltIn(), nil)
		if c.want == "" {
			assert.Empty(t, faults, "%v", c)
			continue
		}
		assert.Equal(t, []layout.Fault{{Key: "route.1.landing.left", Text: c.want}}, faults)
	}
}
