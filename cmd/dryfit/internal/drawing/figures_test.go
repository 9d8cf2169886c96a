package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/sample"
)

// figuresIn are those of a ceiling in a system of units.
func figuresIn(t *testing.T, name, units string) []paper.Sheet {
	drawn, undrawn, err := Figures(ceiling(t, name, map[string]any{"project.units": units}))
	require.NoError(t, err)
	assert.NotContains(t, strings.Join(undrawn, "\n"), "does not fit")
	return drawn
}

// Of every ceiling in both units each figure of a page fits one, its texts are as high
// as on a sheet, none meets anything, and each finding that it marks is to be seen.
func TestFiguresFitAPageAndCanBeRead(t *testing.T) {
	for _, name := range sample.Names(t) {
		for _, units := range []string{"metric", "imperial"} {
			t.Run(name+"/"+units, func(t *testing.T) {
				t.Parallel()
				for _, s := range figuresIn(t, name, units) {
					page := Upright
					if s.Width == Lying.Width {
						page = Lying
					}
					assert.Equal(t, page.Width, s.Width, s.Name)
					assert.LessOrEqual(t, s.Height, page.Height+0.01, s.Name)
					assert.Empty(t, draft.Overlaps(s), s.Name)
					marked := 0
					for _, text := range textsOf(s.Items) {
						assert.GreaterOrEqual(t, text.Height, leastText, "%s: %s", s.Name, text.Text)
						if text.Marked && strings.Trim(text.Text, "0123456789") == "" {
							marked++
						}
					}
					for _, n := range s.Rest {
						for _, line := range n.Lines {
							if strings.HasPrefix(line, "the mark of finding ") {
								marked++
							}
						}
					}
					assert.Equal(t, len(s.Marks), marked, s.Name)
				}
			})
		}
	}
}
