package panel

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// The true arc has its feet as they are cut. By hand, of half an angle of asin(2100/3045) =
// 43.60°: a plumb foot goes no further than the chord, a square one of 60mm by 60·sin 43.60°
// = 41.38mm.
func TestTheTrueArcHasItsFeetAsCut(t *testing.T) {
	for cut, want := range map[string]float64{"plumb": 0, "radial": 0.04138} {
		c := sample.Room(t, map[string]any{"springing.cut": cut})
		require.InDelta(t, 0.060, c.Vault.Thickness.Get(), 1e-9)
		assert.InDelta(t, want, arcOf(c, 0, c.Vault.Arc.Get()).flush, 1e-5, cut)
	}
}

// Where a seam of a split arch misses the grid no rail lies at it: each piece is drawn with
// as many rails in a bay as the takeoff buys for it.
func TestRailsAreThoseOfThePiece(t *testing.T) {
	missed := 0
	for _, name := range sample.Names(t) {
		assessment := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
		in := sheet.Input{Assessment: assessment, Version: "test", On: "2026-11-25"}
		list, err := panelPieces(in, false)
		if err != nil {
			continue
		}
		for _, d := range list {
			all := d.railsAt()
			edges := 0
			for _, s := range all {
				if s < 1e-6 || s > d.arc-1e-6 {
					edges++
				}
			}
			if edges < 2 {
				missed++
			}
			halves, whole := 0, 0
			for _, p := range in.Ceiling().Rails(d.from, d.from+d.arc, 1) {
				switch p.Kind {
				case layout.HalfRail:
					halves += p.Count
				default:
					whole += p.Count
				}
			}
			mitred := halves - edges // two halves at one place
			assert.Equal(t, whole+edges+mitred/2, len(all), "%s, piece %d", name, d.piece+1)
		}
	}
	assert.Positive(t, missed)
}
