package paper

import (
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Font is the typeface of drawings, as a TrueType file: Go Regular, by Bigelow
// & Holmes, under the licence of the Go project (BSD, three clauses), which
// lets it be embedded.
var Font = goregular.TTF

// unitsPerEm is fine enough that a width is right to a thousandth of a letter.
const unitsPerEm = 2048

// measured is the font with what most texts ask of it, once a sheet is drawn.
var measured = sync.OnceValue(func() *measures {
	face, err := sfnt.Parse(Font)
	if err != nil {
		panic(err) // the font is part of the program
	}
	m, err := face.Metrics(nil, fixed.I(unitsPerEm), font.HintingNone)
	if err != nil {
		panic(err)
	}
	out := &measures{face: face, capital: float64(m.CapHeight) / 64}
	for r := range out.latin {
		out.latin[r] = out.advance(rune(r))
	}
	return out
})

// measures are in units of the font.
type measures struct {
	face    *sfnt.Font
	capital float64        // height of a capital
	latin   [0x180]float64 // advances of the characters that most texts are of
}

func (m *measures) advance(r rune) float64 {
	var b sfnt.Buffer // not shared: texts are measured by several goroutines
	i, err := m.face.GlyphIndex(&b, r)
	if err != nil {
		return unitsPerEm
	}
	a, err := m.face.GlyphAdvance(&b, i, fixed.I(unitsPerEm), font.HintingNone)
	if err != nil {
		return unitsPerEm
	}
	return float64(a) / 64
}

// Em is the size of the font, in mm, at which a capital is as high as height.
func Em(height float64) float64 { return height * unitsPerEm / measured().capital }

// widthOf is the advance of a character, in units of the font.
func widthOf(r rune) float64 {
	m := measured()
	if int(r) < len(m.latin) {
		return m.latin[r]
	}
	return m.advance(r)
}

// TextWidth is the width of a line of text whose capitals are as high as height,
// in mm.
func TextWidth(text string, height float64) float64 {
	total := 0.0
	for _, r := range text {
		total += widthOf(r)
	}
	return total * height / measured().capital
}

// Descent is how far letters reach below the base line, in mm.
func Descent(height float64) float64 { return 0.3 * height }

// Box is the upright box of a text: its lower left and upper right corner on
// paper, low being the smaller coordinates.
func (t Text) Box() (low, high Point) {
	w, d := TextWidth(t.Text, t.Height), Descent(t.Height)
	from := map[Anchor]float64{Start: 0, Middle: -w / 2, End: -w}[t.Anchor]
	if math.Abs(t.Turn-90) < 1 {
		return Point{t.At.X - t.Height, t.At.Y - from - w}, Point{t.At.X + d, t.At.Y - from}
	}
	if t.Turn == 0 {
		return Point{t.At.X + from, t.At.Y - t.Height}, Point{t.At.X + from + w, t.At.Y + d}
	}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	turned := func(x, y float64) Step { return Step{To: Point{t.At.X + x*cos + y*sin, t.At.Y - x*sin + y*cos}} }
	return Path{
		From:  turned(from, d).To,
		Steps: []Step{turned(from+w, d), turned(from+w, -t.Height), turned(from, -t.Height)},
	}.Box()
}
