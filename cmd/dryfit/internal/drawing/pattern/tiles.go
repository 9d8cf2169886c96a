package pattern

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Paper is a size of paper that is tiled, upright, in mm.
type Paper struct {
	Name          string
	Width, Height float64
}

// Papers are those that offices have.
var Papers = []Paper{{"A4", 210, 297}, {"A3", 297, 420}, {"Letter", 215.9, 279.4}}

// What lies around the part of the pattern on a tile, in mm: room for a bar to
// measure by on the left and below, for the tile's name above, and what printers
// leave white.
const (
	left, right   = 18.0, 8.0
	above, below  = 20.0, 18.0
	overlap       = 15.0
	cross         = 4.0 // half the length of a cross's arms
	leastKeySpace = 60.0
)

// mostTiles is how many tiles are made of one pattern. Nobody joins more: it is
// plotted or cut by machine instead.
const mostTiles = 1000

// tiling is a pattern cut into tiles of one size.
type tiling struct {
	Full
	page       paper.Point // width and height
	low        paper.Point // upper left corner of the first tile, on the sheet
	stepX      float64
	stepY      float64
	rows, cols int
	tiles      []tile // that have something
}

// tile is a part of the pattern, by its row and column.
type tile struct {
	row, col int
	items    []paper.Item
}

// Tiles are pages of a paper to be joined, upright or across, whichever takes fewer,
// after a page that shows where each belongs. Of a pattern that takes more than
// mostTiles there is that page alone, which says so.
func (f Full) Tiles(p Paper) []paper.Sheet {
	t := f.tiled(paper.Point{X: p.Height, Y: p.Width})
	if upright := f.tiled(paper.Point{X: p.Width, Y: p.Height}); len(upright.tiles) < len(t.tiles) {
		t = upright
	}
	out := []paper.Sheet{t.key()}
	if t.tooMany() {
		return out
	}
	for i, one := range t.tiles {
		out = append(out, t.sheet(i, one))
	}
	return out
}

func (f Full) tiled(page paper.Point) tiling {
	t := tiling{Full: f, page: page}
	t.stepX, t.stepY = page.X-left-right-overlap, page.Y-above-below-overlap
	low, high := paper.Box(f.body)
	t.cols, t.rows = count(high.X-low.X, t.stepX), count(high.Y-low.Y, t.stepY)
	// What is left over lies evenly around, in whole millimetres.
	t.low.X = math.Floor((low.X+high.X-float64(t.cols)*t.stepX-overlap)/2 + 1e-6)
	t.low.Y = math.Floor((low.Y+high.Y-float64(t.rows)*t.stepY-overlap)/2 + 1e-6)
	all := boxed(f.body)
	for row := range t.rows {
		t.fill(row, all)
	}
	return t
}

// fill adds the tiles of a row that have something, up to one more than are made.
func (t *tiling) fill(row int, all []boxedItem) {
	low, high := t.corner(row, 0)
	var here []boxedItem
	for _, i := range all {
		if i.high.Y >= low.Y-slack && i.low.Y <= high.Y+slack {
			here = append(here, i)
		}
	}
	for col := 0; col < t.cols && len(t.tiles) <= mostTiles; col++ {
		if items := t.part(row, col, here); items != nil {
			t.tiles = append(t.tiles, tile{row, col, items})
		}
	}
}

// boxedItem is an item with the box that it lies in, found once for all tiles.
type boxedItem struct {
	paper.Item
	low, high paper.Point
}

// slack is how far outside a tile a box may lie and its item still be asked, in mm.
const slack = 1.0

func boxed(body []paper.Item) (out []boxedItem) {
	for _, group := range body {
		for _, item := range group.(paper.Group).Items {
			low, high := paper.Box([]paper.Item{item})
			out = append(out, boxedItem{item, low, high})
		}
	}
	return out
}

func (t *tiling) tooMany() bool { return len(t.tiles) > mostTiles }

// count is how many tiles a length takes, with a millimetre to spare.
func count(length, step float64) int { return max(1, int(math.Ceil((length+2-overlap)/step))) }

// corner is where a tile begins on the sheet of the whole.
func (t tiling) corner(row, col int) (low, high paper.Point) {
	low = paper.Point{X: t.low.X + float64(col)*t.stepX, Y: t.low.Y + float64(row)*t.stepY}
	return low, paper.Point{X: low.X + t.stepX + overlap, Y: low.Y + t.stepY + overlap}
}

// part is what of a row's items lies on a tile, at its place on the page.
func (t *tiling) part(row, col int, items []boxedItem) (out []paper.Item) {
	low, high := t.corner(row, col)
	by := paper.Point{X: left - low.X, Y: above - low.Y}
	for _, i := range items {
		if i.high.X < low.X-slack || i.low.X > high.X+slack {
			continue
		}
		for _, kept := range within(i.Item, low, high) {
			out = append(out, moved(kept, by))
		}
	}
	return out
}

