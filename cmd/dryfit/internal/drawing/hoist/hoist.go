// Package hoist draws the frames of raising a panel: each in elevation and in plan, at
// one scale, with what is said of it beside it. It prints what the results have, and
// works out nothing but where that lies on paper.
package hoist

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/raising"
)

// Arrangement is the frames in rows, before they have a paper and a scale.
type Arrangement struct {
	c             *layout.Ceiling
	frames        []raising.Frame
	first         int // of the frames, its place among all
	columns, rows int
	wide          float64 // of the drawings of a frame, in m
	tall, long    float64 // of an elevation and of a plan, in m
	texts         [][]line
	textWide      float64   // of the frames' texts, in mm
	textHigh      []float64 // of the longest text of each row, in mm
}

// What a frame takes on paper beside its drawings, in mm.
const (
	textSheet     = 78  // its text, on a sheet
	textStacked   = 108 // and where frames are stacked, whose drawings are limited by their height
	besides       = 7   // between the text and the drawings
	apart         = 12  // between two columns
	overElevation = 7
	overPlan      = 10 // the numbers of the forks too
	names         = overElevation + overPlan
	rowGap        = 9
	nameWide      = 48 // of a drawing's name
)

// Of is the sheet of all frames.
func Of(c *layout.Ceiling, frames []raising.Frame) *Arrangement {
	s := measured(c, frames, 0, len(frames), textSheet)
	s.arrange()
	return s
}

// Stacked is that of the frames from first to before last, one under the other.
func Stacked(c *layout.Ceiling, frames []raising.Frame, first, last int) *Arrangement {
	s := measured(c, frames, first, last, textStacked)
	s.lay(1)
	return s
}

// measured has the sizes of frames and of their texts.
func measured(c *layout.Ceiling, all []raising.Frame, first, last int, textWide float64) *Arrangement {
	frames := all[first:last]
	s := &Arrangement{c: c, frames: frames, first: first, textWide: textWide, wide: c.Room.Width.Get(), tall: c.Room.Height.Get() + c.Vault.Crown.Get()}
	if above := c.Room.Above; above.Given() {
		s.tall += above.Get()
	}
	for i := range frames {
		f := &frames[i]
		low, high := extent(f.Elevation, f.Ghost)
		s.wide, s.tall = max(s.wide, high.Y-low.Y), max(s.tall, high.Z)
		from, to := s.window(f)
		s.long = max(s.long, to-from)
		low, high = extent(f.Plan, f.GhostPlan)
		s.wide = max(s.wide, high.Y-low.Y)
		t := lines(f, first+i+1, c, textWide)
		s.texts = append(s.texts, t)
	}
	return s
}

// lay puts the frames into rows of so many.
func (s *Arrangement) lay(columns int) {
	s.columns, s.rows = columns, (len(s.frames)+columns-1)/columns
	s.textHigh = make([]float64, s.rows)
	for i, t := range s.texts {
		s.textHigh[i/columns] = max(s.textHigh[i/columns], highOf(t))
	}
}

// arrange chooses how many frames are in a row, so that the sheet is about as wide as
// paper is.
func (s *Arrangement) arrange() {
	const scale, shape = 10, 1.2 // mm for a metre, at 1:100; the width of a drawing's room by its height
	best, columns := math.Inf(1), 1
	for n := 1; n <= min(len(s.frames), 6); n++ {
		s.lay(n)
		wide := float64(n) * (s.textWide + besides + apart + scale*s.wide)
		high := s.Below() + s.Down(1000/scale)
		if off := math.Abs(math.Log(wide / high / shape)); off < best {
			best, columns = off, n
		}
	}
	s.lay(columns)
}

// Wide and High are what the drawings take to scale, in m.
func (s *Arrangement) Wide() float64 { return float64(s.columns) * s.wide }

// High is their height.
func (s *Arrangement) High() float64 { return float64(s.rows) * (s.tall + s.long) }

// Beside and Below are what is added to them on paper, in mm.
func (s *Arrangement) Beside() float64 { return float64(s.columns)*(s.textWide+besides+apart) - apart }

// Below is what is added under them.
func (s *Arrangement) Below() float64 { return float64(s.rows) * (names + rowGap) }

// Down is the height on paper that the drawings take at a scale, or that the texts beside
// them need of it, in mm.
func (s *Arrangement) Down(scale float64) (sum float64) {
	for _, text := range s.textHigh {
		sum += s.down(scale, text)
	}
	return sum
}

// down is that of a row.
func (s *Arrangement) down(scale, text float64) float64 {
	return max((s.tall+s.long)*1000/scale, text-names)
}

// LeastWide is the width on paper that the names of the drawings take.
func (s *Arrangement) LeastWide() float64 { return float64(s.columns) * nameWide }

// Best is the scale that one would wish.
func (s *Arrangement) Best() float64 {
	switch size := s.tall + s.long; {
	case size < 2.5:
		return 20
	case size < 5:
		return 48 // also of a foot
	default:
		return 96
	}
}

// Draw draws the frames; the view's origin is the lower left corner of what is drawn.
// It tells where a lift and where one of the crew is drawn, by the spec's tables.
func (s *Arrangement) Draw(b *draft.Board, v draft.View) map[string]paper.Point {
	places := map[string]paper.Point{}
	across := s.textWide + besides + max(v.Size(s.wide), nameWide) + apart
	at := paper.Point{X: v.Origin.X, Y: v.Origin.Y - s.Down(v.Scale)}
	for i := range s.frames {
		at.X = v.Origin.X + across*float64(i%s.columns)
		b.Figure()
		b.In(id(s.first+i), func() { s.frame(b, v.Scale, i, at, places) })
		if i%s.columns == s.columns-1 {
			at.Y += s.down(v.Scale, s.textHigh[i/s.columns]) + names + rowGap
		}
	}
	return places
}

// frame draws one from its upper left corner.
func (s *Arrangement) frame(b *draft.Board, scale float64, i int, at paper.Point, places map[string]paper.Point) {
	write(b, at, s.texts[i])
	f, left := &s.frames[i], at.X+s.textWide+besides
	d := drawer{Arrangement: s, b: b, f: f, places: places}
	of := draft.View{Scale: scale}
	of.Origin = paper.Point{X: left, Y: at.Y + overElevation + of.Size(s.tall)}
	d.elevation(of)
	of.Origin = paper.Point{X: left, Y: of.Origin.Y + overPlan}
	d.plan(of)
}

// extent is the least box around regions.
func extent(lists ...[]curve.Region) (low, high curve.Point) {
	low, high = curve.Point{Y: math.Inf(1), Z: math.Inf(1)}, curve.Point{Y: math.Inf(-1), Z: math.Inf(-1)}
	for _, list := range lists {
		for _, r := range list {
			l, h := r.Bounds()
			low, high = curve.Point{Y: min(low.Y, l.Y), Z: min(low.Z, l.Z)}, curve.Point{Y: max(high.Y, h.Y), Z: max(high.Z, h.Z)}
		}
	}
	return low, high
}

// window is what a plan shows of the room along it: the panel, the people, and what is
// kept clear as far as the end walls.
func (s *Arrangement) window(f *raising.Frame) (from, to float64) {
	low, high := extent(f.Plan, f.GhostPlan)
	from, to = max(0, low.Z-f.Top), min(s.c.Room.Length.Get(), high.Z+f.Top)
	from, to = min(from, low.Z), max(to, high.Z)
	for _, p := range f.People.At {
		from, to = min(from, p.Z), max(to, p.Z)
	}
	return from, to
}
