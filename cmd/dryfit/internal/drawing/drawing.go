// Package drawing draws a ceiling on sheets, to scale: what is drawn is what was
// computed, and each sheet says what was assumed.
package drawing

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
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
	// numbered are the places of the sheets in the set, by name, from 1.
	numbered map[string]int
}

func (in Input) ceiling() *layout.Ceiling { return in.Assessment.Ceiling }

// format prints a quantity in the spec's units.
func (in Input) format(v quantity.Value) string { return in.ceiling().Units.Format(v) }

func (in Input) length(m float64) string { return in.format(quantity.Length(m).Value()) }

// dim is a length as a drawn dimension has it.
func (in Input) dim(m float64) string { return in.bare(in.length(m)) }

// bare leaves the unit of a printed length to the note on the sheet, by ISO 129-1
// (from memory); in inches each has its own.
func (in Input) bare(length string) string { return strings.TrimSuffix(length, "mm") }

// Options are how a sheet is made; the zero Options let the drawing choose.
type Options struct {
	Scale float64 // 20 is 1:20
	Paper string
	least int // of the sizes of a series, the one that a set takes at least
}

// NeedsError says which key a sheet can't be drawn without.
type NeedsError struct{ Sheet, Key string }

// Error names the sheet and the key.
func (e *NeedsError) Error() string { return "the " + e.Sheet + " sheet needs " + e.Key }

// LimitError says what of a ceiling is more than a sheet can show.
type LimitError struct{ Sheet, Why string }

// Error names the sheet.
func (e *LimitError) Error() string { return "the " + e.Sheet + " sheet " + e.Why }

// mostDrawn is how many coffers, or tenons of a panel, a sheet shows: past them
// it is black.
const mostDrawn = 10_000

// shows refuses a sheet that would show too many of something.
func shows(sheet string, n int, what string) error {
	if n > mostDrawn {
		return &LimitError{sheet, fmt.Sprintf("would show %d %s, and shows at most %d", n, what, mostDrawn)}
	}
	return nil
}

// FitError says that a drawing does not fit its paper at the scale asked for.
type FitError struct {
	Sheet, Scale, Paper string
	Fits                string // a scale, or a paper, that would do
}

// Error names the scale at which the sheet does fit.
func (e *FitError) Error() string {
	return fmt.Sprintf("the %s sheet does not fit %s at %s; %s does", e.Sheet, e.Paper, e.Scale, e.Fits)
}

// subject is a sheet before it has a paper and a scale.
type subject struct {
	name, title, about string
	kind               string  // of document, as a title block names it
	place              int     // among the sheets that can be drawn, from 1
	wide, high         float64 // of what is drawn to scale, in m
	// Around it lie dimensions and labels, and what is drawn to no scale; in mm.
	left, right, above, below float64
	leastWide, leastHigh      float64                     // of what is drawn to scale, where its texts need more
	tall                      func(scale float64) float64 // its height on paper at a scale, in mm, where high does not say it
	aspect                    float64                     // of a picture to no scale, its height by its width
	best                      float64                     // the scale that one would wish, if the paper allows
	shows                     []string
	notes                     []paper.Note
	less                      *subject // what is drawn instead where the paper has no room
	// draw draws into a board, the view's origin being the lower left corner
	// of what is drawn to scale.
	draw func(*draft.Board, draft.View) map[int]paper.Point
}

// Names lists the sheets, in their order.
func Names() []string {
	var out []string
	for _, s := range sheets {
		out = append(out, s.name)
	}
	return out
}

// sheets are all there are.
var sheets = []struct {
	name, kind string
	make       func(Input) (*subject, error)
}{
	{"section", arrangement, section},
	{"plan", arrangement, plan},
	{"panel", detail, panel},
	{ribName, detail, rib},
	{"straps", "schedule", straps},
	{"route", "study of the way in", route},
	{"view", "view", view},
	{raisingName, "order of work", raisingSheet},
}

