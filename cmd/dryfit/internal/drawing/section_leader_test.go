package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/sample"
)

// Of every ceiling the section on its own paper, on A3 and on a page has no leader that
// crosses the room, and on a page all is said but where marks crowd.
func TestNoLeaderCrossesTheSection(t *testing.T) {
	const longest = 60 // mm: a third of a page's width
	for _, name := range sample.Names(t) {
		in := ceiling(t, name, nil)
		var drawn []paper.Sheet
		for _, size := range []string{"", "A3"} {
			if s, err := Draw("section", in, sheet.Options{Paper: size}); err == nil {
				drawn = append(drawn, s)
			}
		}
		figures, _, err := Figures(in)
		require.NoError(t, err)
		for _, s := range append(drawn, figures...) {
			if s.Name != "section" {
				continue
			}
			assert.Empty(t, draft.Overlaps(s), name)
			for _, item := range s.Items {
				l, ok := item.(paper.Line)
				if ok && l.Stroke == pen.Hair && l.A.X != l.B.X && l.A.Y != l.B.Y { // no dimension
					assert.Less(t, math.Hypot(l.B.X-l.A.X, l.B.Y-l.A.Y), float64(longest), "%s on %v", name, s.Width)
				}
			}
			for _, n := range s.Rest {
				for _, line := range n.Lines {
					without := s.Width <= Lying.Width && strings.HasPrefix(n.Title, "No room") && !strings.HasPrefix(line, "the mark of ")
					assert.False(t, without, "%s on %v: %s", name, s.Width, line)
				}
			}
		}
	}
}
