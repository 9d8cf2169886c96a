package comparing

import (
	"errors"
	"io"

	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report/change"
)

// undrawn is why two ceilings are not drawn.
const undrawn = "a ceiling of so many coffers is not drawn over another"

// overlay draws the two ceilings over one another; false where one has too many
// coffers for it.
func overlay(c change.Comparison, lines []string) (paper.Sheet, bool) {
	if !picture.Pictured(c.Old.Ceiling) || !picture.Pictured(c.New.Ceiling) {
		return paper.Sheet{}, false
	}
	return drawing.Overlay(c.Title(), c.Old.Ceiling, c.New.Ceiling, lines), true
}

// compareSVG writes the picture as a file of its own, with what changed under it.
func compareSVG(w io.Writer, c change.Comparison) error {
	sheet, ok := overlay(c, c.Lines())
	if !ok {
		return errors.New(undrawn)
	}
	return svg.Write(w, sheet)
}

// comparePage writes the page, with the picture.
func comparePage(w io.Writer, c change.Comparison) error {
	sheet, ok := overlay(c, nil)
	if !ok {
		return change.CompareHTML(w, c, sheet, "Not drawn: "+undrawn+".")
	}
	return change.CompareHTML(w, c, sheet, "")
}
