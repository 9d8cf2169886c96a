package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// lengths are how much is drawn in each of the three kinds of line, by the number of
// pieces; the legend has one of each, as a line.
func lengths(s paper.Sheet) (same, old, fresh int) {
	for _, i := range s.Items {
		p, ok := i.(paper.Poly)
		switch {
		case !ok:
		case p.Stroke == kept:
			same += len(p.Points) - 1
		case p.Stroke == gone:
			old += len(p.Points) - 1
		case p.Stroke == arrive:
			fresh += len(p.Points) - 1
		}
	}
	return same, old, fresh
}

// A ceiling over itself, and over itself in other units, has lines of both alone; what
// changes is drawn as of the old and of the new, and what does not stays.
func TestOverlay(t *testing.T) {
	ceiling := func(key string, value any) *layout.Ceiling {
		return sample.Ceiling(t, "reading-room", map[string]any{key: value})
	}
	before := ceiling("project.title", "before")
	for _, same := range []*layout.Ceiling{before, ceiling("project.units", "imperial")} {
		both, old, fresh := lengths(Overlay("t", before, same, nil))
		assert.Positive(t, both)
		assert.Zero(t, old+fresh)
	}
	both, old, fresh := lengths(Overlay("t", before, ceiling("vault.rise", "1100mm"), []string{"a line"}))
	assert.Positive(t, both, "the ribs in plan lie where they lay")
	assert.Positive(t, old)
	assert.Positive(t, fresh)
}

// Of two lines that share one piece, by hand: one piece is of both, one of each alone.
func TestLaid(t *testing.T) {
	at := func(x float64) paper.Point { return paper.Point{X: x} }
	before := strokesOf([]paper.Item{paper.Poly{Points: []paper.Point{at(0), at(1), at(2)}, Stroke: pen.Edge}})
	after := strokesOf([]paper.Item{paper.Poly{Points: []paper.Point{at(3), at(2), at(1)}, Stroke: pen.Edge}, paper.Poly{Points: []paper.Point{at(8), at(9)}}})
	got := laid(before, after)
	assert.Equal(t, []paper.Item{
		paper.Poly{Points: []paper.Point{at(2), at(1)}, Stroke: kept},
		paper.Poly{Points: []paper.Point{at(0), at(1)}, Stroke: gone},
		paper.Poly{Points: []paper.Point{at(3), at(2)}, Stroke: arrive},
	}, got)
}
