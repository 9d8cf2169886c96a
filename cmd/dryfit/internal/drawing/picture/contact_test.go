package picture

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/sample"
)

// eachProfile is one option of each of some profiles.
func eachProfile(t *testing.T) (shown []Shown) {
	for _, profile := range []string{"flat", "segmental", "pointed", "elliptical", "semicircular"} {
		shown = append(shown, Shown{
			Ceiling: room(t, sample.Profiles()[profile]), Title: "option of a " + profile + " vault",
			Lines: []string{"a line", strings.Repeat("a long line ", 60), "PASS"},
		})
	}
	return shown
}

// A contact sheet has every option at one scale, and can be read.
func TestContactSheet(t *testing.T) {
	shown := eachProfile(t)
	s := Contact("A title", shown, Matrix{})
	assert.Empty(t, draft.Overlaps(s))
	assert.Contains(t, s.About, "plans 1:100, views 87° wide, with a person of 1750mm who is 4500mm from the eye")
	outlines := 0
	for _, item := range s.Items { // each plan is 42mm high at 1:100
		if p, ok := item.(paper.Poly); ok && p.Pen == paper.Medium && p.Tone == paper.Clear && p.Points[1].X-p.Points[0].X < picture {
			outlines++
			assert.InDelta(t, 42, p.Points[2].Y-p.Points[1].Y, 0.001)
		}
	}
	assert.Equal(t, len(shown), outlines)
}

// Of two keys the options lie in rows and columns under the values; a place without one
// is blank, says why, and keeps the others at theirs.
func TestContactMatrix(t *testing.T) {
	shown := eachProfile(t)
	for i := range shown {
		shown[i].Title = fmt.Sprintf("option %d", i+1)
	}
	blank := Shown{Title: "option 6", Lines: []string{"CAN'T BE MADE", "vault.rise: a rise of 2500mm is impossible"}}
	s := Contact("A title", append(shown, blank), Matrix{
		RowKey: "grid.around", Rows: []string{"5", "6", "7"}, ColumnKey: "rib.species", Columns: []string{"white oak", strings.Repeat("long ", 30)},
	})
	assert.Empty(t, draft.Overlaps(s))
	at := textsOf(s)
	assert.Equal(t, at["option 1"].X, at["white oak"].X)
	for i := range 6 {
		p := at[fmt.Sprintf("option %d", i+1)]
		assert.InDelta(t, at["option 1"].X+float64(i%2)*cellWide, p.X, 1e-9)
		assert.Equal(t, at[fmt.Sprintf("option %d", i/2*2+1)].Y, p.Y)
		assert.Greater(t, p.Y, at[[]string{"5", "6", "7"}[i/2]].Y)
	}
	assert.Contains(t, at, "vault.rise: a rise of 2500mm is impossible")
	assert.Contains(t, s.About, "grid.around by rows and rib.species by columns")
	assert.NotContains(t, Contact("A title", []Shown{blank}, Matrix{}).About, "1:")
}
