package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/sample"
)

// panelTexts are those of the panel sheet of a ceiling.
func panelTexts(t *testing.T, name string) []string {
	t.Helper()
	var out []string
	for _, text := range textsOf(drawnPanel(t, name, sheet.Options{}).Items) {
		out = append(out, text.Text)
	}
	return out
}

func drawnPanel(t *testing.T, name string, o sheet.Options) paper.Sheet {
	t.Helper()
	drawn, err := Draw("panel", ceiling(t, name, nil), o)
	require.NoError(t, err)
	return drawn
}

// Along the arc stand running dimensions from the left springing, beside the panel its
// true arc. By hand: of a span of 4200mm and a rise of 840mm the radius is
// (2100² + 840²)/1680 = 3045mm, half the angle atan(2100/2205) = 43.603 degrees and the
// arc 4634.6mm; its sixths are 772.4mm, a tenth 463.5mm, a quarter 1158.6mm. The form of
// ten strips has 3045·(1 − 1/100) = 3014.6mm.
func TestThePanelHasRunningDimensionsAndItsTrueArc(t *testing.T) {
	assert.Subset(t, panelTexts(t, sample.ReadingRoom), []string{
		"near end, tenons", "far end", "left springing", "right springing",
		"463.5 strap 1, K6", "772.4 rail B", "1159 lift 1", "2317 crown", "4635 arc", "75", "4560",
		"chord 4200", "rise 840", "R 3045", "form R 3015",
	})
}

// By hand, of a span of 2400mm and a rise of 450mm: R = (1200² + 450²)/900 = 1825mm, and
// with nine strips the form has 1825·(1 − 1/81) = 1802.5mm.
func TestASmallPanelHasItsTrueArc(t *testing.T) {
	assert.Subset(t, panelTexts(t, "porch"), []string{"chord 2400", "rise 450", "R 1825", "form R 1802"})
}

// A piece of a split arch ends on a seam, whose tenons are drawn. By hand: a chord of
// 4025mm and a rise of 168.3mm are of (2012.5² + 168.3²)/(2·168.3) = 12117mm.
func TestAPieceOfASplitArchEndsOnASeam(t *testing.T) {
	assert.Subset(t, panelTexts(t, "concourse"), []string{"seam to piece 2", "chord 4025", "rise 168.3", "R 12117"})
	assert.Subset(t, panelTexts(t, "orangery"), []string{"left springing", "crown seam"})
}

// Each piece of a split arch is drawn, with its own straps, rails and seams. By hand, of a
// half circle of 6000mm in three: a piece is π·3000/3 = 3141.6mm; 42% of the arch is
// 3958.4mm, so strap 3 is 816.8mm from the seam, and 92% is 8670.8mm, strap 6 2387.6mm from
// the second seam; the crown is in the middle of piece 2, on rail G, the seventh of
// thirteen; rail J, the tenth, is at 9/12 of the arch, 7068.6mm, and
// 785.4mm past the second seam.
func TestEachPieceOfASplitArchIsDrawn(t *testing.T) {
	got := panelTexts(t, "vaulted-passage")
	assert.Subset(t, got, []string{
		"piece 1 of 3", "piece 2 of 3", "piece 3 of 3", "left springing", "seam to piece 1", "seam to piece 2", "seam to piece 3", "right springing",
		"816.8 strap 3", "2388 strap 6", "1571 crown", "1571 rail G", "785.4 rail J", "3142 arc",
	})
	arcs := 0
	for _, text := range got {
		if strings.HasPrefix(text, "chord ") {
			arcs++
		}
	}
	assert.Equal(t, 1, arcs, "three alike")
	assert.NotContains(t, panelTexts(t, sample.ReadingRoom), "piece 1 of 1")
}

// A paper without room for all pieces has those that fit, and a note of the others.
func TestAPaperWithoutRoomForAllPiecesSaysSo(t *testing.T) {
	drawn := drawnPanel(t, "vaulted-passage", sheet.Options{Paper: "A3"})
	said := strings.Join(words(drawn.Items), "\n")
	assert.Contains(t, said, "piece 2 of 3")
	assert.NotContains(t, said, "piece 3 of 3")
	for _, n := range drawn.Rest {
		said += "\n" + strings.Join(n.Lines, "\n")
	}
	assert.Contains(t, said, "Piece 3.")
}

// One panel meets no other along the axis, so that it has no tenons there. Between full
// ends both its edge ribs are whole; of two panels of three coffers three and a half.
func TestRibsAtTheEndsOfTheVault(t *testing.T) {
	for along, want := range map[int][2]int{1: {7, 0}, 2: {3, 1}, 6: {0, 2}} {
		in := input(t, map[string]any{"panels.along": int64(along), "grid.ends": "full"})
		s, err := Draw("panel", in, sheet.Options{})
		require.NoError(t, err)
		whole, half := 0, 0
		scale, width := numbersIn(words(s.Items), metricScale)[0], in.Ceiling().Rib.Width.Get()*1000
		for _, item := range group(t, s, "ribs") {
			p, ok := item.(paper.Poly)
			if !ok || len(p.Points) != 4 {
				continue
			}
			switch wide := math.Abs(p.Points[1].X-p.Points[0].X) * scale / width; {
			case math.Abs(wide-1) < 1e-6:
				whole++
			case math.Abs(wide-0.5) < 1e-6:
				half++
			}
		}
		assert.Equal(t, want, [2]int{whole, half}, "%d panels", along)
		said := strings.Join(words(s.Items), "\n")
		assert.Equal(t, along > 1, strings.Contains(said, "near end, tenons"), "%d panels", along)
		assert.Equal(t, along > 1, strings.Contains(said, "tenons stand in the near seam"), "%d panels", along)
	}
}
