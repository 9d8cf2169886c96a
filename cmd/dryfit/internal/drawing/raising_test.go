package drawing

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/result/raising"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// textsOf are the texts of a group, in their order.
func textsOf(items []paper.Item) (out []paper.Text) {
	for item := range paper.Ungrouped(items) {
		if text, ok := item.(paper.Text); ok {
			out = append(out, text)
		}
	}
	return out
}

// inGroup is what is written in a group, its lines joined again.
func inGroup(t *testing.T, s paper.Sheet, id string) string {
	var lines []string
	for _, text := range textsOf(group(t, s, id)) {
		assert.GreaterOrEqual(t, text.Height, 2.5, text.Text)
		lines = append(lines, text.Text)
	}
	return strings.Join(lines, " ")
}

// Each frame says on its sheet what the results say of it, whole, and NOT RELEASED.
func saysItsFrames(t *testing.T, in sheet.Input) {
	s, err := Draw("raising", in, sheet.Options{})
	require.NoError(t, err)
	assert.Empty(t, draft.Overlaps(s))
	for i, f := range in.Assessment.Results.Frames() {
		says := inGroup(t, s, fmt.Sprintf("frame-%d", i+1))
		for _, l := range f.Lines(in.Ceiling().Units) {
			assert.Contains(t, says, l)
		}
		assert.Contains(t, says, f.Title(i+1))
		assert.Contains(t, says, raising.NoRelease)
	}
}

// Every ceiling of the samples has a raising sheet or a reason why not, and one that
// fails has none.
func TestRaisingOfEverySample(t *testing.T) {
	drawn := 0
	for _, name := range sample.Names(t) {
		s := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
		in := sheet.Input{Assessment: s, Version: "test", On: "2026-11-25"}
		_, err := Draw("raising", in, sheet.Options{})
		var none *NoPlanError
		if errors.As(err, &none) {
			assert.NotEmpty(t, none.Why, name)
			continue
		}
		t.Run(name, func(t *testing.T) { saysItsFrames(t, in) })
		drawn++
	}
	assert.GreaterOrEqual(t, drawn, 4)
}

// So do a tiny, a pointed, a split, an imperial ceiling and one of a single panel.
func TestRaisingOfUnlikeCeilings(t *testing.T) {
	for name, change := range map[string]map[string]any{
		"imperial": {"project.units": "imperial"},
		"pointed":  profiles()["pointed"],
		"flat":     profiles()["flat"],
		"split":    {"panels.around": int64(2), "strap.stations": []any{"8%", "40%", "60%", "92%"}},
		"long":     {"panels.along": int64(1), "lift.capacity": "2000kg"},
		"tiny": {
			"vault.span": "1000mm", "vault.rise": "200mm", "vault.length": "1180mm", "room.width": "1040mm", "room.length": "1230mm", "room.height": "900mm",
			"grid.along": int64(1), "panels.along": int64(1), "grid.around": int64(2),
		},
		"many lifts": {"lift.stations": []any{"10%", "14%", "18%", "22%", "50%", "78%", "82%", "86%", "90%"}},
	} {
		in := input(t, change)
		in.Assessment.Verdict = 0 // drawn whatever else is wrong with it
		plan := in.Assessment.Results.Raising()
		require.Empty(t, plan.None(in.Ceiling()), name)
		t.Run(name, func(t *testing.T) { saysItsFrames(t, in) })
	}
}

// A spec whose straps fail, or that has no lifts, has no sheet, and it is said why.
func TestNoRaisingSheetWithoutPlan(t *testing.T) {
	for why, change := range map[string]map[string]any{
		"the check fails the spec": {"strap.allowable.load": "0.05kN"},
		"needs lift.stations":      {"lift": map[string]any{"units": int64(2)}},
	} {
		in := input(t, change)
		_, err := Draw("raising", in, sheet.Options{})
		assert.EqualError(t, err, "the raising sheet is not drawn: there is no raising plan: "+why)
		_, undrawn := readable(t, in)
		assert.Contains(t, undrawn, err.Error())
	}
}
