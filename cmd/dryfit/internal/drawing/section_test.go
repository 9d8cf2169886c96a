package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/section"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// drawnSection is that of one of the ceilings, with changes.
func drawnSection(t *testing.T, name string, changes map[string]any) paper.Sheet {
	s, err := Draw("section", ceiling(t, name, changes), sheet.Options{})
	require.NoError(t, err)
	return s
}

// The levels and the gaps of unlike ceilings, by hand.
func TestLevelsAndGaps(t *testing.T) {
	for _, tt := range []struct {
		name         string
		by           string // how the figures are worked
		levels, gaps []string
	}{
		{
			name:   "alcove",
			by:     "2250 + 240 = 2490; the rib is 36mm deep and the skin lies within it: 2490 + 36 + 120 = 2646; gaps (1230 - 1200)/2 = 15",
			levels: []string{"+2646", "underside of framing", "+2490", "soffit at the crown", "+2250", "springing", "0", "finished floor"},
			gaps:   []string{"gap 15", "span 1200", "2250 to the springing", "2490 to the crown", "2646 to the framing"},
		},
		{
			name: "lantern-hall",
			by: "pointed of radius 9ft: each side's centre is 9ft from its springing, 3ft beyond the axis, so the rise is √(9² − 3²) = 8.4853ft = 8ft 5.823in, nearest 13/16; 9ft more is 17ft 5 13/16in; " +
				"the springing is upright, so that ribs of 3in reach out 3in each: 12ft 6in over the feet, gaps (12ft 8in − 12ft 6in)/2 = 1in",
			levels: []string{`+17'-5 13/16"`, "soffit at the crown", `+9'-0"`, "springing", "0", "finished floor"},
			gaps:   []string{`gap 1"`, `span 12'-0"`, `over its feet 12'-6"`},
		},
		{
			name:   "concourse",
			by:     "5200 + 2600 = 7800; the rib is 120mm deep: 7800 + 120 + 900 = 8820; gaps (15100 - 15000)/2 = 50",
			levels: []string{"+8820", "underside of framing", "+7800", "soffit at the crown", "+5200", "springing", "0", "finished floor"},
			gaps:   []string{"gap 50", "span 15000", "8820 to the framing", "moulding, covers 220mm"},
		},
		{
			name:   "gallery-soffit",
			by:     "a flat soffit at 8ft; 2 1/4in of rib and 10in over it make 9ft 1/4in; gaps (18ft 2in − 18ft)/2 = 1in",
			levels: []string{`+9'-0 1/4"`, "underside of framing", `+8'-0"`, "soffit", "0", "finished floor"},
			gaps:   []string{`gap 1"`, `span 18'-0"`},
		},
	} {
		s := drawnSection(t, tt.name, nil)
		assert.Equal(t, tt.levels, texts(group(t, s, "levels")), "%s: %s", tt.name, tt.by)
		for _, text := range tt.gaps {
			assert.Contains(t, texts(s.Items), text, "%s: %s", tt.name, tt.by)
		}
	}
}

// Every level is drawn at its height, and the marks lie apart.
func TestLevelsAreToScale(t *testing.T) {
	for _, name := range sample.Names(t) {
		assessment := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
		s, err := Draw("section", sheet.Input{Assessment: assessment, Version: "test", On: "2026-11-25"}, sheet.Options{Scale: 50, Paper: "A0"})
		require.NoError(t, err)
		var from, to []float64
		for _, item := range group(t, s, "levels") {
			if p, ok := item.(paper.Poly); ok && !p.Closed {
				from, to = append(from, p.Points[0].Y), append(to, p.Points[len(p.Points)-1].Y)
			}
		}
		c := assessment.Ceiling
		rise := c.Vault.Rise.Get()
		crown, springing := from[len(from)-3], from[len(from)-2]
		if rise > 0 {
			assert.InDelta(t, rise*1000/50, springing-crown, 0.01, name)
		}
		if c.Room.Above.Given() {
			assert.InDelta(t, (c.Vault.Crown.Get()+c.Room.Above.Get())*1000/50, springing-from[0], 0.01, name)
		}
		for i := range to[1:] {
			assert.GreaterOrEqual(t, to[i+1]-to[i], 9.6-1e-9, name)
		}
	}
}

