package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// words are all texts of a sheet, in their order.
func words(items []paper.Item) (out []string) {
	for _, item := range items {
		switch i := item.(type) {
		case paper.Text:
			out = append(out, i.Text)
		case paper.Group:
			out = append(out, words(i.Items)...)
		}
	}
	return out
}

// Each sheet of a set has its own number, says which of how many it is, and bears the
// beginning of the spec's hash; one drawn alone keeps its number.
func TestTitleBlock(t *testing.T) {
	in := input(t, map[string]any{"project.owner": "Concourse trust", "project.issued": "2026-11-20"})
	in.SHA256 = strings.Repeat("0123456789abcdef", 4)
	drawn, _, err := All(in, Options{})
	require.NoError(t, err)
	for i, s := range drawn {
		said := strings.Join(words(s.Items), "\n")
		assert.Contains(t, said, "number A-612."+string(rune('1'+i)), s.Name)
		assert.Contains(t, said, "sheet "+string(rune('1'+i))+" of "+string(rune('0'+len(drawn))), s.Name)
		assert.Contains(t, said, "\n0123456789ab\n", s.Name)
		assert.Contains(t, said, "\nConcourse trust\n", s.Name)
		assert.Contains(t, said, "\n2026-11-20\n", s.Name)
		assert.Contains(t, said, "\napproved\n", "with a line to sign on")
	}
	alone, err := Draw("rib", in, Options{})
	require.NoError(t, err)
	said := strings.Join(words(alone.Items), "\n")
	assert.Contains(t, said, "number A-612.4")
	assert.Contains(t, said, "sheet 1 of 1")
}

// The scale bar is as long as what it stands for at the scale: 500mm at 1:20 is 25mm,
// 5ft at 1/2in to the foot 2 1/2in.
func TestScaleBar(t *testing.T) {
	for _, c := range []struct {
		imperial bool
		scale    float64
		paper    string
		length   float64
		stands   string
	}{
		{false, 20, "A3", 50, "1000mm"},
		{false, 25, "A3", 40, "1000mm"},
		{false, 5, "A1", 40, "200mm"},
		{true, 24, "ARCH-C", 63.5, `5'-0"`},
		{true, 1, "ARCH-B", 50.8, `2"`},
	} {
		in := input(t)
		if c.imperial {
			in = input(t, map[string]any{"project.units": "imperial"})
		}
		s, err := Draw("plan", in, Options{Scale: c.scale, Paper: "A0"})
		if err == nil {
			low, high := bounds(group(t, s, "scale-bar"))
			size, _ := draft.SizeNamed("A0")
			assert.InDelta(t, in.bar(size.BarRoom(), c.scale).Length, high.X-low.X, 0.001, "as drawn")
		}
		size, ok := draft.SizeNamed(c.paper)
		require.True(t, ok)
		bar := in.bar(size.BarRoom(), c.scale)
		assert.InDelta(t, c.length, bar.Length, 1e-9)
		assert.Equal(t, c.stands, bar.Stands)
	}
}
