package pattern

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/dxf"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/spec/quantity"
)

// exactly is how true the scale of a file is.
const exactly = 1e-6

func floats(t *testing.T, text string) (out []float64) {
	t.Helper()
	for _, word := range regexp.MustCompile(`-?[0-9.]+(e-?[0-9]+)?`).FindAllString(text, -1) {
		x, err := strconv.ParseFloat(word, 64)
		require.NoError(t, err)
		out = append(out, x)
	}
	return out
}

// chord is between the ends of the arch's inner edge, mm.
var chord = 2000 * inner * math.Sin(half)

func TestSVGIsTrueToScale(t *testing.T) {
	for _, units := range []quantity.System{quantity.Metric, quantity.Imperial} {
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, Of(arch(), about(units)).Sheet))
		var file struct {
			Width   string `xml:"width,attr"`
			Height  string `xml:"height,attr"`
			ViewBox string `xml:"viewBox,attr"`
		}
		require.NoError(t, xml.Unmarshal(b.Bytes(), &file))
		assert.Equal(t, "0 0 "+strings.TrimSuffix(file.Width, "mm")+" "+strings.TrimSuffix(file.Height, "mm"), file.ViewBox)
		bar := regexp.MustCompile(`<line id="check" x1="(.*?)" y1="(.*?)" x2="(.*?)" y2="(.*?)"`).FindStringSubmatch(b.String())
		require.NotNil(t, bar)
		x := floats(t, strings.Join(bar[1:], " "))
		want := map[quantity.System]float64{quantity.Metric: 100, quantity.Imperial: 101.6}[units]
		assert.InEpsilon(t, want, math.Hypot(x[2]-x[0], x[3]-x[1]), exactly)
		cut := regexp.MustCompile(`(?s)<g data-part="CUT">\s*<path d="([^"]*)"[^>]*/>\s*</g>`).FindStringSubmatch(b.String())
		require.NotNil(t, cut, "one path")
		assert.True(t, strings.HasSuffix(cut[1], "Z"))
		x = floats(t, cut[1]) // M x y, A r r 0 0 0 x y, L x y, A r r 0 0 1 x y
		assert.InEpsilon(t, chord, math.Hypot(x[7]-x[0], x[8]-x[1]), exactly)
		assert.InEpsilon(t, 1000*inner, x[2], exactly)
		assert.InEpsilon(t, 1000*(outer-inner), math.Hypot(x[9]-x[7], x[10]-x[8]), exactly)
		assert.InEpsilon(t, 1000*outer, x[11], exactly)
	}
}

func TestDXFIsTrueToScale(t *testing.T) {
	for units, unit := range map[quantity.System]float64{quantity.Metric: 1, quantity.Imperial: 25.4} {
		f := Of(arch(), about(units))
		var b bytes.Buffer
		require.NoError(t, dxf.Write(&b, dxf.Drawing{Items: f.Items, Origin: f.Origin, Unit: unit}))
		text := strings.ReplaceAll(b.String(), "\r\n", "\n")
		at := `  8\n%s\n 10\n(.*)\n 20\n(.*)\n`
		corners := regexp.MustCompile(fmt.Sprintf(`VERTEX\n`+at, "CUT")).FindAllStringSubmatch(text, -1)
		require.Len(t, corners, 4)
		a, c := floats(t, strings.Join(corners[0][1:], " ")), floats(t, strings.Join(corners[1][1:], " "))
		assert.InDelta(t, 0, math.Hypot(a[0], a[1]), exactly, "the origin is the left end of the intrados")
		assert.InEpsilon(t, chord, unit*(c[0]-a[0]), exactly)
		assert.InDelta(t, 0, c[1], exactly, "the chord is level")
		bulges := floats(t, strings.Join(regexp.MustCompile(`\n 42\n(-?0\..*)\n`).FindAllString(text, -1), " "))
		require.Len(t, bulges, 4) // each with its code
		assert.InDelta(t, -math.Tan(half/2), bulges[1], exactly)
		assert.InDelta(t, math.Tan(half/2), bulges[3], exactly)
		bar := regexp.MustCompile(fmt.Sprintf(`LINE\n`+at+` 30\n0.0\n 11\n(.*)\n 21\n(.*)\n`, "CHECK")).FindStringSubmatch(text)
		require.NotNil(t, bar)
		x := floats(t, strings.Join(bar[1:], " "))
		assert.InEpsilon(t, map[quantity.System]float64{quantity.Metric: 100, quantity.Imperial: 4}[units], x[2]-x[0], exactly)
	}
}

// stroke is what one operator of a page draws, in mm from its upper left corner.
type stroke struct {
	wide   float64 // of the line, in points, as printed
	points []paper.Point
}

// strokes reads the operators of a page: lines by their ends, curves by points of
// them at most half a millimetre apart.
func strokes(t *testing.T, page string, high float64) (out []stroke) {
	const mm = 25.4 / 72
	var stack []float64
	wide, at := 0.0, paper.Point{}
	point := func(i int) paper.Point { return paper.Point{X: stack[i] * mm, Y: high - stack[i+1]*mm} }
	for word := range strings.FieldsSeq(page) {
		if x, err := strconv.ParseFloat(word, 64); err == nil {
			stack = append(stack, x)
			continue
		}
		switch word {
		case "w":
			wide = stack[len(stack)-1]
		case "m":
			at = point(0)
		case "l":
			out = append(out, stroke{wide, []paper.Point{at, point(0)}})
			at = point(0)
		case "c":
			curve := bezier(at, point(0), point(2), point(4))
			out = append(out, stroke{wide, curve})
			at = point(4)
		}
		stack = nil
	}
	return out
}

