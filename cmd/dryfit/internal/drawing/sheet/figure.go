package sheet

import (
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// barStrip is what the scale bar takes under a figure, in mm.
const barStrip = 9

// FillScale is the scale at which a subject fills a page. One without a scale is the larger
// the wider the page is.
func (s *Subject) FillScale(page draft.Size) float64 {
	if s.Wide == 0 {
		return 1000 / page.Width
	}
	wide, high := page.Width-s.Left-s.Right, page.Height-barStrip-s.Above-s.Below
	if wide <= 0 || high <= 0 || s.LeastWide > wide || s.LeastHigh > high {
		return math.Inf(1)
	}
	scale := max(1, s.Wide*1000/wide)
	if s.Tall == nil {
		return max(scale, s.High*1000/high)
	}
	for s.Tall(scale) > high {
		if scale *= 1.01; scale > smallestScale {
			return math.Inf(1)
		}
	}
	return scale
}

// smallestScale is what no figure is drawn at.
const smallestScale = 10_000

// smaller are what a figure is drawn at, by the scale at which it fills its page, until
// all that is said of it has room.
var smaller = []float64{1, 1.1, 1.2, 1.35, 1.5}

// Figure composes one on a page, at the largest of these scales at which the least is
// without room; marked are the findings that the sheet's figures before it have.
func Figure(in Input, s *Subject, page draft.Size, marked map[int]bool) (best paper.Sheet) {
	strip, scale := float64(barStrip), s.FillScale(page)
	if s.Wide == 0 {
		strip, page.Height = 0, min(page.Height, math.Ceil(page.Width*s.Aspect+UnderView))
	} else {
		page.Height = min(page.Height, math.Ceil(s.Above+s.Below+s.down(scale)+strip))
	}
	least := math.MaxInt
	for _, by := range smaller {
		drawn := in.plain(s, page, strip, by*scale, marked)
		if n := lines(drawn.Rest); n < least {
			least, best = n, drawn
		}
		if least == 0 || s.Wide == 0 {
			break
		}
	}
	for n := range best.Marks {
		marked[n] = true
	}
	best.Rest = slices.Concat(s.Notes, best.Rest)
	return best
}

func lines(notes []paper.Note) (n int) {
	for _, note := range notes {
		n += len(note.Lines)
	}
	return n
}

// plain draws a figure at a scale, with what has no room as its rest.
func (in Input) plain(s *Subject, page draft.Size, strip, scale float64, marked map[int]bool) paper.Sheet {
	bar := draft.Bar{}
	if s.Wide > 0 {
		bar = in.bar(barRoom, scale)
		if unit := in.unit(); unit != "" {
			bar.Stands += "; " + unit
		}
	}
	board := draft.Plain(s.Name, s.Title, s.About, page, bar, strip)
	low, high := board.Area()
	v := draft.View{Scale: scale, Origin: paper.Point{
		X: low.X + s.Left + (high.X-low.X-s.Left-s.Right-s.across(scale))/2,
		Y: high.Y - s.Below - (high.Y-low.Y-s.Above-s.Below-s.down(scale))/2,
	}}
	places := s.Draw(board, v)
	for _, n := range in.bites(s.Shows) {
		if at, ok := places[n]; ok && !marked[n] {
			board.Mark(n, at)
		}
	}
	out := board.Finish()
	out.Number = show.Shown(in.number(s.Place))
	return out
}

// barRoom is how long a figure's scale bar may be, in mm.
const barRoom = 50

// UnderView is what the words under the view take, in mm.
const UnderView = 16
