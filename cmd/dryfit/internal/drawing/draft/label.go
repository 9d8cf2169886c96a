package draft

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// Side is a direction on the sheet.
type Side uint8

// The sides.
const (
	Above Side = iota + 1
	Below
	Left
	Right
)

// Label is text for a place. It is put beside the place if there is room, else
// farther off with a leader, else into the notes.
type Label struct {
	Text   string // lines by \n
	Of     paper.Point
	Height float64 // of a capital; 0: the ordinary one
	Prefer []Side  // tried before the rest
	Inside bool    // its middle belongs at the place, if there is room
	Free   bool    // it is about the whole figure, and has no leader
	Bubble string  // is written in a circle before the text
	Marked bool
	onDim  bool // its leader ends on a dimension line, and has no arrow
}

// Ordinary is the height of a capital in dimensions and labels, in mm, and Large in
// headings. Both are of the series of ISO 3098-1 (from memory), the first the least
// that can be copied.
const (
	Ordinary = 2.5
	Large    = 3.5
)

// Label leaves a text to be placed.
func (b *Board) Label(l Label) { b.labels = append(b.labels, l) }

// inside is a text for an area.
type inside struct {
	text      string
	low, high paper.Point
}

// Within leaves a text to be placed near the upper left corner of an area, once all else
// is: where it has no room in it, it is left out.
func (b *Board) Within(text string, low, high paper.Point) {
	b.insides = append(b.insides, inside{text, low, high})
}

// within is the step, in mm, in which a place for a text is looked for in an area, and
// how far it is from the edges.
const within = 1

// fill places the texts of areas.
func (b *Board) fill() {
	for _, i := range b.insides {
		text := show.Shown(i.text)
		at := box{0, 0, paper.TextWidth(text, Ordinary), Ordinary + paper.Descent(Ordinary)}
		if x, y, ok := b.corner(at, i); ok {
			b.Write(paper.Text{At: paper.Point{X: x, Y: y + Ordinary}, Height: Ordinary, Text: text})
		}
	}
}

// corner is the first place in an area, row by row, at which a box meets nothing.
func (b *Board) corner(of box, in inside) (x, y float64, ok bool) {
	for y = in.low.Y + within; y+of.y1+within <= in.high.Y; y += within {
		for x = in.low.X + within; x+of.x1+within <= in.high.X; x += within {
			if b.room.free(box{x, y, x + of.x1, y + of.y1}.grown(clear)) {
				return x, y, true
			}
		}
	}
	return 0, 0, false
}

type mark struct {
	number int
	at     paper.Point
}

// Mark leaves the number of a finding to be placed where it bites.
func (b *Board) Mark(number int, at paper.Point) { b.marks = append(b.marks, mark{number, at}) }

// leading is the distance of base lines by the height of a capital.
const leading = 1.75

// ways are the directions that a label is tried in.
var ways = func() [][2]float64 {
	var out [][2]float64
	for _, turn := range []int{
		0, 16, 8, 24, 4, 28, 12, 20, 2, 30, 6, 26, 10, 22, 14, 18,
		1, 31, 3, 29, 5, 27, 7, 25, 9, 23, 11, 21, 13, 19, 15, 17,
	} {
		angle := float64(turn) * math.Pi / 16
		out = append(out, [2]float64{math.Cos(angle), -math.Sin(angle)})
	}
	return out
}()

// distances are those that are tried, in mm; past near, a leader is drawn.
var distances = []float64{1.2, 2.4, 5, 8, 11, 14, 17, 20, 24, 28, 33, 38, 44, 50, 57, 65, 75, 90, 110, 135, 165}

const near = 3

func directions(prefer []Side) [][2]float64 {
	var first [][2]float64
	for _, s := range prefer {
		first = append(first, map[Side][2]float64{Above: {0, -1}, Below: {0, 1}, Left: {-1, 0}, Right: {1, 0}}[s])
	}
	return slices.Concat(first, ways)
}

// place puts the labels and then the marks, which are small, where there is
// room.
func (b *Board) place() {
	for _, l := range b.labels {
		lines := strings.Split(l.Text, "\n")
		for i, line := range lines {
			lines[i] = show.Shown(line)
		}
		if !b.label(l, lines, 0) {
			b.unplaced(strings.Join(lines, " "))
		}
	}
	for _, m := range b.marks {
		l := Label{Of: m.at, Marked: true}
		b.placed[m.number] = m.at
		if !b.label(l, []string{strconv.Itoa(m.number)}, tag) {
			b.unplaced(fmt.Sprintf("the mark of finding %d", m.number))
		}
	}
	if len(b.insides) > 0 {
		b.In("insides", b.fill)
	}
}

// tag is the room that a mark's own outline takes around its number, in mm.
const tag = 1.1

// tagPoint is how far its two points reach, in mm.
const tagPoint = 1.1

// Leading is the distance of lines of text of a height.
func Leading(height float64) float64 { return leading * height }

// Letters name the lines of a grid: A to Z, then AA.
func Letters(n int) string {
	if n < 26 {
		return string(rune('A' + n))
	}
	return Letters(n/26-1) + Letters(n%26)
}
