package drawing

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/dxf"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/svg"
)

// hatchings finds those of items.
func hatchings(items []paper.Item) (out []paper.Hatching) {
	for _, item := range items {
		switch i := item.(type) {
		case paper.Hatching:
			out = append(out, i)
		case paper.Group:
			out = append(out, hatchings(i.Items)...)
		}
	}
	return out
}

// Lines lie in the figure that they fill, each grain has a pattern of its own, and a
// thin figure is filled.
func TestHatch(t *testing.T) {
	ell := []paper.Point{{X: 10, Y: 10}, {X: 30, Y: 10}, {X: 30, Y: 16}, {X: 16, Y: 16}, {X: 16, Y: 30}, {X: 10, Y: 30}}
	seen := map[string]bool{}
	for g := endGrain; g <= framingCut; g++ {
		outline := ell
		if g >= plies {
			outline = ell[:0:0]
			outline = append(outline, paper.Point{X: 10, Y: 10}, paper.Point{X: 30, Y: 10}, paper.Point{X: 30, Y: 16}, paper.Point{X: 10, Y: 16})
		}
		lines := hatchings(hatch(outline, g))[0].Lines
		require.NotEmpty(t, lines, g)
		for _, l := range lines {
			m := paper.Point{X: (l[0].X + l[1].X) / 2, Y: (l[0].Y + l[1].Y) / 2}
			assert.True(t, m.Y <= 16 && m.X <= 30 || m.X <= 16, "%d: %v", g, l)
			assert.True(t, m.X >= 10 && m.Y >= 10, "%d: %v", g, l)
		}
		body := svg.Body(hatch(outline, g))
		assert.False(t, seen[body])
		seen[body] = true
	}
	// At 45 degrees, 1.4mm apart, lines in a square of 14mm are some 14·√2/1.4 = 14.
	square := []paper.Point{{X: 0, Y: 0}, {X: 14, Y: 0}, {X: 14, Y: 14}, {X: 0, Y: 14}}
	assert.Len(t, hatchings(hatch(square, endGrain))[0].Lines, 14)
	assert.Empty(t, hatchings(hatch([]paper.Point{{X: 0, Y: 0}, {X: 14, Y: 0}, {X: 14, Y: 1}, {X: 0, Y: 1}}, endGrain)))
}

// The rib's section has end grain both ways, plies and long grain; all writers draw
// each line.
func TestWhatIsCutIsHatched(t *testing.T) {
	s, err := Draw("rib", input(t), Options{})
	require.NoError(t, err)
	for part, n := range map[string]int{"rib": 2, "skin": 2, "tenon": 1} {
		assert.Len(t, hatchings(group(t, s, part)), n, part)
	}
	lines := 0
	for _, h := range hatchings(s.Items) {
		lines += len(h.Lines)
	}
	only := []paper.Item{}
	for _, h := range hatchings(s.Items) {
		only = append(only, h)
	}
	var p, d bytes.Buffer
	require.NoError(t, pdf.Write(&p, pdf.Document{Title: "t", Creator: "c", Date: time.Unix(0, 0), Plain: true}, []paper.Sheet{{Width: 594, Height: 420, Items: only}}))
	require.NoError(t, dxf.Write(&d, dxf.Drawing{Items: only, Unit: 1}))
	assert.Equal(t, lines, strings.Count(svg.Body(only), "L"), "SVG")
	assert.Equal(t, lines, strings.Count(p.String(), " l S"), "PDF")
	assert.Equal(t, lines, strings.Count(d.String(), "\r\nLINE\r\n"), "DXF")
}
