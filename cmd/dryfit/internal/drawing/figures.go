package drawing

import (
	"fmt"
	"math"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
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
func Figures(in Input) (drawn []paper.Sheet, undrawn []string, err error) {
	in = in.placed(Options{}, ribName)
	place := 1
	for i := range sheets {
		figures, err := in.figuresOf(i, place)
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
func (in Input) figuresOf(i, place int) ([]paper.Sheet, error) {
	upright, scaleUp, err := in.parts(i, place, Upright)
	if err != nil {
		return nil, err
	}
	lying, scaleLying, err := in.parts(i, place, Lying)
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
		return nil, &LimitError{sheets[i].name, "does not fit a page; dryfit draw makes it"}
	}
	marked := map[int]bool{}
	var out []paper.Sheet
	for n, s := range parts {
		if n > 0 {
			s.name = fmt.Sprintf("%s-%d", s.name, n+1)
		}
		drawn := in.figure(s, page, marked)
		if n > 0 && inOrder[sheets[i].name] {
			drawn.After = out[n-1].Name
		}
		out = append(out, drawn)
	}
	return out, nil
}

// parts are the subjects of a sheet's figures, and the least of their scales: infinite
// where one does not fit, and for what has no scale by its height on the page.
func (in Input) parts(i, place int, page draft.Size) (parts []*subject, scale float64, err error) {
	if split := partsOf[sheets[i].name]; split != nil {
		parts, err = split(in, page)
	} else {
		var s *subject
		s, err = sheets[i].make(in)
		parts = []*subject{s}
	}
	if err != nil {
		return nil, 0, err
	}
	for _, s := range parts {
		s.kind, s.place = sheets[i].kind, place
		scale = max(scale, s.free(page))
	}
	return parts, scale, nil
}

// barStrip is what the scale bar takes under a figure, in mm.
const barStrip = 9

// free is the scale at which a subject fills a page. One without a scale is the larger
// the wider the page is.
func (s *subject) free(page draft.Size) float64 {
	if s.wide == 0 {
		return 1000 / page.Width
	}
	wide, high := page.Width-s.left-s.right, page.Height-barStrip-s.above-s.below
	if wide <= 0 || high <= 0 || s.leastWide > wide || s.leastHigh > high {
		return math.Inf(1)
	}
	scale := max(1, s.wide*1000/wide)
	if s.tall == nil {
		return max(scale, s.high*1000/high)
	}
	for s.tall(scale) > high {
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

// figure composes one on a page, at the largest of these scales at which the least is
// without room; marked are the findings that the sheet's figures before it have.
func (in Input) figure(s *subject, page draft.Size, marked map[int]bool) (best paper.Sheet) {
	strip, scale := float64(barStrip), s.free(page)
	if s.wide == 0 {
		strip, page.Height = 0, min(page.Height, math.Ceil(page.Width*s.aspect+underView))
	} else {
		page.Height = min(page.Height, math.Ceil(s.above+s.below+s.down(scale)+strip))
	}
	least := math.MaxInt
	for _, by := range smaller {
		drawn := in.plain(s, page, strip, by*scale, marked)
		if n := lines(drawn.Rest); n < least {
			least, best = n, drawn
		}
		if least == 0 || s.wide == 0 {
			break
		}
	}
	for n := range best.Marks {
		marked[n] = true
	}
	best.Rest = slices.Concat(s.notes, best.Rest)
	return best
}

func lines(notes []paper.Note) (n int) {
	for _, note := range notes {
		n += len(note.Lines)
	}
	return n
}

// plain draws a figure at a scale, with what has no room as its rest.
func (in Input) plain(s *subject, page draft.Size, strip, scale float64, marked map[int]bool) paper.Sheet {
	bar := draft.Bar{}
	if s.wide > 0 {
		bar = in.bar(barRoom, scale)
		if unit := in.unit(); unit != "" {
			bar.Stands += "; " + unit
		}
	}
	board := draft.Plain(s.name, s.title, s.about, page, bar, strip)
	low, high := board.Area()
	v := draft.View{Scale: scale, Origin: paper.Point{
		X: low.X + s.left + (high.X-low.X-s.left-s.right-s.across(scale))/2,
		Y: high.Y - s.below - (high.Y-low.Y-s.above-s.below-s.down(scale))/2,
	}}
	places := s.draw(board, v)
	for _, n := range in.bites(s.shows) {
		if at, ok := places[n]; ok && !marked[n] {
			board.Mark(n, at)
		}
	}
	out := board.Finish()
	out.Number = show.Shown(in.number(s))
	return out
}

// barRoom is how long a figure's scale bar may be, in mm.
const barRoom = 50
