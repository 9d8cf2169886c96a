package drawing

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/spec"
)

// A finding on the force of one strap is marked at that strap on both sheets that
// show straps.
func TestForcesAreMarkedAtTheirStrap(t *testing.T) {
	in := input(t, map[string]any{"strap.allowable.load": "0.1kN"})
	seen := 0
	for i, f := range in.Assessment.Findings {
		n := regexp.MustCompile(`strap (\d)`).FindStringSubmatch(f.Text)
		if f.Rule.ID != "strap.load" && f.Rule.ID != "strap.setting" || n == nil {
			continue
		}
		seen++
		strap, _ := strconv.Atoi(n[1])
		places := map[int]paper.Point{}
		for k := 1; k <= 4; k++ {
			in.AtStation(places, paper.Point{X: float64(k)}, spec.Key("strap", "stations", k))
		}
		assert.Equal(t, paper.Point{X: float64(strap)}, places[i+1], f.Text)
	}
	require.Positive(t, seen, fmt.Sprint(in.Assessment.Findings))
	drawn, _, err := All(in, sheet.Options{})
	require.NoError(t, err)
	for _, s := range drawn {
		if s.Name != "section" && s.Name != "straps" {
			continue
		}
		var xs []float64
		for i, f := range in.Assessment.Findings {
			if p, ok := s.Marks[i+1]; ok && f.Rule.ID == "strap.load" {
				xs = append(xs, p.X)
			}
		}
		assert.NotEmpty(t, xs, s.Name)
	}
}

// listed checks that what a sheet's column has no room for stands on the sheets of
// notes: no assumption and no finding on what is drawn is left out.
func listed(t *testing.T, in sheet.Input, drawn []paper.Sheet) {
	t.Helper()
	var all strings.Builder
	for _, s := range drawn {
		all.WriteString(svg.Body(s.Items))
	}
	text := regexp.MustCompile(`<[^>]*>|\s`).ReplaceAllString(all.String(), "")
	for _, a := range in.Assessment.Assumed {
		assert.Contains(t, text, a.Key+"=")
	}
	drawnKeys := []string{"strap", "vault", "rib", "grid", "seam", "skin"}
	for i, f := range in.Assessment.Findings {
		if top, _, _ := strings.Cut(f.At, "."); slices.Contains(drawnKeys, top) {
			assert.Contains(t, text, fmt.Sprintf("%d%s%s:", i+1, f.Severity, f.Rule.ID))
		}
	}
	assert.NotContains(t, text, "dryfitcheck")
}
