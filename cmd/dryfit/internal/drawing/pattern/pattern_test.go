package pattern

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

// The arch that is drawn: part of a ring about a centre below it, between two angles
// from its left, m and rad.
const (
	inner, outer = 2.0, 2.14
	half         = 0.9
)

// polar is a place of the ring: its radius, and the angle to the right of the top.
func polar(r, angle float64) shop.PatternPoint {
	sin, cos := math.Sincos(angle)
	return shop.PatternPoint{r*sin + inner*math.Sin(half), r*cos - inner*math.Cos(half)}
}

// arch is a pattern of whose figures all are known.
func arch() shop.Pattern {
	bulge := math.Tan(half / 2)
	a, b, c, d := polar(inner, -half), polar(inner, half), polar(outer, half), polar(outer, -half)
	p := shop.Pattern{
		Name: "rib-1", Title: "Edge rib",
		Outline: shop.Outline{{From: a, To: b, Bulge: -bulge}, {From: b, To: c}, {From: c, To: d, Bulge: bulge}, {From: d, To: a}},
		Notes:   []string{"Mortises are marked as wide as the tenon."},
	}
	in := shop.Run{Name: "rails on the intrados", Length: 2 * half * inner}
	for i := range 12 {
		angle := -half + 2*half*float64(i)/12
		p.Marks = append(p.Marks,
			shop.Mark{Layer: shop.Rail, Line: shop.Outline{{From: polar(inner, angle), To: polar(inner+0.1, angle)}}},
			shop.Mark{Layer: shop.Bore, Circle: &shop.Circle{Centre: polar(outer-0.03, angle), Radius: 0.003}},
			shop.Mark{Layer: shop.Text, Label: &shop.Label{At: polar(inner+0.05, angle), Text: fmt.Sprintf("rail %d", i)}})
		in.Stations = append(in.Stations, shop.Stop{Name: fmt.Sprintf("rail %d", i), At: inner * (angle + half), On: polar(inner, angle)})
	}
	p.Marks = append(p.Marks, shop.Mark{Layer: shop.Reveal, Line: shop.Outline{{From: polar(inner+0.01, -half), To: polar(inner+0.01, half), Bulge: -bulge}}})
	out := shop.Run{Name: "straps on the back", Length: 2 * half * outer}
	for i, angle := range []float64{-0.6, -0.599, 0.6} {
		out.Stations = append(out.Stations, shop.Stop{Name: fmt.Sprintf("strap %d", i+1), At: outer * (angle + half), On: polar(outer, angle)})
	}
	p.Runs = []shop.Run{in, out}
	return p
}

func about(units quantity.System) About {
	return About{Units: units, Title: "Reading room, revision B", Warnings: []string{"NOT FOR CUTTING", "The hanging is not released while it is referred."}}
}

var pdfDocument = pdf.Document{Title: "rib-1", Creator: "dryfit test", Date: time.Unix(0, 0), Plain: true}

// Every running dimension is printed, outside the pattern, and meets no other.
func TestDimensions(t *testing.T) {
	f := Of(arch(), about(quantity.Imperial))
	var texts []paper.Text
	for _, group := range f.body {
		if g := group.(paper.Group); g.ID == "DIM" {
			for _, item := range g.Items {
				if text, ok := item.(paper.Text); ok {
					texts = append(texts, text)
				}
			}
		}
	}
	require.Len(t, texts, 15)
	printed := ""
	for i, a := range texts {
		printed += a.Text + "\n"
		q := paper.Point{X: a.At.X - f.Origin.X - 1000*inner*math.Sin(half), Y: f.Origin.Y - a.At.Y + 1000*inner*math.Cos(half)}
		if r := math.Hypot(q.X, q.Y); r > 1000*inner && r < 1000*outer {
			t.Errorf("%q begins within the pattern", a.Text)
		}
		for _, b := range texts[:i] {
			if math.Hypot(a.At.X-b.At.X, a.At.Y-b.At.Y) < lines*small {
				t.Errorf("%q lies on %q", a.Text, b.Text)
			}
		}
	}
	assert.Contains(t, printed, "rail 1  11 13/16\"\n") // 300mm
}

// The notes and warnings stand on the sheet, and on the key; each tile has the
// warnings.
func TestWhatIsSaid(t *testing.T) {
	f := Of(arch(), about(quantity.Metric))
	said := func(s paper.Sheet) (out string) {
		for item := range paper.Ungrouped(s.Items) {
			if text, ok := item.(paper.Text); ok {
				out += text.Text + " "
			}
		}
		return out
	}
	pages := f.Tiles(Papers[0])
	for _, s := range []paper.Sheet{f.Sheet, pages[0]} {
		assert.Contains(t, said(s), "NOT FOR CUTTING")
		assert.Contains(t, said(s), "The hanging is not released while it is referred.")
		assert.Contains(t, said(s), "Reading room, revision B")
		assert.Contains(t, said(s), "Mortises are marked as wide as the tenon.")
		assert.Contains(t, said(s), "the full length is 3600.0mm.")
	}
	for _, s := range pages[1:] {
		assert.Contains(t, said(s), "NOT FOR CUTTING The hanging is not released while it is referred.")
	}
}

// Every line of a pattern is drawn with a pen, whatever layer it is on: an arrow for the
// grain that is not seen is worse than none.
func TestEveryLineHasAPen(t *testing.T) {
	for _, pen := range pens {
		p := shop.Pattern{Name: "segment-1-1", Outline: arch().Outline, Marks: []shop.Mark{
			{Layer: pen.layer, Line: shop.Outline{{From: polar(inner, 0), To: polar(outer, 0)}}},
		}}
		full := &Full{}
		for _, item := range full.draw(p) {
			for _, in := range item.(paper.Group).Items {
				if path, ok := in.(paper.Path); ok {
					assert.NotEqual(t, paper.None, path.Pen, "%s", pen.layer)
				}
			}
		}
	}
}
