package stock_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/stock"
	"dryfit/rules/model/sample"
)

// Of the demo, by the list that TestCounts counts by hand: half ribs, half rails, rails,
// skins and tenons, then the straps of 10% and 90% and those of 36% and 64%.
func TestMarksOfTheDemo(t *testing.T) {
	takeoff := stock.Of(sample.Room(t, nil), nil)
	got := map[string]string{}
	for _, l := range takeoff.Pieces {
		got[l.Mark] = l.Name
	}
	assert.Equal(t, map[string]string{"K1": "half rib", "K2": "half rail", "K3": "rail", "K4": "skin", "K5": "tenon"}, got)
	assert.Equal(t, []string{"K6", "K7", "", ""}, []string{
		takeoff.Hardware[0].Mark, takeoff.Hardware[1].Mark, takeoff.Hardware[2].Mark, takeoff.Hardware[3].Mark,
	})
	assert.Empty(t, takeoff.MarksOf(layout.Piece{Kind: layout.Rib, Length: 1}), "no such piece")
	for _, h := range stock.Of(sample.Room(t, nil), [][]float64{{1.1, 0.6, 0.6, 1.1}}).Hardware {
		assert.Empty(t, h.Mark, "measured straps go by panel and station")
	}
}

// Each piece of each ceiling has its mark, of a kind of its own size; no two kinds share one.
func TestEveryPieceHasTheMarkOfItsKind(t *testing.T) {
	for _, name := range sample.Names(t) {
		c := sample.Ceiling(t, name, nil)
		takeoff := stock.Of(c, nil)
		kinds := map[string]stock.Line{}
		for _, l := range takeoff.Pieces {
			assert.NotContains(t, kinds, l.Mark, name)
			kinds[l.Mark] = l
		}
		used := map[string]bool{}
		for _, p := range c.VaultPieces() {
			marks := takeoff.MarksOf(p)
			assert.NotEmpty(t, marks, "%s: %s", name, p.Kind)
			for _, m := range marks {
				used[m] = true
				if p.Kind != layout.Hanger {
					assert.Equal(t, p.Kind.String(), kinds[m].Name, name)
					assert.InDelta(t, p.Width, kinds[m].Width, 1e-4, name)
				}
			}
		}
		for m, l := range kinds {
			assert.True(t, used[m] || l.Name == "tenon", "%s: %s %s", name, m, l.Name)
		}
	}
}
