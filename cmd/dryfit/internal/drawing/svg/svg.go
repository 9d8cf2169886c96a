// Package svg writes a sheet as a file of Scalable Vector Graphics, in which a
// user unit is a millimetre of the paper.
package svg

import (
	"fmt"
	"html"
	"io"
	"math"
	"strconv"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Style is the style sheet of the classes that items have, within an element
// of the class "sheet": ink on paper, and the other way about in the dark.
var Style = style()

// The colours of ink, paper and marks, in the light and in the dark.
var (
	light = [3]rgb{{0x1a, 0x19, 0x17}, {0xff, 0xff, 0xff}, {0xa3, 0x27, 0x1d}}
	dark  = [3]rgb{{0xe9, 0xe5, 0xdc}, {0x1b, 0x1a, 0x18}, {0xf0, 0x8c, 0x80}}
)

type rgb [3]float64

// String is the colour as SVG writes it, "#rrggbb".
func (c rgb) String() string { return fmt.Sprintf("#%02x%02x%02x", int(c[0]), int(c[1]), int(c[2])) }

// mixed is a share of ink on paper.
func mixed(ink, on rgb, share float64) rgb {
	var out rgb
	for i := range out {
		out[i] = math.Round(ink[i]*share + on[i]*(1-share))
	}
	return out
}

func style() string {
	var b strings.Builder
	scheme := func(c [3]rgb) {
		fmt.Fprintf(&b, ".sheet{color:%v;background:%v}.sheet text{fill:%v}.sheet .m{stroke:%v}.sheet text.m{fill:%v;stroke:none}", c[0], c[1], c[0], c[2], c[2])
		for t := paper.Paper; t <= paper.Ink; t++ {
			fmt.Fprintf(&b, ".sheet .t%d{fill:%[2]v}.sheet .f.t%[1]d{stroke:%[2]v;stroke-width:.1}", t, mixed(c[0], c[1], t.Share()))
		}
	}
	b.WriteString(".sheet{fill:none;stroke:none;stroke-linecap:round;stroke-linejoin:round}")
	for p := paper.Hair; p <= paper.Heavy; p++ {
		fmt.Fprintf(&b, ".sheet .p%d{stroke:currentColor;stroke-width:%s}", p, number(p.Width()))
	}
	for d := paper.Hidden; d <= paper.Beyond; d++ {
		var lengths []string
		for _, l := range d.Lengths() {
			lengths = append(lengths, number(l))
		}
		fmt.Fprintf(&b, ".sheet .d%d{stroke-dasharray:%s;stroke-linecap:butt}", d, strings.Join(lengths, " "))
	}
	b.WriteString(`.sheet text{font-family:Go,"Helvetica Neue",Arial,sans-serif;stroke:none}`)
	scheme(light)
	b.WriteString("@media screen and (prefers-color-scheme:dark){")
	scheme(dark)
	b.WriteString("}")
	return b.String()
}

// Write writes the sheet as a file of its own.
func Write(w io.Writer, s paper.Sheet) error {
	_, err := fmt.Fprintf(w, `<svg xmlns="http://www.w3.org/2000/svg" width="%[1]smm" height="%[2]smm" viewBox="0 0 %[1]s %[2]s" class="sheet" role="img" aria-labelledby="t d">
<title id="t">%[3]s</title>
<desc id="d">%[4]s</desc>
<style>%[5]s</style>
%[6]s</svg>
`, number(s.Width), number(s.Height), html.EscapeString(s.Title), html.EscapeString(s.About), Style, Body(s.Items))
	return err
}

// Body is items as elements, for a root of the class "sheet" in which a unit is
// a millimetre.
func Body(items []paper.Item) string {
	var b strings.Builder
	write(&b, items)
	return b.String()
}

func write(b *strings.Builder, items []paper.Item) {
	for _, item := range items {
		switch i := item.(type) {
		case paper.Line:
			fmt.Fprintf(b, "<path d=\"M%sL%s\"%s/>\n", point(i.A), point(i.B), class(paper.Clear, i.Stroke, false))
		case paper.Arc:
			fmt.Fprintf(b, "<path d=\"%s\"%s/>\n", arc(i), class(paper.Clear, i.Stroke, false))
		case paper.Poly:
			fmt.Fprintf(b, "<path d=\"%s\"%s/>\n", poly(i), class(i.Tone, i.Stroke, i.Flush))
		case paper.Hatching:
			fmt.Fprintf(b, "<path d=\"%s\"%s/>\n", hatching(i), class(paper.Clear, i.Stroke, false))
		case paper.Path:
			path(b, i)
		case paper.Text:
			text(b, i)
		case paper.Group:
			fmt.Fprintf(b, "<g data-part=\"%s\">\n", html.EscapeString(i.ID))
			write(b, i.Items)
			b.WriteString("</g>\n")
		}
	}
}

func class(t paper.Tone, s paper.Stroke, flush bool) string {
	var names []string
	if flush {
		names = append(names, "f")
	}
	if t != paper.Clear {
		names = append(names, fmt.Sprintf("t%d", t))
	}
	if s.Pen != paper.None {
		names = append(names, fmt.Sprintf("p%d", s.Pen))
		if s.Dash != paper.Solid {
			names = append(names, fmt.Sprintf("d%d", s.Dash))
		}
		if s.Marked {
			names = append(names, "m")
		}
	}
	if names == nil {
		return ""
	}
	return ` class="` + strings.Join(names, " ") + `"`
}

// arc is a path of one arc command, or two of a whole circle.
func arc(a paper.Arc) string {
	at := func(angle float64) paper.Point {
		return paper.Point{X: a.C.X + a.R*math.Cos(angle), Y: a.C.Y + a.R*math.Sin(angle)}
	}
	to := func(angle float64, large int) string {
		return fmt.Sprintf("A%s %s 0 %d 1 %s", number(a.R), number(a.R), large, point(at(angle)))
	}
	sweep := a.To - a.From
	out := "M" + point(at(a.From))
	if sweep > 1.9*math.Pi {
		return out + to(a.From+sweep/2, 0) + to(a.To, 0)
	}
	large := 0
	if sweep > math.Pi*(1+1e-9) { // of a half circle either will do, and always the same
		large = 1
	}
	return out + to(a.To, large)
}

// path is one element: a line where it is one, and an arc command for each arc.
func path(b *strings.Builder, p paper.Path) {
	id := ""
	if p.ID != "" {
		id = ` id="` + html.EscapeString(p.ID) + `"`
	}
	if len(p.Steps) == 1 && p.Pieces()[0].Straight() {
		to := p.Steps[0].To
		fmt.Fprintf(b, `<line%s x1="%s" y1="%s" x2="%s" y2="%s"%s/>`+"\n",
			id, exact(p.From.X), exact(p.From.Y), exact(to.X), exact(to.Y), class(paper.Clear, p.Stroke, false))
		return
	}
	fmt.Fprintf(b, `<path%s d="M%s %s`, id, exact(p.From.X), exact(p.From.Y))
	for _, s := range p.Pieces() {
		step(b, s)
	}
	if p.Closed {
		b.WriteString("Z")
	}
	fmt.Fprintf(b, "\"%s/>\n", class(paper.Clear, p.Stroke, false))
}

// step is one line or arc of a path.
func step(b *strings.Builder, s paper.Piece) {
	if s.Straight() {
		fmt.Fprintf(b, "L%s %s", exact(s.To.X), exact(s.To.Y))
		return
	}
	_, r := s.Circle()
	large, clockwise := 0, 0
	if math.Abs(s.Bulge) > 1 {
		large = 1
	}
	if s.Bulge < 0 {
		clockwise = 1
	}
	fmt.Fprintf(b, "A%[1]s %[1]s 0 %d %d %s %s", exact(r), large, clockwise, exact(s.To.X), exact(s.To.Y))
}

func poly(p paper.Poly) string {
	var b strings.Builder
	for i, q := range p.Points {
		if i == 0 {
			b.WriteString("M")
		} else {
			b.WriteString("L")
		}
		b.WriteString(point(q))
	}
	if p.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

// hatching is one path of many lines.
func hatching(h paper.Hatching) string {
	var b strings.Builder
	for _, l := range h.Lines {
		b.WriteString("M" + point(l[0]) + "L" + point(l[1]))
	}
	return b.String()
}

// text is as wide as it was reckoned, whatever font the reader has.
func text(b *strings.Builder, t paper.Text) {
	if t.Text == "" {
		return
	}
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"`,
		number(t.At.X), number(t.At.Y), number(paper.Em(t.Height)), number(paper.TextWidth(t.Text, t.Height)))
	if t.Anchor != paper.Start {
		fmt.Fprintf(b, ` text-anchor="%s"`, map[paper.Anchor]string{paper.Middle: "middle", paper.End: "end"}[t.Anchor])
	}
	if t.Turn != 0 {
		fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, number(-t.Turn), number(t.At.X), number(t.At.Y))
	}
	if t.Marked {
		b.WriteString(` class="m"`)
	}
	fmt.Fprintf(b, ">%s</text>\n", html.EscapeString(t.Text))
}

func point(p paper.Point) string { return number(p.X) + " " + number(p.Y) }

// number has at most three places.
func number(x float64) string {
	return strconv.FormatFloat(paper.OnGrid(x), 'f', -1, 64)
}

// exact has six places: a nanometre.
func exact(x float64) string { return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64) }
