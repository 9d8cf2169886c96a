package picture

import (
	"maps"
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
