package shop_test

import (
	"math"
	"strings"
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

// The arrow of the grain lies in the wood, and is level as the chord is.
func TestTheGrainIsMarkedInTheWood(t *testing.T) {
	for _, name := range []string{"banking-hall", "chapter-house", "tower-room"} {
		for _, segments := range []int64{2, 4, 9} {
			c := sample.Ceiling(t, name, map[string]any{"rib.segments": segments})
			for _, s := range shop.Of(c).Sawn.Get() {
				for _, b := range s.Blanks {
					var line shop.Outline
					for _, m := range b.Marks {
						if m.Line != nil {
							line = m.Line
						}
					}
					if assert.Len(t, line, 3, "%s, %d, %s", name, segments, b.Name) {
						assert.InDelta(t, line[1].From[1], line[1].To[1], 1e-12)
						for _, side := range line {
							assert.True(t, within(b.Outline, side.From) && within(b.Outline, side.To), "%s, %d, %s: %v in %v", name, segments, b.Name, line, b.Outline)
						}
					}
				}
			}
		}
	}
}

// within reports whether a point lies in an outline, its arcs divided into chords.
func within(o shop.Outline, p shop.PatternPoint) (in bool) {
	for _, s := range o {
		const parts = 64
		last := s.From
		for i := range parts {
			next := along(s, float64(i+1)/parts)
			if (last[1] > p[1]) != (next[1] > p[1]) && p[0] < last[0]+(next[0]-last[0])*(p[1]-last[1])/(next[1]-last[1]) {
				in = !in
			}
			last = next
		}
	}
	return in
}

// along is a place of a side by its share: on its arc, whose bulge is the tangent of a
// quarter of what it turns by.
func along(s shop.Segment, f float64) shop.PatternPoint {
	chord := shop.PatternPoint{s.To[0] - s.From[0], s.To[1] - s.From[1]}
	if s.Bulge == 0 {
		return shop.PatternPoint{s.From[0] + f*chord[0], s.From[1] + f*chord[1]}
	}
	centre := s.Centre()
	sin, cos := math.Sincos(f * s.Turn())
	dx, dy := s.From[0]-centre[0], s.From[1]-centre[1]
	return shop.PatternPoint{centre[0] + dx*cos - dy*sin, centre[1] + dx*sin + dy*cos}
}

// The tower room has 17 segments a layer. The layers are staggered by half of one, so that
// the second has 18 pieces, of which the first and the last are half as long.
func TestPlacesAreSaidInRanges(t *testing.T) {
	said := ""
	for _, p := range shop.Of(sample.Ceiling(t, "tower-room", nil)).Patterns() {
		said += strings.Join(p.Notes, "\n") + "\n"
	}
	assert.Contains(t, said, "33 in one half rib: layer 1, pieces 1 to 17; layer 2, pieces 2 to 17 from the left.")
	assert.Contains(t, said, "2 in one half rib: layer 2, piece 1; layer 2, piece 18 from the left.")
}
