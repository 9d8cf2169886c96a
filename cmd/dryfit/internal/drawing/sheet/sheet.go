// Package sheet makes one sheet of a subject, which says what is drawn and what room it
// takes: it chooses the paper and the scale, and adds the title block, the notes and the
// marks of the findings.
package sheet

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// Input is what a drawing is made of.
type Input struct {
	Assessment *review.Assessment // of a spec that could be resolved
	Version    string
	On         string // the date that acceptances were judged on
	SHA256     string // of the spec's bytes, in hexadecimal
	// Places are those of the sheets in the set, by name, from 1; a set fills them in.
	Places map[string]int
}

// Ceiling is the one that is drawn.
func (in Input) Ceiling() *layout.Ceiling { return in.Assessment.Ceiling }

// Format prints a quantity in the spec's units.
func (in Input) Format(v quantity.Value) string { return in.Ceiling().Units.Format(v) }

// Length prints one, of m in metres, in the spec's units.
func (in Input) Length(m float64) string { return in.Format(quantity.Length(m).Value()) }

// Dim prints a length, in metres, as a drawn dimension has it.
func (in Input) Dim(m float64) string { return in.Bare(in.Length(m)) }

// Bare leaves the unit of a printed length to the note on the sheet, by ISO 129-1
// (from memory); in inches each has its own.
func (in Input) Bare(length string) string { return strings.TrimSuffix(length, "mm") }

// mostDrawn is how many coffers, or tenons of a panel, a sheet shows: past them
// it is black.
const mostDrawn = 10_000

// CheckCount refuses a sheet that would show too many of something, by a *LimitError.
func CheckCount(sheet string, n int, what string) error {
	if n > mostDrawn {
		return &LimitError{sheet, fmt.Sprintf("would show %d %s, and shows at most %d", n, what, mostDrawn)}
	}
	return nil
}

// Subject is a sheet before it has a paper and a scale.
type Subject struct {
	Name, Title, About string
	Kind               string  // of document, as a title block names it
	Place              int     // among the sheets that can be drawn, from 1
	Wide, High         float64 // of what is drawn to scale, in m
	// Around it lie dimensions and labels, and what is drawn to no scale; in mm.
	Left, Right, Above, Below float64
	LeastWide, LeastHigh      float64                     // of what is drawn to scale, where its texts need more
	Tall                      func(scale float64) float64 // its height on paper at a scale, in mm, where High does not say it
	Aspect                    float64                     // of a picture to no scale, its height by its width
	Best                      float64                     // the scale that one would wish, if the paper allows
	Shows                     []string
	Notes                     []paper.Note
	Less                      *Subject // what is drawn instead where the paper has no room
	// Draw draws into a board, the view's origin being the lower left corner
	// of what is drawn to scale, and says where each finding's mark belongs.
	Draw func(*draft.Board, draft.View) map[int]paper.Point
}
