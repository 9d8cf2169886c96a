package hanging_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
)

// vaults has one of each profile of the format, and pointed ones of a little
// and of much kink.
func vaults() map[string]map[string]any {
	return map[string]map[string]any{
		"flat":          {"profile": "flat"},
		"segmental":     {"profile": "segmental", "rise": "840mm"},
		"semicircular":  {"profile": "semicircular"},
		"three-centred": {"profile": "three-centred", "rise": "1500mm", "haunch_radius": "900mm"},
		"drop":          {"profile": "pointed", "radius": "2300mm"},
		"equilateral":   {"profile": "pointed", "radius": "4200mm"},
		"lancet":        {"profile": "pointed", "rise": "5000mm"},
		"elliptical":    {"profile": "elliptical", "rise": "1200mm"},
	}
}

// A symmetric arch has symmetric forces and moments, to a thousandth: of
// every profile, whole and parted at the crown, with straps to both sides of it
// and one on it, in every case.
func TestSymmetricArchesHaveSymmetricForces(t *testing.T) {
	for name, vault := range vaults() {
		vault["span"], vault["length"] = "4200mm", "7080mm"
		for _, hung := range []struct {
			around   int64
			grid     int64
			stations []any
		}{
			{1, 6, []any{"10%", "36%", "64%", "90%"}},
			{1, 7, []any{"10%", "50%", "90%"}},
			{2, 6, []any{"8%", "20%", "42%", "58%", "80%", "92%"}},
			{3, 6, []any{"8%", "25%", "40%", "60%", "75%", "92%"}},
		} {
			t.Run(fmt.Sprintf("%s of %d with %d straps", name, hung.around, len(hung.stations)), func(t *testing.T) {
				t.Parallel()
				symmetric(t, solve(t, sample.Room(t, map[string]any{
					"vault": vault, "springing": map[string]any{}, "panels.around": hung.around, "grid.around": hung.grid,
					"strap.stations": hung.stations, "ledger.packed": true, "ledger.projection": "200mm",
					"lift.stations": []any{"25%", "75%"}, "fitting": []any{},
				})))
			})
		}
	}
}

func symmetric(t *testing.T, h *solved) {
	mirrored := func(name string, a, b *hanging.Case) {
		assert.InDeltaSlice(t, a.Straps, reversed(b.Straps), 0.001*h.Weight, "%s: straps", name)
		assert.InDeltaSlice(t, a.Lifts, reversed(b.Lifts), 0.001*h.Weight, "%s: lifts", name)
		assert.InDelta(t, a.Moment, b.Moment, 0.001*a.Moment, name)
	}
	itself := map[string]*hanging.Case{"first": &h.First, "packed": h.Packed, "raised": h.Raised, "alone": h.Alone}
	for i := range h.Moved {
		itself[fmt.Sprint("moved ", i)] = &h.Moved[i]
	}
	for name, c := range itself {
		if c != nil {
			mirrored(name, c, c)
		}
	}
	n := len(h.First.Straps)
	require.Len(t, h.Set, 2*n)
	for i := range n {
		for way := range 2 {
			mirrored(fmt.Sprintf("strap %d set", i+1), &h.Set[2*i+way], &h.Set[2*(n-1-i)+way])
		}
		mirrored(fmt.Sprintf("strap %d lost", i+1), &h.Lost[i], &h.Lost[n-1-i])
	}
	last := len(h.Shape) - 1
	for i, s := range h.Shape {
		o := h.Shape[last-i]
		assert.InDelta(t, 4.2, s.Y+o.Y, 1e-9, "nodes mirrored about the axis")
		assert.InDelta(t, s.Z, o.Z, 1e-9)
	}
}

func reversed(list []float64) []float64 {
	out := slices.Clone(list)
	slices.Reverse(out)
	return out
}
