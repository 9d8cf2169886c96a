package drawing

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
)

// surveyed is the print gallery, which was measured, with changes.
func surveyed(t testing.TB, changes map[string]any) sheet.Input {
	return ceiling(t, "print-gallery", changes)
}

// written is all that a sheet says, its notes too.
func written(s paper.Sheet) string {
	var b strings.Builder
	for _, text := range words(s.Items) {
		b.WriteString(text + "\n")
	}
	for _, n := range s.Rest {
		b.WriteString(n.Title + "\n" + strings.Join(n.Lines, "\n") + "\n")
	}
	return b.String()
}

// room is a survey of so many stations whose walls are far off in or out, from a
// baseline that lies beside the middle.
func measuredRoom(n int, length, width, bow, off float64) map[string]any {
	mm := func(x float64) string { return fmt.Sprintf("%gmm", x) }
	var stations []any
	for i := range n {
		by := bow * float64(i%3-1)
		stations = append(stations, map[string]any{
			"at": mm(length * float64(i) / float64(n-1)), "left": mm(width/2 + by + off), "right": mm(width/2 + by - off),
			"framing": mm(2350 + by/10),
		})
	}
	return map[string]any{"survey": map[string]any{
		"accuracy": "1mm", "springing": "1000mm", "station": stations,
		"near": map[string]any{"left": "0mm", "right": "3mm"}, "far": map[string]any{"left": mm(length), "right": mm(length - 4)},
	}}
}

// The walls stand off the band of panels by their gaps, times what the sheet says,
// and the readings and distances are written.
func TestTheMeasuredRoomIsDrawn(t *testing.T) {
	in := surveyed(t, nil)
	s, err := Draw("plan", in, sheet.Options{Scale: 20})
	require.NoError(t, err)
	text := written(s)
	for _, want := range []string{
		"the gaps across it drawn 10 times their size", "axis 3.9mm", "axis 1.9mm", "2116mm", "GAPS TO THE MEASURED WALLS",
		"panel 1: left 19.8mm, 21.3mm; right 19.9mm, 18.5mm", "station 3 at 2900mm: left 2116mm, right 2126mm",
	} {
		assert.Contains(t, text, want)
	}
	var walls, panels []paper.Poly
	for _, item := range group(t, s, "survey") {
		if p, ok := item.(paper.Poly); ok && p.Closed {
			panels = append(panels, p)
		} else if ok {
			walls = append(walls, p)
		}
	}
	require.Len(t, walls, 2)
	require.Len(t, panels, 6)
	// By hand: at station 3, 2900mm, the axis lies 3.9 − 2.0·(2900 − 36)/7082 =
	// 3.09mm to the right, so that the left gap is 2116 + 3.08 less half of the
	// panel, 4202.5mm wide at most.
	left := panels[0].Points[0].Y - walls[0].Points[2].Y
	assert.InDelta(t, 2116+3.09-in.Ceiling().WidestPanel()*500, left*20/10, 0.06)
	right := walls[1].Points[2].Y - panels[0].Points[2].Y
	assert.InDelta(t, 2126-3.09-in.Ceiling().WidestPanel()*500, right*20/10, 0.06)
	assert.InDelta(t, 1180, (panels[0].Points[1].X-panels[0].Points[0].X)*20, 0.02, "along the room to scale")

	straps, err := Draw("straps", surveyed(t, map[string]any{"fitting": []any{}}), sheet.Options{})
	require.NoError(t, err)
	assert.Contains(t, written(straps), "panel 1: 1132mm, 645mm, 645mm, 1132mm")
}

func TestMeasuredRoomsDoNotOverlap(t *testing.T) {
	for name, changes := range map[string]map[string]any{
		"as it is":      {},
		"tiny":          {"vault.span": "1200mm", "vault.rise": "240mm", "vault.length": "900mm", "room.width": "1240mm", "room.length": "944mm", "grid.along": int64(2), "panels.along": int64(1)},
		"long":          {"vault.length": "42000mm", "room.length": "42064mm", "grid.along": int64(36), "panels.along": int64(36)},
		"in two pieces": {"panels.around": int64(2)},
	} {
		for _, units := range []string{"metric", "imperial"} {
			for _, n := range []int{2, 7, 90} {
				c := map[string]any{"project.units": units}
				for key, value := range changes {
					c[key] = value
				}
				length, width := 7144.0, 4240.0
				switch name {
				case "tiny":
					length, width = 944, 1240
				case "long":
					length = 42064
				}
				if n != 7 || name != "as it is" {
					for key, value := range measuredRoom(n, length, width, 6, 120*float64(n%2)) {
						c[key] = value
					}
				}
				for _, title := range []string{"plan", "straps", "section"} {
					s, err := Draw(title, surveyed(t, c), sheet.Options{})
					var needs *sheet.NeedsError
					if assert.NotErrorAs(t, err, &needs, name) && assert.NoError(t, err, name) {
						assert.Empty(t, draft.Overlaps(s), "%s, %s, %d stations: %s", name, units, n, title)
					}
				}
			}
		}
	}
}