// within is the part of an item in a box. A text is whole, and there where it fits
// whole, or where it begins: tiles overlap, so that a short one fits on one of them.
func within(item paper.Item, low, high paper.Point) (out []paper.Item) {
	for _, p := range pathsOf(item) {
		for _, part := range p.Within(low, high) {
			out = append(out, part)
		}
	}
	if i, ok := item.(paper.Text); ok {
		l, h := i.Box()
		fits := h.X-l.X <= overlap && h.Y-l.Y <= overlap
		if fits && (l.X < low.X || l.Y < low.Y || h.X > high.X || h.Y > high.Y) ||
			i.At.X < low.X || i.At.X >= high.X || i.At.Y < low.Y || i.At.Y >= high.Y {
			return nil
		}
		out = append(out, i)
	}
	return out
}

// pathsOf is a line, a circle or a path as paths.
func pathsOf(item paper.Item) []paper.Path {
	switch i := item.(type) {
	case paper.Line:
		return []paper.Path{{From: i.A, Steps: []paper.Step{{To: i.B}}, Stroke: i.Stroke}}
	case paper.Arc:
		half := paper.Path{From: paper.Point{X: i.C.X + i.R, Y: i.C.Y}, Stroke: i.Stroke}
		half.Steps = []paper.Step{{To: paper.Point{X: i.C.X - i.R, Y: i.C.Y}, Bulge: 1}, {To: half.From, Bulge: 1}}
		return []paper.Path{half}
	case paper.Path:
		return []paper.Path{i}
	}
	return nil
}

func moved(item paper.Item, by paper.Point) paper.Item {
	to := func(p paper.Point) paper.Point { return paper.Point{X: p.X + by.X, Y: p.Y + by.Y} }
	switch i := item.(type) {
	case paper.Path:
		i.From = to(i.From)
		steps := make([]paper.Step, len(i.Steps))
		for k, s := range i.Steps {
			steps[k] = paper.Step{To: to(s.To), Bulge: s.Bulge}
		}
		i.Steps = steps
		return i
	case paper.Text:
		i.At = to(i.At)
		return i
	}
	return item
}

// sheet is the page of a tile: its part of the pattern, its name, a bar each way, the
// edge that the next tile is cut to, and crosses that neighbours share.
func (t tiling) sheet(i int, one tile) paper.Sheet {
	name := fmt.Sprintf("row %d of %d, column %d of %d", one.row+1, t.rows, one.col+1, t.cols)
	s := paper.Sheet{
		Name: fmt.Sprintf("%s-%d-%d", t.Name, one.row+1, one.col+1), Title: t.Name + ", " + name,
		About: t.About, Width: t.page.X, Height: t.page.Y, Items: one.items,
	}
	head := fmt.Sprintf("%s   %s   tile %d of %d", t.Name, name, i+1, len(t.tiles))
	width := t.page.X - left - right
	s.Items = append(s.Items, paper.Text{At: paper.Point{X: left, Y: 9}, Height: letter, Text: head})
	for k, line := range paper.Wrap(join(t.about.Warnings), width, small) {
		if k < 2 {
			s.Items = append(s.Items, paper.Text{At: paper.Point{X: left, Y: 13.5 + 4*float64(k)}, Height: small, Text: line, Marked: true})
		}
	}
	s.Items = append(s.Items, t.frame()...)
	bars, _ := checkBars(paper.Point{X: left - 8, Y: t.page.Y - 10}, t.about.Units)
	s.Items = append(s.Items, upward(bars))
	return s
}

func join(warnings []string) (out string) {
	for _, w := range warnings {
		out += w + " "
	}
	return out
}

// upward turns the upright bar so that both begin in the lower left corner of a page.
func upward(g paper.Group) paper.Group {
	corner := g.Items[0].(paper.Path).From
	up := func(p paper.Point) paper.Point {
		if p.Y > corner.Y+2 {
			p.Y = 2*corner.Y - p.Y
		}
		return p
	}
	for i, item := range g.Items {
		switch item := item.(type) {
		case paper.Path:
			item.Steps = []paper.Step{{To: up(item.Steps[0].To)}}
			g.Items[i] = item
		case paper.Line:
			item.A, item.B = up(item.A), up(item.B)
			g.Items[i] = item
		case paper.Text:
			item.At = up(item.At)
			g.Items[i] = item
		}
	}
	return g
}

// frame is what tiles are joined by: the tile's edge, and in the middle of each
// overlap's corner a cross.
func (t tiling) frame() (out []paper.Item) {
	hair := paper.Stroke{Pen: paper.Hair}
	w, h := t.stepX+overlap, t.stepY+overlap
	out = append(out, paper.Poly{Closed: true, Stroke: paper.Stroke{Pen: paper.Hair, Dash: paper.Hidden}, Points: []paper.Point{
		{X: left, Y: above}, {X: left + w, Y: above}, {X: left + w, Y: above + h}, {X: left, Y: above + h},
	}})
	for _, x := range []float64{left + overlap/2, left + overlap/2 + t.stepX} {
		for _, y := range []float64{above + overlap/2, above + overlap/2 + t.stepY} {
			out = append(out,
				paper.Path{From: paper.Point{X: x - cross, Y: y}, Steps: []paper.Step{{To: paper.Point{X: x + cross, Y: y}}}, Stroke: hair},
				paper.Path{From: paper.Point{X: x, Y: y - cross}, Steps: []paper.Step{{To: paper.Point{X: x, Y: y + cross}}}, Stroke: hair})
		}
	}
	return out
}
