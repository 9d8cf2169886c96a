package paper

import (
	"math"
	"strings"

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

var (
	face     = must(sfnt.Parse(Font))
	capUnits = capHeight()
	widths   = latinWidths()
)

func must(f *sfnt.Font, err error) *sfnt.Font {
	if err != nil {
		panic(err) // the font is part of the program
	}
	return f
}

func capHeight() float64 {
	m, err := face.Metrics(nil, fixed.I(unitsPerEm), font.HintingNone)
	if err != nil {
		panic(err)
	}
	return float64(m.CapHeight) / 64
}

// latinWidths are the advances of the characters that most texts are of.
func latinWidths() (w [0x180]float64) {
	for r := range w {
		w[r] = advance(rune(r))
	}
	return w
}

func advance(r rune) float64 {
	var b sfnt.Buffer // not shared: texts are measured by several goroutines
	i, err := face.GlyphIndex(&b, r)
	if err != nil {
		return unitsPerEm
	}
	a, err := face.GlyphAdvance(&b, i, fixed.I(unitsPerEm), font.HintingNone)
	if err != nil {
		return unitsPerEm
	}
	return float64(a) / 64
}

// Em is the size of the font, in mm, at which a capital is as high as height.
func Em(height float64) float64 { return height * unitsPerEm / capUnits }

// TextWidth is the width of a line of text whose capitals are as high as height,
// in mm.
func TextWidth(text string, height float64) float64 {
	total := 0.0
	for _, r := range text {
		if int(r) < len(widths) {
			total += widths[r]
		} else {
			total += advance(r)
		}
	}
	return total * height / capUnits
}

// Wrap breaks a text at its blanks into lines of a width at most; a word that is
// longer is cut.
func Wrap(text string, width, height float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for TextWidth(word, height) > width {
			runes := []rune(word)
			n := len(runes) - 1
			for n > 1 && TextWidth(string(runes[:n]), height) > width {
				n--
			}
			if n < 1 {
				break // not even one letter fits
			}
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines, word = append(lines, string(runes[:n])), string(runes[n:])
		}
		if with := strings.TrimSpace(line + " " + word); line == "" || TextWidth(with, height) <= width {
			line = with
			continue
		}
		lines, line = append(lines, line), word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// Cut shortens a text to a width, and marks that it was.
func Cut(text string, width, height float64) string {
	if TextWidth(text, height) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 1 && TextWidth(string(runes)+"…", height) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
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
	return Point{t.At.X + from, t.At.Y - t.Height}, Point{t.At.X + from + w, t.At.Y + d}
}
