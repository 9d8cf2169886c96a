package shop_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/result/shop"
	"dryfit/rules/model/sample"
)

// The cut of a foot may leave nothing of a short segment's back, or of its inner edge:
// such a sliver is no piece, and all others are closed and have a size.
func TestSegmentsThatAFootCutsOff(t *testing.T) {
	for _, name := range []string{"banking-hall", "chapter-house", "tower-room"} {
		for _, cut := range []string{"plumb", "radial", "level"} {
			for _, segments := range []int64{1, 7, 60, 300} {
				c := sample.Ceiling(t, name, map[string]any{"springing.cut": cut, "rib.segments": segments})
				for _, s := range shop.Of(c).Sawn.Get() {
					for _, b := range s.Blanks {
						assert.False(t, math.IsNaN(b.Box.Length+b.Box.Width), "%s, %s, %d", name, cut, segments)
						for i, side := range b.Outline {
							next := b.Outline[(i+1)%len(b.Outline)]
							assert.InDelta(t, 0, math.Hypot(side.To[0]-next.From[0], side.To[1]-next.From[1]), 1e-9)
						}
					}
				}
			}
		}
	}
}
