package pen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
)

// Lines lie in the figure that they fill, each grain has a pattern of its own, and a
// thin figure is filled.
func TestHatch(t *testing.T) {
	ell := []paper.Point{{X: 10, Y: 10}, {X: 30, Y: 10}, {X: 30, Y: 16}, {X: 16, Y: 16}, {X: 16, Y: 30}, {X: 10, Y: 30}}
	seen := map[string]bool{}
	for g := EndGrain; g <= FramingCut; g++ {
		outline := ell
		if g >= Plies {
			outline = ell[:0:0]
			outline = append(outline, paper.Point{X: 10, Y: 10}, paper.Point{X: 30, Y: 10}, paper.Point{X: 30, Y: 16}, paper.Point{X: 10, Y: 16})
		}
		lines := Hatch(outline, g)[0].(paper.Hatching).Lines
		require.NotEmpty(t, lines, g)
		for _, l := range lines {
			m := paper.Point{X: (l[0].X + l[1].X) / 2, Y: (l[0].Y + l[1].Y) / 2}
			assert.True(t, m.Y <= 16 && m.X <= 30 || m.X <= 16, "%d: %v", g, l)
			assert.True(t, m.X >= 10 && m.Y >= 10, "%d: %v", g, l)
		}
		body := svg.Body(Hatch(outline, g))
		assert.False(t, seen[body])
		seen[body] = true
	}
	// At 45 degrees, 1.4mm apart, lines in a square of 14mm are some 14·√2/1.4 = 14.
	square := []paper.Point{{X: 0, Y: 0}, {X: 14, Y: 0}, {X: 14, Y: 14}, {X: 0, Y: 14}}
	assert.Len(t, Hatch(square, EndGrain)[0].(paper.Hatching).Lines, 14)
	thin := Hatch([]paper.Point{{X: 0, Y: 0}, {X: 14, Y: 0}, {X: 14, Y: 1}, {X: 0, Y: 1}}, EndGrain)
	require.Len(t, thin, 1)
	assert.IsType(t, paper.Poly{}, thin[0])
}