func bezier(a, b, c, d paper.Point) (out []paper.Point) {
	n := math.Ceil(2 * (math.Hypot(b.X-a.X, b.Y-a.Y) + math.Hypot(c.X-b.X, c.Y-b.Y) + math.Hypot(d.X-c.X, d.Y-c.Y)))
	for i := range int(n) + 1 {
		s := float64(i) / n
		k := [4]float64{(1 - s) * (1 - s) * (1 - s), 3 * s * (1 - s) * (1 - s), 3 * s * s * (1 - s), s * s * s}
		out = append(out, paper.Point{
			X: k[0]*a.X + k[1]*b.X + k[2]*c.X + k[3]*d.X, Y: k[0]*a.Y + k[1]*b.Y + k[2]*c.Y + k[3]*d.Y,
		})
	}
	return out
}

// pages are the operators of each page of a file.
func pages(t *testing.T, sheets []paper.Sheet) (out [][]stroke) {
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, pdfDocument, sheets))
	streams := regexp.MustCompile(`(?s)<</Length \d+>>\nstream\n(.*?)\nendstream`).FindAllStringSubmatch(b.String(), -1)
	require.GreaterOrEqual(t, len(streams), len(sheets))
	for i, s := range sheets {
		out = append(out, strokes(t, streams[i][1], s.Height))
	}
	return out
}

// of are the strokes of one pen.
func of(all []stroke, p paper.Pen) []stroke {
	return slices.DeleteFunc(slices.Clone(all), func(s stroke) bool { return math.Abs(s.wide-p.Width()*72/25.4) > 0.006 })
}

// The tiles, joined by their crosses as their rows and columns say, are the outline
// and nothing else; each has a bar both ways.
func TestTilesRejoin(t *testing.T) {
	f := Of(arch(), about(quantity.Metric))
	for _, size := range Papers {
		sheets := f.Tiles(size)
		drawn := pages(t, sheets)
		var joined []paper.Point
		for i, s := range sheets[1:] {
			var row, rows, col, cols int
			_, err := fmt.Sscanf(s.Title, "rib-1, row %d of %d, column %d of %d", &row, &rows, &col, &cols)
			require.NoError(t, err)
			assert.InDelta(t, size.Width*size.Height, s.Width*s.Height, 1e-9)
			first, step := crosses(t, drawn[i+1])
			bars(t, drawn[i+1])
			cut := of(drawn[i+1], paper.Bold)
			for _, one := range cut {
				for _, q := range one.points {
					joined = append(joined, paper.Point{X: q.X - first.X + float64(col-1)*step.X, Y: q.Y - first.Y + float64(row-1)*step.Y})
				}
			}
		}
		isTheArch(t, joined)
		assert.Less(t, len(sheets)-1, 4*20, "blank tiles are left out")
	}
}

// crosses are where the first of a tile's crosses is, and how far apart they are.
func crosses(t *testing.T, page []stroke) (first, step paper.Point) {
	var at []paper.Point
	hair := of(page, paper.Hair)
	for i, a := range hair[:len(hair)-1] {
		b := hair[i+1]
		p, q := a.points, b.points
		if p[0].Y == p[1].Y && q[0].X == q[1].X && math.Abs(p[1].X-p[0].X-2*cross) < 1e-3 && math.Abs(q[1].Y-q[0].Y-2*cross) < 1e-3 {
			at = append(at, paper.Point{X: q[0].X, Y: p[0].Y})
		}
	}
	require.Len(t, at, 4)
	return at[0], paper.Point{X: at[3].X - at[0].X, Y: at[3].Y - at[0].Y}
}

// bars looks for one of 100mm each way.
func bars(t *testing.T, page []stroke) {
	across, upright := 0, 0
	for _, s := range of(page, paper.Medium) {
		dx, dy := math.Abs(s.points[1].X-s.points[0].X), math.Abs(s.points[1].Y-s.points[0].Y)
		if len(s.points) == 2 && math.Abs(dx/100-1) < exactly && dy == 0 {
			across++
		}
		if len(s.points) == 2 && math.Abs(dy/100-1) < exactly && dx == 0 {
			upright++
		}
	}
	assert.Equal(t, [2]int{1, 1}, [2]int{across, upright})
}

// isTheArch holds points, of any origin, to the arch's four edges: each lies on one,
// and none has a gap.
func isTheArch(t *testing.T, points []paper.Point) {
	low, high := points[0], points[0]
	for _, q := range points {
		low = paper.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}
		high = paper.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	const near = 0.1
	assert.InDelta(t, 2000*outer*math.Sin(half), high.X-low.X, near)
	centre := paper.Point{X: (low.X + high.X) / 2, Y: low.Y + 1000*outer}
	var in, out []float64 // where along each curve
	ends := 0
	for _, q := range points {
		r, angle := math.Hypot(q.X-centre.X, q.Y-centre.Y), math.Atan2(q.X-centre.X, centre.Y-q.Y)
		switch {
		case math.Abs(r-1000*inner) < near:
			in = append(in, angle*1000*inner)
		case math.Abs(r-1000*outer) < near:
			out = append(out, angle*1000*outer)
		default:
			ends++
			require.Less(t, math.Abs(math.Abs(angle)-half)*r, near, "%v", q)
		}
	}
	whole := func(at []float64, length float64) {
		slices.Sort(at)
		assert.InDelta(t, -length/2, at[0], near)
		assert.InDelta(t, length/2, at[len(at)-1], near)
		for i, a := range at[1:] {
			require.Less(t, a-at[i], 1.0)
		}
	}
	whole(in, 2000*half*inner)
	whole(out, 2000*half*outer)
}
