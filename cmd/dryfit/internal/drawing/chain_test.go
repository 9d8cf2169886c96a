package drawing

import (
	"html"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/spec/quantity"
)

// What the plan prints of the room's length adds up.
func TestThePlanAddsUp(t *testing.T) {
	for _, units := range []string{"metric", "imperial"} {
		for _, gap := range []string{"21.37mm", "33.25mm", "40.5mm"} {
			s, err := Draw("plan", input(t, map[string]any{"project.units": units, "close.first_gap": gap}), sheet.Options{})
			require.NoError(t, err)
			drawn := html.UnescapeString(svg.Body(s.Items))
			sum := printedAfter(t, drawn, "last gap ")[0] + printedAfter(t, drawn, "panels and seams ")[0] + printedAfter(t, drawn, "first gap ")[0]
			nearest := math.Inf(1) // of the room's length and width
			for _, m := range printedAfter(t, drawn, "room ") {
				nearest = min(nearest, math.Abs(m-sum))
			}
			assert.InDelta(t, 0, nearest, 1e-9, "%s, a first gap of %s", units, gap)
		}
	}
}

// printedAfter are the lengths, in m, that a sheet prints after a word.
func printedAfter(t *testing.T, drawn, word string) (out []float64) {
	for _, found := range regexp.MustCompile(`>`+word+`([^<]+)<`).FindAllStringSubmatch(drawn, -1) {
		text, _, _ := strings.Cut(found[1], ", ")
		if !strings.ContainsAny(text, "'\"") { // bare, in millimetres
			text += "mm"
		}
		v, err := quantity.Parse(quantity.Metre, text)
		require.NoError(t, err)
		out = append(out, v.SI)
	}
	require.NotEmpty(t, out, word)
	return out
}
