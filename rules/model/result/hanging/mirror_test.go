package hanging_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/sample"
)

// Where the moment opens the curve the tension across the grain is the same at a
// place and at its mirror image, of arcs of one radius and of several, with the
// strap lost on either side.
func TestRadialStressIsAlikeOnBothSides(t *testing.T) {
	for name, vault := range vaults() {
		if name == "flat" {
			continue
		}
		vault["span"], vault["length"] = "4200mm", "7080mm"
		h := solve(t, sample.Room(t, map[string]any{
			"vault": vault, "springing": map[string]any{}, "strap.stations": []any{"10%", "36%", "64%", "90%"}, "fitting": []any{},
		}))
		lost := h.Lost
		for i := range len(lost) / 2 {
			a, b := lost[i].Radial, lost[len(lost)-1-i].Radial
			assert.InDelta(t, a, b, 1e-6*max(a, b)+1e-3, fmt.Sprint(name, " without strap ", i+1))
		}
	}
}
