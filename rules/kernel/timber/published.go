package timber

import (
	"math"
	"slices"
)

// All are the species that there are data on.
func All() []Species { return slices.Clone(species) }

// AllSheets are the sheet materials that there are data on.
func AllSheets() []SheetMaterial { return slices.Clone(sheets) }

// Published is the least and the most of a figure over materials, in the figure's
// own unit; zeros, which stand for no figure, are passed over. Where there is no
// figure at all the least is +∞ and the most 0.
func Published[M any](all []M, of func(M) []float64) (least, most float64) {
	least = math.Inf(1)
	for _, m := range all {
		for _, v := range of(m) {
			if v > 0 {
				least, most = min(least, v), max(most, v)
			}
		}
	}
	return least, most
}