// Kinds of documents that several sheets are.
const (
	arrangement = "general arrangement"
	detail      = "detail"
)

// Draw makes the sheet of a name. Its errors are a *NeedsError, a *LimitError, a
// *NoPlanError and a *FitError. Its number is the one that it has among all.
func Draw(name string, in Input, o Options) (paper.Sheet, error) {
	if !slices.Contains(Names(), name) {
		return paper.Sheet{}, fmt.Errorf("there is no sheet %q; there are %s", name, strings.Join(Names(), ", "))
	}
	in = in.placed(o, name)
	i := slices.Index(Names(), name)
	s, err := in.subject(i, max(1, in.numbered[name]))
	if err != nil {
		return paper.Sheet{}, err
	}
	return compose(in, o, s)
}

// subject makes one of the sheets, which has a place among those that can be drawn.
func (in Input) subject(i, place int) (*subject, error) {
	s, err := sheets[i].make(in)
	if err == nil {
		s.kind, s.place = sheets[i].kind, place
	}
	return s, err
}

// compose chooses the paper and the scale, draws, and lets the board place the
// rest.
func compose(in Input, o Options, s *subject) (paper.Sheet, error) {
	imperial := in.ceiling().Units == quantity.Imperial
	s = s.roomy(imperial, o)
	size, scale, err := s.fit(imperial, o)
	if err != nil {
		return paper.Sheet{}, err
	}
	board := draft.New(in.frame(s, size, scale))
	low, high := board.Area()
	v := draft.View{Scale: scale}
	spareX := high.X - low.X - s.left - s.right - s.across(scale)
	spareY := high.Y - low.Y - s.above - s.below - s.down(scale)
	v.Origin = paper.Point{X: low.X + s.left + spareX/2, Y: high.Y - s.below - spareY/2}
	places := s.draw(board, v)
	for _, n := range in.bites(s.shows) {
		if at, ok := places[n]; ok {
			board.Mark(n, at)
		}
	}
	out := board.Finish()
	out.Number = show.Shown(in.number(s))
	return out, nil
}

// across is how wide what is drawn to scale is on paper, in mm.
func (s *subject) across(scale float64) float64 { return max(s.wide*1000/scale, s.leastWide) }

// down is how high it is.
func (s *subject) down(scale float64) float64 {
	if s.tall != nil {
		return s.tall(scale)
	}
	return max(s.high*1000/scale, s.leastHigh)
}

// fits reports whether the subject fits a paper at a scale.
func (s *subject) fits(size draft.Size, scale float64) bool {
	w, h := size.Area()
	return s.left+s.right+s.across(scale) <= w && s.above+s.below+s.down(scale) <= h
}

// largest is the largest usual scale at which the subject fits a paper.
func (s *subject) largest(size draft.Size, imperial bool) (float64, bool) {
	for _, scale := range draft.UsualScales(imperial) {
		if scale >= s.best && s.fits(size, scale) {
			return scale, true
		}
	}
	return 0, false
}

// roomy is the subject, or what is drawn instead where the paper has no room.
func (s *subject) roomy(imperial bool, o Options) *subject {
	for s.less != nil {
		if _, _, err := s.fit(imperial, o); err == nil {
			break
		}
		s.less.kind, s.less.place = s.kind, s.place
		s = s.less
	}
	return s
}

