package draft

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// cell is the side of a square of the sheet that obstacles are filed under, in
// mm.
const cell = 10

// room keeps what is drawn on a sheet, to find where there is room for a text.
type room struct {
	segments map[[2]int][]segment
	texts    map[[2]int][]box
}

func newRoom() *room {
	return &room{segments: map[[2]int][]segment{}, texts: map[[2]int][]box{}}
}

// cells calls visit for each cell that a box lies in.
func (b box) cells(visit func([2]int)) {
	index := func(v float64) int { return int(math.Floor(v / cell)) }
	for x := index(b.x0); x <= index(b.x1); x++ {
		for y := index(b.y0); y <= index(b.y1); y++ {
			visit([2]int{x, y})
		}
	}
}

// draw files a segment under the cells that it passes.
func (r *room) draw(s segment) {
	n := max(1, int(math.Hypot(s.b.X-s.a.X, s.b.Y-s.a.Y)/cell))
	at := func(i int) paper.Point {
		t := float64(i) / float64(n)
		return paper.Point{X: s.a.X + t*(s.b.X-s.a.X), Y: s.a.Y + t*(s.b.Y-s.a.Y)}
	}
	for i := range n { // a long line is filed piece by piece, not under all cells of its box
		piece := segment{at(i), at(i + 1)}
		nowhere.with(piece.a).with(piece.b).cells(func(c [2]int) { r.segments[c] = append(r.segments[c], piece) })
	}
}

func (r *room) write(b box) {
	b.cells(func(c [2]int) { r.texts[c] = append(r.texts[c], b) })
}

// free reports whether nothing drawn or written meets the box.
func (r *room) free(b box) bool {
	free := true
	b.cells(func(c [2]int) {
		for _, t := range r.texts[c] {
			free = free && !t.meets(b)
		}
		for _, s := range r.segments[c] {
			if !free {
				return
			}
			free = !s.crosses(b)
		}
	})
	return free
}

// open reports whether a line would pass no text.
func (r *room) open(s segment) bool {
	open := true
	nowhere.with(s.a).with(s.b).cells(func(c [2]int) {
		for _, t := range r.texts[c] {
			open = open && !s.crosses(t)
		}
	})
	return open
}
