package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/rules/model/sample"
	"dryfit/rules/review"
)

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
		units := "metric"
		if c.imperial {
			units = "imperial"
		}
		in := Input{Assessment: &review.Assessment{Ceiling: sample.Room(t, map[string]any{"project.units": units})}}
		size, ok := draft.SizeNamed(c.paper)
		require.True(t, ok)
		bar := in.bar(size.BarRoom(), c.scale)
		assert.InDelta(t, c.length, bar.Length, 1e-9)
		assert.Equal(t, c.stands, bar.Stands)
	}
}
