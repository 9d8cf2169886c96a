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
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
)

// hatchings finds those of items.
func hatchings(items []paper.Item) (out []paper.Hatching) {
	for item := range paper.Ungrouped(items) {
		if h, ok := item.(paper.Hatching); ok {
			out = append(out, h)
		}
	}
	return out
}

// The rib's section has end grain both ways, plies and long grain; all writers draw
// each line.
func TestWhatIsCutIsHatched(t *testing.T) {
	s, err := Draw("rib", input(t), sheet.Options{})
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