// fit is the paper and the scale: what is asked for, else the least paper on
// which the subject has the scale that one would wish, else the largest paper
// and the scale that fits it.
func (s *subject) fit(imperial bool, o Options) (draft.Size, float64, error) {
	series := draft.Series(imperial)[o.least:]
	if o.Paper != "" {
		size, ok := draft.SizeNamed(o.Paper)
		if !ok {
			return size, 0, fmt.Errorf("there is no paper %q; there are A4 to A0 and ARCH-A to ARCH-E", o.Paper)
		}
		series = []draft.Size{size}
	}
	best := o.Scale
	if best == 0 {
		usual := draft.UsualScales(imperial)
		best = usual[slices.IndexFunc(usual, func(scale float64) bool { return scale >= s.best })]
	}
	for _, size := range series {
		if s.fits(size, best) {
			return size, best, nil
		}
	}
	last := series[len(series)-1]
	scale, ok := s.largest(last, imperial)
	switch {
	case !ok:
		return last, 0, &LimitError{s.name, "does not fit " + last.Name + " at any scale"}
	case o.Scale > 0:
		return last, 0, &FitError{s.name, draft.ScaleText(o.Scale, imperial), last.Name, draft.ScaleText(scale, imperial)}
	default:
		return last, scale, nil
	}
}

// bites lists the numbers of the findings at keys that begin like one of those
// that a sheet shows.
func (in Input) bites(shows []string) []int {
	var out []int
	for i, f := range in.Assessment.Findings {
		if slices.ContainsFunc(shows, func(key string) bool { return f.At == key || strings.HasPrefix(f.At, key+".") }) {
			out = append(out, i+1)
		}
	}
	return out
}

// at puts the findings at a key, or under it, to a place.
func (in Input) at(places map[int]paper.Point, p paper.Point, keys ...string) {
	for _, n := range in.bites(keys) {
		if _, had := places[n]; !had {
			places[n] = p
		}
	}
}

// atStation puts the findings at a station, and those that speak of it, to a place.
func (in Input) atStation(places map[int]paper.Point, p paper.Point, key string) {
	in.at(places, p, key)
	for i, f := range in.Assessment.Findings {
		if _, had := places[i+1]; !had && slices.Contains(f.Related, key) {
			places[i+1] = p
		}
	}
}

// findings is the note of those that the sheet shows.
func (in Input) findings(shows []string) []paper.Note {
	n := paper.Note{Title: "Found, by number"}
	for _, i := range in.bites(shows) {
		f := in.Assessment.Findings[i-1]
		text := fmt.Sprintf("%d %s %s: %s", i, f.Severity, f.Rule.ID, f.Text)
		if f.Accepted != nil {
			text += " (accepted)"
		}
		n.Lines = append(n.Lines, text)
	}
	return []paper.Note{n}
}

// reserves are what the verdict has to be read with: how much the standards loosen,
// and the families of what was not checked.
func (in Input) reserves() (out [][2]string) {
	if n := len(in.Assessment.Loosened); n > 0 {
		out = append(out, [2]string{"loosened", fmt.Sprintf("%d by the standards", n)})
	}
	if list := in.Assessment.Counts.Families.List(); list != "" {
		out = append(out, [2]string{"unchecked", list})
	}
	return out
}

// loosened is the note of what the standards loosen.
func (in Input) loosened() []paper.Note {
	n := paper.Note{Title: "Loosened by the standards"}
	for _, l := range in.Assessment.Loosened {
		n.Lines = append(n.Lines, fmt.Sprintf("%s is %s, built in is %s", l.Name, l.Used, l.BuiltIn))
	}
	return []paper.Note{n}
}

// unchecked is the note of the families of what was not checked.
func (in Input) unchecked() []paper.Note {
	n := paper.Note{Title: "Not checked"}
	if c := in.Assessment.Counts; c.NotChecked > 0 {
		n.Lines = []string{fmt.Sprintf("Rules of %s: %d in all.", c.Families.List(), c.NotChecked)}
	}
	return []paper.Note{n}
}

// assumed is the note of what the spec does not say.
func (in Input) assumed() []paper.Note {
	n := paper.Note{Title: "Assumed"}
	var line []string
	for _, a := range in.Assessment.Assumed {
		line = append(line, a.Key+" = "+show.Written(a.Value))
	}
	if len(line) == 0 {
		n.Lines = []string{"Nothing that a rule has read."}
	} else {
		n.Lines = line
	}
	return []paper.Note{n}
}
