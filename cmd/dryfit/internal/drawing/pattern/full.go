// Package pattern lays the patterns of a shop out at full size: on one sheet of any
// length, and in tiles of paper that are joined.
package pattern

import (
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

// About is what every sheet of a package says.
type About struct {
	Units    quantity.System
	Title    string   // of the project, with its revision
	Warnings []string // first of all, and on each tile
	Lines    []string
}

// Full is a pattern at full size.
type Full struct {
	paper.Sheet
	Origin paper.Point // of the pattern, on the sheet
	body   []paper.Item
	notes  []string
	about  About
}

const (
	edge   = 15.0  // between what is drawn and the sheet's edge, mm
	narrow = 220.0 // the least width of a sheet, which its notes take
	letter = 3.5   // height of the capitals of notes and labels
	small  = 2.5   // of dimensions
)

// CheckBar is how long the bar is by which a print is measured, in mm.
func CheckBar(s quantity.System) (length float64, text string) {
	if s == quantity.Imperial {
		return 4 * 1000 * quantity.Inch, `4"`
	}
	return 100, "100mm"
}

// Of lays a pattern out.
func Of(p shop.Pattern, about About) Full {
	f := Full{about: about, notes: notes(p, about)}
	low, _ := paper.Box(f.draw(p))
	f.Origin = paper.Point{X: edge + up(-low.X), Y: edge + up(-low.Y)}
	f.body = f.draw(p)
	_, high := paper.Box(f.body)
	f.Sheet = paper.Sheet{
		Name: p.Name, Title: p.Title, About: "At full size. " + about.Title,
		Width: math.Max(narrow, up(high.X)+edge),
	}
	f.foot(up(high.Y) + edge)
	return f
}

// up is a length to the next whole millimetre, but for round-off, which differs
// between processors.
func up(mm float64) float64 { return math.Ceil(mm - 1e-6) }

// pens are those of the layers, in the order in which these are drawn.
var pens = []struct {
	layer  shop.Layer
	stroke paper.Stroke
}{
	{shop.Rail, paper.Stroke{Pen: paper.Fine}},
	{shop.RibFace, paper.Stroke{Pen: paper.Fine, Dash: paper.Hidden}},
	{shop.Strap, paper.Stroke{Pen: paper.Fine, Dash: paper.Centre}},
	{shop.Mortise, paper.Stroke{Pen: paper.Fine}},
	{shop.Reveal, paper.Stroke{Pen: paper.Fine, Dash: paper.Hidden}},
	{shop.Joint, paper.Stroke{Pen: paper.Medium}},
	{shop.FormOf, paper.Stroke{Pen: paper.Medium}},
	{shop.Clamp, paper.Stroke{Pen: paper.Hair, Dash: paper.Centre}},
	{shop.Fitting, paper.Stroke{Pen: paper.Medium}},
	{shop.Bore, paper.Stroke{Pen: paper.Medium}},
}

// draw is the pattern with its marks and dimensions, a group a layer.
func (f *Full) draw(p shop.Pattern) []paper.Item {
	out := []paper.Item{paper.Group{ID: string(shop.Cut), Items: []paper.Item{
		f.path(p.Outline, paper.Stroke{Pen: paper.Bold}),
	}}}
	for _, pen := range pens {
		var items []paper.Item
		for _, m := range p.Marks {
			if m.Layer == pen.layer {
				items = f.mark(items, m, pen.stroke)
			}
		}
		if items != nil {
			out = append(out, paper.Group{ID: string(pen.layer), Items: items})
		}
	}
	dims := paper.Group{ID: "DIM", Items: f.dims(p)}
	if labels := f.labels(p, append(out, dims)); labels != nil {
		out = append(out, paper.Group{ID: string(shop.Text), Items: labels})
	}
	if dims.Items != nil {
		out = append(out, dims)
	}
	return out
}

func (f *Full) at(p shop.PatternPoint) paper.Point {
	return paper.Point{X: f.Origin.X + 1000*p[0], Y: f.Origin.Y - 1000*p[1]}
}

func (f *Full) mark(out []paper.Item, m shop.Mark, s paper.Stroke) []paper.Item {
	switch {
	case m.Circle != nil:
		c, r := f.at(m.Circle.Centre), 1000*m.Circle.Radius
		const beyond = 1.5
		out = append(out, paper.Arc{C: c, R: r, To: 2 * math.Pi, Stroke: s},
			paper.Line{A: paper.Point{X: c.X - r - beyond, Y: c.Y}, B: paper.Point{X: c.X + r + beyond, Y: c.Y}, Stroke: paper.Stroke{Pen: paper.Hair}},
			paper.Line{A: paper.Point{X: c.X, Y: c.Y - r - beyond}, B: paper.Point{X: c.X, Y: c.Y + r + beyond}, Stroke: paper.Stroke{Pen: paper.Hair}})
	case len(m.Line) > 0:
		out = append(out, f.path(m.Line, s))
	}
	return out
}

// path is a chain of lines and arcs, closed where it ends where it begins.
func (f *Full) path(o shop.Outline, s paper.Stroke) paper.Path {
	p := paper.Path{From: f.at(o[0].From), Stroke: s}
	for _, g := range o {
		p.Steps = append(p.Steps, paper.Step{To: f.at(g.To), Bulge: g.Bulge})
	}
	last := &p.Steps[len(p.Steps)-1].To
	if len(o) > 1 && math.Hypot(last.X-p.From.X, last.Y-p.From.Y) < 1e-6 {
		p.Closed, *last = true, p.From
	}
	return p
}

// foot puts the bar to measure by and the notes under the pattern.
func (f *Full) foot(top float64) {
	bar, length := checkBars(paper.Point{X: edge, Y: top + letter}, f.about.Units)
	f.Items = append(f.body, bar)
	x, y := edge+length+2*letter, top
	if f.about.Warnings != nil {
		y += letter
	}
	var lines []paper.Item
	for i, note := range append(append([]string{}, f.about.Warnings...), f.notes...) {
		for _, line := range paper.Wrap(note, math.Min(f.Width-edge-x, 400), letter) {
			y += 1.7 * letter
			lines = append(lines, paper.Text{At: paper.Point{X: x, Y: y}, Height: letter, Text: line, Marked: i < len(f.about.Warnings)})
		}
	}
	f.Items = append(f.Items, paper.Group{ID: string(shop.Text), Items: lines})
	f.Height = math.Ceil(math.Max(y, top+length)) + 2*edge
}

// checkBars are one across and one up, from a corner above which the first lies.
func checkBars(at paper.Point, s quantity.System) (paper.Group, float64) {
	length, text := CheckBar(s)
	stroke := paper.Stroke{Pen: paper.Medium}
	across := paper.Path{ID: "check", From: at, Steps: []paper.Step{{To: paper.Point{X: at.X + length, Y: at.Y}}}, Stroke: stroke}
	down := paper.Path{ID: "check-upright", From: at, Steps: []paper.Step{{To: paper.Point{X: at.X, Y: at.Y + length}}}, Stroke: stroke}
	const tick = 1.5
	return paper.Group{ID: "CHECK", Items: []paper.Item{
		across, down,
		paper.Line{A: paper.Point{X: at.X + length, Y: at.Y - tick}, B: paper.Point{X: at.X + length, Y: at.Y + tick}, Stroke: stroke},
		paper.Line{A: paper.Point{X: at.X - tick, Y: at.Y + length}, B: paper.Point{X: at.X + tick, Y: at.Y + length}, Stroke: stroke},
		paper.Text{At: paper.Point{X: at.X + length/2, Y: at.Y - tick}, Height: small, Anchor: paper.Middle, Text: text + " across"},
		paper.Text{At: paper.Point{X: at.X - tick, Y: at.Y + length/2}, Height: small, Turn: 90, Anchor: paper.Middle, Text: text + " upright"},
	}}, length
}

// notes are what a reader of one pattern must know.
func notes(p shop.Pattern, about About) []string {
	out := []string{p.Name + ": " + p.Title + ". " + about.Title + ". Full size; measure both bars before cutting."}
	return append(append(append(out, wholes(p, about.Units)...), p.Notes...), about.Lines...)
}

// wholes say of which length each edge is that dimensions run along, once for each
// length.
func wholes(p shop.Pattern, units quantity.System) (out []string) {
	var lengths []string
	runs := map[string][]string{}
	for _, r := range p.Runs {
		whole, _ := units.Running(r.Length)
		if runs[whole[0]] == nil {
			lengths = append(lengths, whole[0])
		}
		runs[whole[0]] = append(runs[whole[0]], r.Name)
	}
	for _, l := range lengths {
		out = append(out, "Running dimensions of "+strings.Join(runs[l], ", ")+" are from the left end as cut; the full length is "+l+".")
	}
	return out
}
