package drawing

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/result/stock"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

var kindMark = regexp.MustCompile(`\bK\d+\b`)

// Of every ceiling each mark on the sheet of the panel, and on its figures of a page, is in
// the takeoff, and each kind of piece of the takeoff is there with its mark.
func TestMarksOfPiecesAreThoseOfTheTakeoff(t *testing.T) {
	at := 0
	for sheets[at].name != "panel" {
		at++
	}
	for _, name := range sample.Names(t) {
		assessment := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
		in := sheet.Input{Assessment: assessment, Version: "test", On: "2026-11-25"}
		takeoff := stock.Of(assessment.Ceiling, assessment.Results.Survey().Cuts())
		var listed, wood []string
		for _, l := range takeoff.Pieces {
			wood = append(wood, l.Mark)
		}
		listed = append(listed, wood...)
		for _, h := range takeoff.Hardware {
			if h.Mark != "" {
				listed = append(listed, h.Mark)
			}
		}
		s, err := Draw("panel", in, sheet.Options{})
		require.NoError(t, err, name)
		assertMarks(t, name, marksOn(s), listed, wood)
		figures, err := figuresOf(in, at, 1)
		require.NoError(t, err)
		var on []string
		for _, f := range figures {
			on = append(on, marksOn(f)...)
		}
		assertMarks(t, name+", figures", on, listed, wood)
	}
}

func assertMarks(t *testing.T, name string, on, listed, wood []string) {
	t.Helper()
	assert.NotEmpty(t, on, name)
	assert.Subset(t, listed, on, name)
	assert.Subset(t, on, wood, name)
}

// marksOn are the marks on a sheet, in its notes and in those it has no room for.
func marksOn(s paper.Sheet) []string {
	all := strings.Join(words(s.Items), "\n")
	for _, n := range s.Rest {
		all += "\n" + strings.Join(n.Lines, "\n")
	}
	return kindMark.FindAllString(all, -1)
}

// By the takeoff of the demo, which is counted by hand: K1 half ribs, K2 half rails, K3
// rails, K4 skins, K5 tenons, K6 the long straps and K7 the short ones.
func TestPiecesOfTheDemoHaveTheirMarks(t *testing.T) {
	assert.Subset(t, panelTexts(t, sample.ReadingRoom), []string{
		"K1 half rib", "K2 half rail", "K3 rail", "K4 skin", "K5 tenon", "463.5 strap 1, K6", "1668 strap 2, K7",
	})
}

// A strap over the seam of two pieces belongs to the second, as the shop bores it: there it
// is 0 from the seam, and the first has two of the five.
func TestAStrapOverASeamIsOnThePieceAfterIt(t *testing.T) {
	s, err := Draw("panel", input(t, map[string]any{
		"panels.around": int64(2), "strap.stations": []any{"10%", "36%", "50%", "64%", "90%"},
	}), sheet.Options{})
	require.NoError(t, err)
	said := strings.Join(words(s.Items), "\n")
	assert.Equal(t, 1, strings.Count(said, "strap 3"))
	assert.Contains(t, said, "\n0 strap 3")
	assert.Equal(t, 5, len(regexp.MustCompile(`\d strap \d`).FindAllString(said, -1)))
}