// A lap is as long as the spec has it, on the rib and on the framing, and its screws lie
// where the shop bores for them: three of a lap of 60mm are 20mm apart, the first 10mm
// from its end. At 1:20 that is 3mm, 1mm and 0.5mm.
func TestLapsAndScrews(t *testing.T) {
	long := func(p paper.Poly) float64 {
		return math.Hypot(p.Points[1].X-p.Points[0].X, p.Points[1].Y-p.Points[0].Y)
	}
	for bottom, heads := range map[string]int{"back": 12, "side": 24, "seam": 24} {
		s := drawnSection(t, sample.ReadingRoom, map[string]any{"strap.fixing.bottom": bottom})
		laps := 0
		for _, item := range group(t, s, "straps") {
			if p, ok := item.(paper.Poly); ok {
				laps++
				assert.InDelta(t, 3, long(p), 0.003, bottom)
			}
		}
		assert.Equal(t, 8, laps, "two of each of the four straps")
		var ys []float64
		lines := 0
		for _, item := range group(t, s, "screws") {
			switch i := item.(type) {
			case paper.Arc:
				ys = append(ys, i.C.Y)
			case paper.Line: // 38mm in the wood
				lines++
				assert.InDelta(t, 1.9, math.Hypot(i.B.X-i.A.X, i.B.Y-i.A.Y), 0.003)
			}
		}
		assert.Len(t, ys, heads, bottom)
		assert.Equal(t, 24-heads, lines)
		slices.Sort(ys)
		framing := group(t, s, "framing")[0].(paper.Line).A.Y
		for i, down := range []float64{2.5, 1.5, 0.5} { // the three of four straps, from the top
			assert.InDelta(t, framing-down, ys[4*i], 0.003)
		}
	}
	said := texts(drawnSection(t, sample.ReadingRoom, nil).Items)
	assert.Contains(t, said, "each strap: length between fixings,")
	assert.Contains(t, said, "laps 60mm on rib and framing,")
	assert.Contains(t, said, "3 screws of 5mm, 38mm in the wood, at each end,")
	assert.Contains(t, said, "on the framing's side and the rib's back")
	assert.Contains(t, said, "framing")
	assert.Contains(t, said, "framing: 45mm of spruce,")
	assert.Contains(t, said, "400mm apart, runs across")
	assert.Contains(t, said, "moulding, covers 60mm")
	bare := strings.Join(texts(drawnSection(t, "map-gallery", map[string]any{"strap": map[string]any{}}).Items), "\n")
	assert.NotContains(t, bare, "each strap")
}

// Blocking lies over every strap of the demo, each of which misses the framing: the first
// seam's is at 1224mm, members are at 1000 and 1400. The section is at 44 + 1180/2 =
// 634mm, between members at 600 and 1000, so that it cuts none of it.
func TestTheSectionShowsBlocking(t *testing.T) {
	s := drawnSection(t, sample.ReadingRoom, nil)
	assert.Len(t, group(t, s, "blocking"), 4)
	assert.Contains(t, texts(s.Items), "misses the framing")
	// Members along it every 600mm from the left wall. The radius of the back is 3105mm and
	// the half angle 43.6°, so that the straps of 10% and 36% are 2120 − 3105 sin 34.9° =
	// 344mm and 2120 − 3105 sin 12.2° = 1464mm from that wall: none is at a member.
	along := drawnSection(t, sample.ReadingRoom, map[string]any{"room.framing.runs": "along", "room.framing.spacing": "600mm", "room.framing.offset": "0mm"})
	assert.Len(t, group(t, along, "blocking"), 4)
	none := drawnSection(t, sample.ReadingRoom, map[string]any{"room.framing.spacing": "50mm", "room.framing.member": "49mm", "strap.fixing.top": "underside"})
	assert.Empty(t, group(t, none, "blocking"))
}

// The mark of the rib's section names the sheet that has it, and where that sheet is.
func TestTheSectionNamesTheSheetOfTheRib(t *testing.T) {
	in := input(t)
	drawn, _, err := All(in, sheet.Options{})
	require.NoError(t, err)
	alone, err := Draw("section", in, sheet.Options{})
	require.NoError(t, err)
	for _, s := range drawn {
		if s.Name == section.RibName {
			assert.Contains(t, texts(drawn[0].Items), "sheet "+s.Number)
			assert.Contains(t, texts(alone.Items), "sheet "+s.Number)
			assert.Contains(t, texts(drawn[0].Items), "R")
		}
	}
	// Of more coffers than a plan shows the plan is not drawn, and the rib's number moves up.
	many := input(t, map[string]any{"grid.along": int64(1700), "panels.along": int64(1700), "vault.length": "708m", "room.length": "708064mm", "project.sheet": "B-1"})
	cross, err := Draw("section", many, sheet.Options{})
	require.NoError(t, err)
	rib, err := Draw(section.RibName, many, sheet.Options{})
	require.NoError(t, err)
	assert.Equal(t, "B-1.3", rib.Number)
	assert.Contains(t, texts(cross.Items), "sheet B-1.3")
	unnumbered, err := Draw("section", input(t, map[string]any{"project.sheet": ""}), sheet.Options{})
	require.NoError(t, err)
	assert.Contains(t, texts(unnumbered.Items), "section of a rib")
}

// A section says what of it is not in the spec, and no more.
func TestTheSectionSaysWhatIsOfUsualSize(t *testing.T) {
	notes := func(s paper.Sheet) string {
		var all strings.Builder
		for _, text := range textsOf(s.Items) {
			fmt.Fprint(&all, text.Text, " ")
		}
		for _, n := range s.Rest {
			fmt.Fprint(&all, strings.Join(n.Lines, " "))
		}
		return all.String()
	}
	demo := notes(drawnSection(t, sample.ReadingRoom, nil))
	for _, what := range []string{"the depth of the framing", "the depth of the ledgers", "of the moulding", "the spacing of the screws"} {
		assert.Contains(t, strings.Join(strings.Fields(demo), " "), what)
	}
	bare := notes(drawnSection(t, "lantern-hall", nil))
	assert.NotContains(t, bare, "usual size")
	assert.NotContains(t, bare, "moulding")
	assert.NotContains(t, draft.Overlaps(drawnSection(t, "lantern-hall", nil)), "R")
}
