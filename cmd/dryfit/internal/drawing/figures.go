package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/panel"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/plan"
	"dryfit/cmd/dryfit/internal/drawing/section"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
)

// The most that a figure takes of a printed page, upright and lying, in mm: what both
// A4 and Letter have within the margins of a submittal, less a caption.
var (
	Upright = draft.Size{Name: "an upright page", Width: 182, Height: 242}
	Lying   = draft.Size{Name: "a lying page", Width: 250, Height: 166}
)

// A figure is put on a lying page if it is so much larger there, and smaller than plenty
// on an upright one, which two small figures share.
const (
	lyingGain = 1.4
	plenty    = 2.5
)

// otherGain is it of sheets that gain more by a lying page, or by an upright one: the plan
// is crowded in its middle, and frames of raising are stacked.
var otherGain = map[string]float64{"plan": 1.1, raisingName: 4}

// inOrder are the sheets whose figures are read one after the other.
var inOrder = map[string]bool{"route": true, raisingName: true}

// Figures makes the drawings of all sheets that the spec has the keys for as a page of
// text shows them: composed for the page at any scale that fits, which a bar tells, the
// letters as high as on a sheet. A sheet may make several. Rest are the notes of each;
// findings and assumptions are left to the page. What can't be drawn is said.
func Figures(in sheet.Input) (drawn []paper.Sheet, undrawn []string, err error) {
	in = placed(in, sheet.Options{}, section.RibName)
	place := 1
	for i := range sheets {
		figures, err := figuresOf(in, i, place)
		switch {
		case cannot(err):
			undrawn = append(undrawn, err.Error())
		case err != nil:
			return nil, nil, err
		default:
			drawn, place = append(drawn, figures...), place+1
		}
	}
	return drawn, undrawn, nil
}

// figuresOf are those of one sheet, on the page that shows them larger.
func figuresOf(in sheet.Input, i, place int) ([]paper.Sheet, error) {
	upright, scaleUp, err := parts(in, i, place, Upright)
	if err != nil {
		return nil, err
	}
	lying, scaleLying, err := parts(in, i, place, Lying)
	if err != nil {
		return nil, err
	}
	parts, page := upright, Upright
	gain, other := otherGain[sheets[i].name]
	if !other {
		gain = lyingGain
	}
	if scaleUp > max(plenty, gain*scaleLying) {
		parts, page = lying, Lying
	}
	if math.IsInf(min(scaleUp, scaleLying), 1) {
		return nil, &sheet.LimitError{Sheet: sheets[i].name, Why: "does not fit on a page; dryfit draw makes it"}
	}
	marked := map[int]bool{}
	var out []paper.Sheet
	for n, s := range parts {
		if n > 0 {
			s.Name = fmt.Sprintf("%s-%d", s.Name, n+1)
		}
		drawn := sheet.Figure(in, s, page, marked)
		if n > 0 && inOrder[sheets[i].name] {
			drawn.After = out[n-1].Name
		}
		out = append(out, drawn)
	}
	return out, nil
}

// parts are the subjects of a sheet's figures, and the least of their scales: infinite
// where one does not fit, and for what has no scale by its height on the page.
func parts(in sheet.Input, i, place int, page draft.Size) (parts []*sheet.Subject, scale float64, err error) {
	if split := partsOf[sheets[i].name]; split != nil {
		parts, err = split(in, page)
	} else {
		var s *sheet.Subject
		s, err = sheets[i].make(in)
		parts = []*sheet.Subject{s}
	}
	if err != nil {
		return nil, 0, err
	}
	for _, s := range parts {
		s.Kind, s.Place = sheets[i].kind, place
		scale = max(scale, s.FillScale(page))
	}
	return parts, scale, nil
}

// partsOf are the figures of a sheet on a page, where it is more than one, or another one.
var partsOf = map[string]func(sheet.Input, draft.Size) ([]*sheet.Subject, error){
	"plan": plan.Parts, "panel": panel.Parts, "straps": strapsParts, "route": routeParts, raisingName: raisingParts,
}
