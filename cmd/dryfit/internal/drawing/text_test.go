package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/sample"
)

// ISO 3098-1 (from memory): 2.5mm is the next height of its series over 1.8mm, which
// is too small to be copied; heights are those of capitals.
const leastText = 2.5

// Of every ceiling in both units all texts are 2.5mm high or more, the sheets are on one
// paper, and no text meets anything.
func TestTextIsLargeEnough(t *testing.T) {
	for _, name := range sample.Names(t) {
		for _, units := range []string{"metric", "imperial"} {
			t.Run(name+"/"+units, func(t *testing.T) {
				t.Parallel()
				drawn, _, err := All(ceiling(t, name, map[string]any{"project.units": units}), sheet.Options{})
				require.NoError(t, err)
				for _, s := range drawn {
					assert.Equal(t, [2]float64{drawn[0].Width, drawn[0].Height}, [2]float64{s.Width, s.Height}, s.Name)
					assert.Empty(t, draft.Overlaps(s), s.Name)
					for _, text := range textsOf(s.Items) {
						assert.GreaterOrEqual(t, text.Height, leastText, "%s: %s", s.Name, text.Text)
						assert.Contains(t, []float64{2.5, 3.5}, text.Height, "%s: %s", s.Name, text.Text)
					}
				}
			})
		}
	}
}

// Drawn dimensions are bare numbers in millimetres under a note that says so; in
// inches each has its unit, and there is no note.
func TestDimensionsAreBareNumbers(t *testing.T) {
	in := input(t)
	drawn, _, err := All(in, sheet.Options{})
	require.NoError(t, err)
	for _, s := range drawn {
		if s.Name == "view" || strings.HasPrefix(s.Name, "notes") {
			continue
		}
		assert.Contains(t, strings.Join(texts(s.Items), "\n"), "dimensions\nin mm", s.Name)
		for _, text := range textsOf(s.Items) {
			if text.Turn == 90 { // of the dimensions only
				assert.NotContains(t, text.Text, "mm", s.Name)
			}
		}
	}
	assert.Contains(t, texts(drawn[0].Items), "span 4200")
	inches, err := Draw("section", input(t, map[string]any{"project.units": "imperial"}), sheet.Options{})
	require.NoError(t, err)
	assert.NotContains(t, texts(inches.Items), "dimensions")
	assert.Contains(t, texts(inches.Items), "span 13'-9 3/8\"") // 4200/25.4 = 165.354 in
}
