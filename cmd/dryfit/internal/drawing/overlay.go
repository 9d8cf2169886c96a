package drawing

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/cmd/dryfit/internal/drawing/plan"
	"dryfit/cmd/dryfit/internal/drawing/section"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// The parts of a sheet that lays two ceilings over one another, in mm.
const (
	overlayWide = 270
	overlayHalf = 125 // the width of the section, and of the view
	overlayGap  = 10
	overlayHead = 26
	overlayLine = 4.2
	overlayText = 1.9
)

// The lines of what both ceilings have, of what the old one alone has, and of what
// the new one alone has: they differ in width and kind, and the last in colour.
var (
	kept   = paper.Stroke{Pen: paper.Hair}
	gone   = paper.Stroke{Pen: paper.Fine, Dash: paper.Hidden}
	arrive = paper.Stroke{Pen: paper.Bold, Marked: true}
)

// Overlay lays an old ceiling and a new one over one another, section and plan at one
// scale, with the view from the entry of each, and lines of text under them. The axes
// and the near ends of the vaults lie on each other.
func Overlay(title string, before, after *layout.Ceiling, lines []string) paper.Sheet {
	both := [2]*layout.Ceiling{before, after}
	wide, high, low, long, across := 0.0, 0.0, 0.0, 0.0, 0.0
	for _, c := range both {
		wide = max(wide, c.Room.Width.Get(), c.Vault.Width.Get())
		high, low = max(high, c.Vault.Crown.Get()), max(low, section.ShownFloor(c))
		long, across = max(long, c.BuiltLength()), max(across, c.Vault.Width.Get())
	}
	imperial := after.Units == quantity.Imperial
	scale := overlayScale(wide, long, imperial)
	v := draft.View{Scale: scale}
	top := max(v.Size(high+low), overlayHalf*picture.Aspect)
	planTop := overlayHead + top + 2*overlayGap
	under := planTop + v.Size(across) + overlayGap
	size := draft.Size{Name: "overlay", Width: overlayWide + 2*overlayGap, Height: under + overlayLine*float64(len(lines)) + overlayGap}
	printed := draft.ScaleText(scale, imperial)
	b := draft.Blank("overlay", title, "The old and the new ceiling, drawn over each other: section and plan at "+printed+", and the view from the entry.", size)
	b.Write(paper.Text{At: paper.Point{X: overlayGap, Y: 9}, Height: 3.5, Text: paper.Cut(title, overlayWide, 3.5)})
	legend(b, paper.Point{X: overlayGap, Y: 16})
	write := func(x, y float64, text string) {
		b.Write(paper.Text{At: paper.Point{X: x, Y: y}, Height: overlayText, Text: text})
	}
	mid := overlayGap + overlayHalf/2.0
	right := overlayWide + overlayGap - overlayHalf*1.0
	write(overlayGap, overlayHead-2, "section, "+printed)
	write(right, overlayHead-2, "view from the entry")
	write(overlayGap, planTop-2, "plan, "+printed+"; the near end is on the left")
	var drawn [3][2][]paper.Item
	for i, c := range both {
		drawn[0][i] = section.Lines(c, draft.View{Scale: scale, Origin: paper.Point{X: mid - v.Size(c.Vault.Span.Get())/2, Y: overlayHead + v.Size(high)}})
		drawn[1][i] = plan.Lines(c, draft.View{Scale: scale, Origin: paper.Point{X: overlayGap, Y: planTop + v.Size(across)/2 - v.Size(c.Vault.Span.Get())/2}})
		drawn[2][i] = viewLines(c, paper.Point{X: right, Y: overlayHead}, paper.Point{X: right + overlayHalf, Y: overlayHead + overlayHalf*picture.Aspect})
	}
	for _, d := range drawn {
		b.Items(laid(strokesOf(d[0]), strokesOf(d[1])))
	}
	for i, l := range lines {
		write(overlayGap, under+overlayLine*float64(i), paper.Cut(l, overlayWide, overlayText))
	}
	return b.Finish()
}

// legend says which line is whose.
func legend(b *draft.Board, at paper.Point) {
	for _, l := range []struct {
		stroke paper.Stroke
		text   string
	}{{kept, "in both"}, {gone, "only in the old one"}, {arrive, "only in the new one"}} {
		b.Line(paper.Point{X: at.X, Y: at.Y - overlayText/2}, paper.Point{X: at.X + 14, Y: at.Y - overlayText/2}, l.stroke)
		b.Write(paper.Text{At: paper.Point{X: at.X + 17, Y: at.Y}, Height: overlayText, Text: l.text})
		at.X += 62
	}
}

// overlayScale is the largest usual scale at which section and plan have room.
func overlayScale(wide, long float64, imperial bool) float64 {
	for _, scale := range draft.UsualScales(imperial) {
		if wide*1000/scale <= overlayHalf && long*1000/scale <= overlayWide {
			return scale
		}
	}
	return math.Ceil(max(wide*1000/overlayHalf, long*1000/overlayWide))
}

// viewLines are the edges of the members' undersides and of the walls, none of which
// hides another.
func viewLines(c *layout.Ceiling, low, high paper.Point) (out []paper.Item) {
	for _, i := range picture.View(c, low, high) {
		if p, ok := i.(paper.Poly); ok && p.Pen != paper.None {
			out = append(out, p)
		}
	}
	return out
}
