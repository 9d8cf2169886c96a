package pattern

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// key is the first page: where each tile belongs, and all notes.
func (t tiling) key() paper.Sheet {
	s := paper.Sheet{
		Name: t.Name + "-key", Title: t.Name + ", key", About: t.About, Width: t.page.X, Height: t.page.Y,
	}
	y := 9.0
	line := func(text string, height float64, marked bool) {
		for _, l := range paper.Wrap(text, t.page.X-2*right, height) {
			s.Items = append(s.Items, paper.Text{At: paper.Point{X: right, Y: y}, Height: height, Text: l, Marked: marked})
			y += 1.7 * height
		}
	}
	line(t.heading(), letter, false)
	for _, w := range t.about.Warnings {
		line(w, letter, true)
	}
	if t.tooMany() {
		line(fmt.Sprintf("More than %d tiles of this paper would be needed, so none is made. Plot the SVG or cut from the DXF.", mostTiles), small, true)
	} else {
		line(fmt.Sprintf("Print at 100%%, not fitted to the page. Measure both bars of each tile. Tiles overlap by %.0fmm: align the crosses of adjacent tiles.", overlap), small, false)
	}
	for _, n := range t.notes {
		line(n, small, false)
	}
	t.plan(&s, y+2)
	return s
}

func (t tiling) heading() string {
	if t.tooMany() {
		return t.Name + "   not in tiles, not to scale"
	}
	return fmt.Sprintf("%s   key of %d tiles in %d rows and %d columns, not to scale", t.Name, len(t.tiles), t.rows, t.cols)
}

// plan draws the pattern and the tiles as large as the rest of the page takes.
func (t tiling) plan(s *paper.Sheet, top float64) {
	top = min(top, t.page.Y-leastKeySpace)
	wide, high := float64(t.cols)*t.stepX+overlap, float64(t.rows)*t.stepY+overlap
	k := math.Min((t.page.X-2*right)/wide, (t.page.Y-top-right)/high)
	at := func(p paper.Point) paper.Point {
		return paper.Point{X: right + k*(p.X-t.low.X), Y: top + k*(p.Y-t.low.Y)}
	}
	tiles := t.tiles
	if t.tooMany() {
		tiles = nil
	}
	for _, one := range tiles {
		low, high := t.corner(one.row, one.col)
		a, b := at(low), at(high)
		s.Items = append(s.Items, paper.Poly{Closed: true, Stroke: paper.Stroke{Pen: paper.Hair}, Points: []paper.Point{
			a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y},
		}})
		text := fmt.Sprintf("%d-%d", one.row+1, one.col+1)
		height := math.Min(small, (b.X-a.X)/paper.TextWidth(text, 1)/1.5)
		s.Items = append(s.Items, paper.Text{
			At: paper.Point{X: (a.X + b.X) / 2, Y: (a.Y+b.Y)/2 + height/2}, Height: height, Anchor: paper.Middle, Text: text,
		})
	}
	outline := t.body[0].(paper.Group).Items[0].(paper.Path)
	shown := paper.Path{From: at(outline.From), Closed: outline.Closed, Stroke: paper.Stroke{Pen: paper.Medium}}
	for _, step := range outline.Steps {
		shown.Steps = append(shown.Steps, paper.Step{To: at(step.To), Bulge: step.Bulge})
	}
	s.Items = append(s.Items, shown)
}
