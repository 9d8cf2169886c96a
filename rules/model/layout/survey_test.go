package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// measured is a spec of the example whose room was measured: 4240mm wide and 7144mm
// long, with changes, each a key and its value.
func measured(t *testing.T, pairs ...string) map[string]any {
	t.Helper()
	sides := func(l, r string) map[string]any { return map[string]any{"left": l, "right": r} }
	station := func(at string) map[string]any {
		return map[string]any{"at": at, "left": "2120mm", "right": "2120mm"}
	}
	changes := map[string]any{"survey": map[string]any{
		"accuracy": "1mm", "near": sides("0mm", "0mm"), "far": sides("7144mm", "7144mm"),
		"station": []any{station("0mm"), station("3500mm"), station("7144mm")},
	}}
	tree := sample.Tree(t, sample.ReadingRoom, changes)
	for i := 0; i < len(pairs); i += 2 {
		var ok bool
		tree, ok = spec.With(tree, pairs[i], pairs[i+1])
		require.True(t, ok, pairs[i])
	}
	return tree
}

// What can't be is said at its key.
func TestASurveyThatCannotBe(t *testing.T) {
	for _, bad := range []struct {
		changes  []string
		at, text string
	}{
		{
			[]string{"survey.station.2.at", "7144mm"},
			"survey.station.3.at",
			"station 3 is at 7144mm and the station before it at 7144mm; list stations in ascending order along the baseline",
		},
		{
			[]string{"survey.station.2.at", "-1mm"},
			"survey.station.2.at",
			"station 2 is at -1mm and the station before it at 0mm; list stations in ascending order along the baseline",
		},
		{
			[]string{"survey.station.3.at", "7000mm"},
			"survey.station.3.at",
			"the stations cover 7000mm of the room, and the row of panels is 7082mm long; measure at both ends of the row",
		},
		{[]string{"survey.station.2.left", "-2120mm"}, "survey.station.2.right", "left and right add up to a width of 0mm, so the walls cross"},
		{[]string{"survey.far.right", "-10mm"}, "survey.far.right", "the distance from the near end to the far end is -10mm, so the end walls cross"},
		{
			[]string{"survey.station.3.right", "2000mm", "survey.far.left", "200m", "survey.far.right", "200m"},
			"survey.far",
			"the side walls, extended straight from the stations, cross before they reach this corner",
		},
		{
			[]string{"survey.station.1.left", "2083mm", "survey.station.1.right", "2157mm", "survey.station.3.left", "2157mm", "survey.station.3.right", "2083mm"},
			"survey.station", "the axis of the panels is askew to the baseline by 10.4mm a metre; the maximum is 10mm a metre. " +
				"Lay the baseline along the room, or look for a wrong reading",
		},
	} {
		_, faults := layout.Resolve(measured(t, bad.changes...), standards.BuiltIn(), nil)
		assert.Equal(t, []layout.Fault{{Key: bad.at, Text: bad.text}}, faults, "%v", bad.changes)
	}
	_, faults := layout.Resolve(measured(t), standards.BuiltIn(), nil)
	assert.Empty(t, faults)
}

// Panels lie between the seams, and their lengths and gaps make up the row.
func TestPanelAlong(t *testing.T) {
	for _, ends := range []string{"half", "full"} {
		c := sample.Room(t, map[string]any{"grid.ends": ends})
		end := 0.0
		for k := range 6 {
			near, far := c.PanelAlong(k)
			if k > 0 {
				assert.InDelta(t, c.Seam.Gap.Get(), near-end, 1e-12)
			}
			length := c.Panel.Length.Get()
			if k == 0 || k == 5 {
				length = c.Panel.EndLength.Get()
			}
			assert.InDelta(t, length, far-near, 1e-12, "%s, panel %d", ends, k)
			end = far
		}
		assert.InDelta(t, c.BuiltLength(), end, 1e-12)
	}
}
