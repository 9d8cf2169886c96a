package picture

import (
	"maps"
	"math"
	"testing"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// room is the reading room with changes.
func room(t testing.TB, changes ...map[string]any) *layout.Ceiling {
	t.Helper()
	all := map[string]any{}
	for _, c := range changes {
		maps.Copy(all, c)
	}
	return sample.Room(t, all)
}

// ends are the corners of the least box around the polygons of some items.
func ends(items []paper.Item) (low, high paper.Point) {
	low, high = paper.Point{X: math.Inf(1), Y: math.Inf(1)}, paper.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, item := range items {
		if p, ok := item.(paper.Poly); ok {
			for _, q := range p.Points {
				low.X, low.Y, high.X, high.Y = min(low.X, q.X), min(low.Y, q.Y), max(high.X, q.X), max(high.Y, q.Y)
			}
		}
	}
	return low, high
}

// textsOf are where the texts of a sheet begin.
func textsOf(s paper.Sheet) map[string]paper.Point {
	out := map[string]paper.Point{}
	for _, item := range s.Items {
		if t, ok := item.(paper.Text); ok {
			out[t.Text] = t.At
		}
	}
	return out
}
