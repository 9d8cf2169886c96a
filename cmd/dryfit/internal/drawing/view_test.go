package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
)

// A fitting is drawn, and its angle of view stated: by hand 2·atan(0.95) = 87.06
// degrees, of the demo, whose crown needs no more.
func TestTheViewHasItsFittings(t *testing.T) {
	s, err := Draw("view", input(t), sheet.Options{})
	require.NoError(t, err)
	dark := 0
	for _, item := range group(t, s, "view") {
		if p, ok := item.(paper.Poly); ok && p.Tone == paper.Paper+8 {
			dark++
		}
	}
	assert.Positive(t, dark)
	assert.Contains(t, strings.Join(texts(s.Items), "\n"), "87 degrees wide")
}

// Each strap has its number, and its allowable of 0.9kN, over the bars, an arrow; one
// below the greatest force has a line at its own height.
func TestStrapsHaveTheirAllowable(t *testing.T) {
	s, err := Draw("straps", input(t), sheet.Options{})
	require.NoError(t, err)
	said := strings.Join(texts(s.Items), "\n")
	for _, want := range []string{"strap 1\n", "strap 4\n", "the two of a panel carry"} {
		assert.Contains(t, said, want)
	}
	arrows := func(s paper.Sheet) (n int) {
		for _, item := range group(t, s, "forces") {
			if p, ok := item.(paper.Poly); ok && len(p.Points) == 3 && p.Tone == paper.Ink {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 4, arrows(s))
	low, err := Draw("straps", input(t, map[string]any{"strap.allowable.load": "0.1kN"}), sheet.Options{})
	require.NoError(t, err)
	assert.Zero(t, arrows(low))
}
