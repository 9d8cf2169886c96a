package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/closing"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/result/survey"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// square is the example's room as drawn, but that the baseline lies 2mm to the left
// of its middle and the room is 1mm longer; the level line is 1m under the springing.
const square = `[survey]
accuracy  = "1mm"
near      = { left = "0mm", right = "0mm" }
far       = { left = "7145mm", right = "7145mm" }
springing = "1000mm"
diagonals = ["8310mm", "8308mm"]
[[survey.station]]
at      = "0mm"
left    = "2118mm"
right   = "2122mm"
seat    = { left = "1000mm", right = "1004mm" }
framing = "2345mm"
[[survey.station]]
at      = "7145mm"
left    = "2118mm"
right   = "2122mm"
seat    = { left = "1000mm", right = "997mm" }
framing = "2359.29mm"
[climate]`

func surveyed(t testing.TB, text string, changes ...string) (*survey.Survey, *layout.Ceiling) {
	t.Helper()
	changes = append([]string{"[climate]", text}, changes...)
	doc, problems := spec.Parse("example", sample.Source(t, sample.ReadingRoom, changes...))
	require.Empty(t, problems)
	c, faults := layout.Resolve(doc.Tree, standards.BuiltIn(), nil)
	require.Empty(t, faults)
	s := seasons.Of(c)
	return survey.Of(c, s, closing.Of(c, s)), c
}

// By hand: the panel at its widest is 4200 + 1 + 2·1.113 = 4203.2mm wide, which
// leaves (4240 − 4203.2)/2 = 18.39mm on each side of an axis 2mm right of the
// baseline. From the far wall 18mm, then 7082mm of panels and seams, to 45mm at the
// near wall; off by 6·1 + 5·0.3 + 2·1 = 9.5mm either way, and 2.65mm more in the dry
// season (see the figures on closing).
func TestSquare(t *testing.T) {
	v, c := surveyed(t, square)
	at, ok := v.Placed()
	require.True(t, ok)
	assert.InDelta(t, 0.01839, v.Least.Get().Gap, 1e-5)
	assert.InDelta(t, 0.01839, at.Most, 1e-5)
	assert.InDelta(t, c.SideGap(), at.Most+c.Room.Tolerance.Get()/-2, 1e-9, "beside the room's tolerance it is the gap as drawn")
	assert.InDelta(t, 0.002, at.Y(at.Near), 1e-9)
	assert.InDelta(t, 0.045, at.Near, 1e-9)
	assert.InDelta(t, 7.127, at.Far, 1e-9)
	for _, last := range v.Last.Get() {
		assert.InDelta(t, 0.045, last.Nominal, 1e-9)
		assert.InDelta(t, 0.0355, last.Least.Value, 1e-9)
		assert.InDelta(t, 0.0545+0.00265, last.Most.Value, 0.00015)
	}
	panels := v.Panels.Get()
	require.Len(t, panels, 6)
	assert.InDelta(t, 7.127, panels[0].Far, 1e-9, "panel 1 is at the far end")
	assert.InDelta(t, 5.947, panels[0].Near, 1e-9)
	assert.InDelta(t, 0.045, panels[5].Near, 1e-9)
	for _, p := range panels {
		assert.InDelta(t, 4.240, p.Width, 1e-9)
		assert.InDelta(t, 0.01839, p.AtNear.Left, 1e-5)
		assert.InDelta(t, 0.01839, p.AtFar.Right, 1e-5)
	}
}

// By hand: the right seat falls 7mm in 7145mm; over the middle of panel 1, at
// (7127 + 5947)/2 = 6537mm, it stands at 4 − 7·6537/7145 = −2.40mm. The framing
// rises 2mm a metre: there 1345 + 13.07 = 1358.07mm over the springing. The
// extrados at 36% of the arc stands 60mm square off an arc of 3045mm that is
// 14%·1.522 = 0.2131 from its crown: (3045 + 60)·cos 0.2131 − (3045 − 840) = 829.8mm.
func TestSeatsAndStraps(t *testing.T) {
	v, c := surveyed(t, square)
	panel := v.Panels.Get()[0]
	assert.InDelta(t, -0.00240, panel.Seat.Right, 1e-5)
	assert.InDelta(t, 0, panel.Seat.Left, 1e-12)
	assert.InDelta(t, 0.007/7.145, v.Tilt.Get(), 1e-9)
	assert.InDelta(t, 1.35807, panel.Framing, 1e-5)
	assert.InDelta(t, 1.35807-0.8298, v.Strap(panel, c.Strap.Stations.Get()[1]), 1e-4)
}

// By hand: √(7145² + (2122 + 2118)²) = 8308.3mm.
func TestDiagonals(t *testing.T) {
	v, _ := surveyed(t, square)
	closes := v.Closes.Get()
	require.Len(t, closes, 2)
	assert.InDelta(t, 8.3083, closes[0].Follows, 1e-4)
	assert.InDelta(t, 8.310, closes[0].Measured, 1e-12)
	assert.InDelta(t, 8.3083, closes[1].Follows, 1e-4)
}

