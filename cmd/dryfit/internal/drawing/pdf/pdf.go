// Package pdf writes sheets as one file of the Portable Document Format, a page
// a sheet, at their exact size.
package pdf

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Document is what a file says of itself.
type Document struct {
	Title   string
	Creator string    // program and version
	Date    time.Time // of the drawings; no clock is read
	// Plain leaves the pages' operators uncompressed, to be read by people.
	Plain bool
}

const (
	pointsPerMM = 72 / 25.4
	family      = "go"
)

// ink of marks, and of all else.
var (
	markInk  = [3]int{0xa3, 0x27, 0x1d}
	plainInk = [3]int{0x1a, 0x19, 0x17}
)

// Write writes the sheets. The font is embedded, the part of it that is used.
func Write(w io.Writer, d Document, sheets []paper.Sheet) error {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 420, Ht: 297}})
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetCatalogSort(true)
	f.SetCompression(!d.Plain)
	f.SetCreationDate(d.Date)
	f.SetModificationDate(d.Date)
	f.SetTitle(d.Title, true)
	f.SetCreator(d.Creator, true)
	f.SetProducer(d.Creator+"; set in Go Regular by Bigelow & Holmes, under the BSD licence of the Go project", true)
	f.SetLang("en")
	f.AddUTF8FontFromBytes(family, "", paper.Font)
	for _, s := range sheets {
		// The size is of the page as it is seen, which for this library is
		// upright.
		f.AddPageFormat("P", fpdf.SizeType{Wd: s.Width, Ht: s.Height})
		f.SetLineCapStyle("round")
		f.SetLineJoinStyle("round")
		f.Bookmark(s.Title, 0, 0)
		page{f}.items(s.Items)
	}
	return f.Output(w)
}

type page struct{ *fpdf.Fpdf }

func (p page) items(items []paper.Item) {
	for _, item := range items {
		switch i := item.(type) {
		case paper.Line:
			p.stroke(i.Stroke)
			p.Line(i.A.X, i.A.Y, i.B.X, i.B.Y)
		case paper.Arc:
			p.stroke(i.Stroke)
			// Its angles are in degrees and anticlockwise.
			p.Arc(i.C.X, i.C.Y, i.R, i.R, 0, -i.To*180/math.Pi, -i.From*180/math.Pi, "D")
		case paper.Poly:
			p.poly(i)
		case paper.Hatching:
			p.stroke(i.Stroke)
			for _, l := range i.Lines {
				p.Line(l[0].X, l[0].Y, l[1].X, l[1].Y)
			}
		case paper.Path:
			p.path(i)
		case paper.Text:
			p.text(i)
		case paper.Group:
			p.items(i.Items)
		}
	}
}

func (p page) stroke(s paper.Stroke) {
	p.SetLineWidth(s.Pen.Width())
	p.SetDashPattern(s.Dash.Lengths(), 0)
	ink := plainInk
	if s.Marked {
		ink = markInk
	}
	p.SetDrawColor(ink[0], ink[1], ink[2])
}

func (p page) poly(i paper.Poly) {
	if len(i.Points) == 0 {
		return
	}
	how := ""
	if i.Tone != paper.Clear {
		share := i.Tone.Share()
		mix := func(ink int) int { return int(math.Round(float64(ink)*share + 255*(1-share))) }
		p.SetFillColor(mix(plainInk[0]), mix(plainInk[1]), mix(plainInk[2]))
		how = "F"
		if i.Flush {
			p.SetDrawColor(mix(plainInk[0]), mix(plainInk[1]), mix(plainInk[2]))
			p.SetLineWidth(0.1)
			p.SetDashPattern(nil, 0)
			how = "FD"
		}
	}
	if i.Pen != paper.None {
		p.stroke(i.Stroke)
		how = strings.TrimSuffix(how, "D") + "D"
	}
	if how == "" {
		return
	}
	p.MoveTo(i.Points[0].X, i.Points[0].Y)
	for _, q := range i.Points[1:] {
		p.LineTo(q.X, q.Y)
	}
	if i.Closed {
		p.ClosePath()
	}
	p.DrawPath(how)
}

// widest is the angle of an arc, in rad, that one curve stands for: it leaves the
// arc by less than a ten-millionth of its radius.
const widest = math.Pi / 8

// path writes its own operators: the library's have two places of a point, which is
// four thousandths of a millimetre.
func (p page) path(i paper.Path) {
	p.stroke(i.Stroke)
	_, high := p.GetPageSize()
	at := func(q paper.Point) string {
		return fmt.Sprintf("%s %s", exact(q.X*pointsPerMM), exact((high-q.Y)*pointsPerMM))
	}
	var b strings.Builder
	b.WriteString(at(i.From) + " m")
	for _, s := range i.Pieces() {
		if s.Straight() {
			b.WriteString(" " + at(s.To) + " l")
			continue
		}
		n := math.Ceil(math.Abs(s.Turn()) / widest)
		for k := range int(n) {
			part := s.Part(float64(k)/n, float64(k+1)/n)
			one, two := handles(part)
			b.WriteString(" " + at(one) + " " + at(two) + " " + at(part.To) + " c")
		}
	}
	if i.Closed {
		b.WriteString(" h")
	}
	p.RawWriteStr(b.String() + " S")
}

// handles are the points that a curve in place of an arc is drawn by: along the
// arc's tangents, four thirds of the tangent of a quarter of its angle times the
// radius.
func handles(s paper.Piece) (one, two paper.Point) {
	c, _ := s.Circle()
	k := 4.0 / 3 * math.Tan(s.Turn()/4)
	return paper.Point{X: s.From.X + k*(s.From.Y-c.Y), Y: s.From.Y - k*(s.From.X-c.X)},
		paper.Point{X: s.To.X - k*(s.To.Y-c.Y), Y: s.To.Y + k*(s.To.X-c.X)}
}

func exact(x float64) string { return strconv.FormatFloat(x, 'f', 6, 64) }

func (p page) text(t paper.Text) {
	if strings.TrimSpace(t.Text) == "" {
		return
	}
	ink := plainInk
	if t.Marked {
		ink = markInk
	}
	p.SetTextColor(ink[0], ink[1], ink[2])
	p.SetFont(family, "", paper.Em(t.Height)*pointsPerMM)
	x := t.At.X
	switch t.Anchor {
	case paper.Middle:
		x -= paper.TextWidth(t.Text, t.Height) / 2
	case paper.End:
		x -= paper.TextWidth(t.Text, t.Height)
	}
	if t.Turn == 0 {
		p.Text(x, t.At.Y, t.Text)
		return
	}
	p.TransformBegin()
	p.TransformRotate(math.Round(t.Turn*1e6)/1e6, t.At.X, t.At.Y) // round-off at 90° would print a zero with a sign
	p.Text(x, t.At.Y, t.Text)
	p.TransformEnd()
}
