package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// Shown is one ceiling of a contact sheet, with what is written under it.
type Shown struct {
	Ceiling *layout.Ceiling
	Title   string
	Lines   []string
}

// The parts of a contact sheet, in mm.
const (
	cellWide   = 92
	picture    = 80 // the width that the largest plan and every view take at most
	cellGap    = 5
	titleSize  = 2.6
	lineSize   = 1.9
	columnsMax = 4
)

// Pictured reports whether a ceiling has few enough coffers for a small picture.
func Pictured(c *layout.Ceiling) bool { return c.Grid.Around.Get()*c.Grid.Along.Get() <= mostDrawn/10 }

// Contact is a sheet to lay before a client: each ceiling as plan, section and
// view from the entry, plans and sections all at one scale.
func Contact(title string, list []Shown) paper.Sheet {
	long, wide, rise := 0.0, 0.0, 0.0
	lines := 0
	for _, s := range list {
		long = max(long, s.Ceiling.BuiltLength())
		wide = max(wide, s.Ceiling.Vault.Width.Get())
		rise = max(rise, s.Ceiling.Vault.Crown.Get())
		lines = max(lines, len(s.Lines))
	}
	imperial := len(list) > 0 && list[0].Ceiling.Units == quantity.Imperial
	scale := contactScale(max(long, wide), imperial)
	v := draft.View{Scale: scale}
	planHigh, sectionHigh, viewHigh := v.Size(wide), v.Size(rise), picture*aspect
	textHigh := 6 + 3.4*float64(lines)
	cellHigh := planHigh + sectionHigh + viewHigh + textHigh + 5*cellGap
	columns := max(1, min(columnsMax, len(list)))
	rows := (len(list) + columns - 1) / columns
	size := draft.Size{Name: "contact", Width: cellWide*float64(columns) + 2*cellGap, Height: 16 + cellHigh*float64(rows) + cellGap}
	b := draft.Blank("contact", title, "Each option as plan, section and view from the entry, plans and sections at "+ScaleText(scale, imperial)+".", size)
	b.Write(paper.Text{At: paper.Point{X: 2 * cellGap, Y: 10}, Height: 3.2, Text: title + ", plans and sections " + ScaleText(scale, imperial)})
	for i, s := range list {
		x, y := cellGap+cellWide*float64(i%columns), 16+cellHigh*float64(i/columns)
		left := x + (cellWide-picture)/2
		own := draft.View{Scale: scale, Origin: paper.Point{X: left, Y: y + planHigh}}
		small := &planOf{Input: Input{}, c: s.Ceiling, b: b, near: s.Ceiling.NearGap()}
		small.v = draft.View{Scale: scale, Origin: own.At(0, s.Ceiling.Vault.Span.Get())}
		small.v.Origin.Y = y + cellGap + (planHigh-v.Size(s.Ceiling.Vault.Span.Get()))/2
		small.members()
		small.seams()
		y += planHigh + 2*cellGap
		across := &sectionOf{c: s.Ceiling, b: b, framing: math.NaN()}
		across.v = draft.View{Scale: scale, Origin: paper.Point{X: left + (v.Size(long)-v.Size(s.Ceiling.Vault.Span.Get()))/2, Y: y + sectionHigh}}
		if v.Size(long) < v.Size(wide) {
			across.v.Origin.X = left
		}
		across.vault()
		b.Line(across.v.At(0, 0), across.v.At(s.Ceiling.Vault.Span.Get(), 0), centre)
		y += sectionHigh + cellGap
		b.Items(View(s.Ceiling, paper.Point{X: left, Y: y}, paper.Point{X: left + picture, Y: y + viewHigh}))
		y += viewHigh + cellGap
		b.Write(paper.Text{At: paper.Point{X: left, Y: y}, Height: titleSize, Text: s.Title})
		for k, line := range s.Lines {
			b.Write(paper.Text{At: paper.Point{X: left, Y: y + 4.4 + 3.4*float64(k)}, Height: lineSize, Text: paper.Cut(line, picture, lineSize)})
		}
	}
	return b.Finish()
}

// contactScale is the largest usual scale at which a length is no wider than a
// picture.
func contactScale(m float64, imperial bool) float64 {
	usual := usualScales(imperial)
	for _, scale := range usual {
		if m*1000/scale <= picture {
			return scale
		}
	}
	return math.Ceil(m * 1000 / picture)
}