// The ribs grow until they are hung in the room's air, as in the last gap as drawn.
func TestGrownRibs(t *testing.T) {
	v, _ := surveyed(t, square, `hung      = "shop"`, `hung      = "room"`)
	assert.InDelta(t, 0.0355-0.00232, v.Last.Get()[0].Least.Value, 5e-5)
}

func TestWithoutASurvey(t *testing.T) {
	v, _ := surveyed(t, "[climate]")
	assert.False(t, v.Given() || v.Seated() || v.Framed())
	assert.Empty(t, v.Figures())
	v, _ = surveyed(t, square, `first_gap = "18mm"`, "")
	_, ok := v.Placed()
	assert.False(t, ok, "the first gap is never guessed")
	assert.Len(t, v.Figures(), 1, "the seats' slope needs no place")
}

// A mirrored room has mirrored figures.
func TestMirrored(t *testing.T) {
	key := func(f string) string {
		for _, swap := range [][2]string{{".left", ".right"}, {".right", ".left"}} {
			for i := 0; i+len(swap[0]) <= len(f); i++ {
				if f[i:i+len(swap[0])] == swap[0] {
					return f[:i] + swap[1] + f[i+len(swap[0]):]
				}
			}
		}
		return f
	}
	c := sample.Ceiling(t, "print-gallery", nil)
	tree := sample.Tree(t, "print-gallery", nil)
	mirrored := mirror(tree["survey"].(map[string]any))
	tree, ok := spec.With(tree, "survey", mirrored)
	require.True(t, ok)
	other, faults := layout.Resolve(tree, standards.BuiltIn(), nil)
	require.Empty(t, faults)
	figures := func(c *layout.Ceiling) map[string]float64 {
		out := map[string]float64{}
		s := seasons.Of(c)
		for _, f := range survey.Of(c, s, closing.Of(c, s)).Figures() {
			out[f.Key] = f.Value.SI
		}
		return out
	}
	plain, turned := figures(c), figures(other)
	require.Len(t, turned, len(plain))
	for k, v := range plain {
		want := turned[key(k)]
		if k == "survey.axis.near" || k == "survey.axis.far" {
			want = -want
		}
		assert.InDelta(t, want, v, 1e-6, k)
	}
}

// mirror swaps left and right in a table and in all that is in it.
func mirror(table map[string]any) map[string]any {
	out := map[string]any{}
	for k, v := range table {
		switch in := v.(type) {
		case map[string]any:
			v = mirror(in)
		case []any:
			list := make([]any, len(in))
			for i, x := range in {
				list[i] = x
				if t, ok := x.(map[string]any); ok {
					list[i] = mirror(t)
				}
			}
			v = list
		}
		switch k {
		case "left":
			k = "right"
		case "right":
			k = "left"
		}
		out[k] = v
	}
	return out
}

// By hand: the framing rises by 2mm a metre. The middle of panel 1 lies at 7145 − 18 −
// 590 = 6537mm, where it is 2358.07mm over the level line, 8.07mm over the drawing's
// 1000 + 900 + 450; strap 2 is drawn 640.2mm long with its laps. In inches 648.3mm
// are 25.52in, next to 25 1/2. At panel 5, 4722mm nearer, the framing is 9.44mm lower.
func TestStrapsAreCutPanelByPanel(t *testing.T) {
	v, _ := surveyed(t, square)
	cuts := v.Cuts()
	require.Len(t, cuts, 6)
	assert.InDelta(t, 0.648, cuts[0][1], 1e-12)
	assert.InDelta(t, 0.648, cuts[0][2], 1e-12)
	assert.InDelta(t, 0.639, cuts[4][1], 1e-12)
	v, _ = surveyed(t, square, `units    = "metric"`, `units    = "imperial"`)
	assert.InDelta(t, 25.5*0.0254, v.Cuts()[0][1], 1e-12)

	tables := v.Tables()
	require.Len(t, tables, 2)
	assert.Equal(t, "survey.gaps", tables[0].Key)
	assert.Len(t, tables[0].Rows, 6)
	assert.Equal(t, `The axis of the row lies at its near end, 1 3/4" along the baseline, 1/16" to the right of it, and at its far end, 23'-4 9/16" along the baseline, 1/16" to the right of it.`, tables[0].Note)
	assert.Equal(t, []string{"panel", "strap 1", "strap 2", "strap 3", "strap 4"}, tables[1].Head)

	v, _ = surveyed(t, square, "springing = \"1000mm\"\ndiagonals", "springing = \"1000mm\"\ndiagonals", `"2345mm"`, `"1600mm"`, `"2359.29mm"`, `"1600mm"`)
	assert.Nil(t, v.Cuts(), "framing at the fixings leaves no length")
	v, _ = surveyed(t, square, "lap       = \"60mm\"", "")
	assert.Nil(t, v.Cuts(), "no lap is given")
	assert.Len(t, v.Tables(), 1)
}

// An arch in pieces is told by its number, not by those of its panels.
func TestArchesInPieces(t *testing.T) {
	v, _ := surveyed(t, square)
	assert.Equal(t, "panel 2", v.Name(1))
	v, _ = surveyed(t, square, "around    = 1", "around    = 2")
	assert.Equal(t, "arch 2", v.Name(1))
}
