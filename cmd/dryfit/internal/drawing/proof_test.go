package drawing

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
)

var (
	metricScale   = regexp.MustCompile(`^1:(\d+) on `)
	imperialScale = regexp.MustCompile(`^(?:(\d+) )?(\d+)(?:/(\d+))?in = 1ft on `)
	metricBar     = regexp.MustCompile(`^(\d+)mm$`)
	feetBar       = regexp.MustCompile(`^(\d+)'-(\d+)"$`)
	inchBar       = regexp.MustCompile(`^(\d+)"$`)
)

// numbers are those that an expression finds in one of the texts, 0 where a part is absent.
func numbersIn(texts []string, e *regexp.Regexp) []float64 {
	for _, text := range texts {
		if m := e.FindStringSubmatch(text); m != nil {
			var out []float64
			for _, part := range m[1:] {
				n, _ := strconv.ParseFloat(part, 64) // digits alone, or nothing
				out = append(out, n)
			}
			return out
		}
	}
	return nil
}

// barSays is how long, in mm on paper, a sheet's scale bar has to be by what is printed
// beside it and by the scale in the title block: 1ft is 304.8mm.
func barSays(t *testing.T, s paper.Sheet) float64 {
	t.Helper()
	ratio, all, beside := 0.0, words(s.Items), words(group(t, s, "scale-bar"))
	if m := numbersIn(all, metricScale); m != nil {
		ratio = m[0]
	} else if m := numbersIn(all, imperialScale); m != nil {
		if m[2] == 0 {
			m[2] = 1
		}
		ratio = 12 / (m[0] + m[1]/m[2])
	}
	require.Positive(t, ratio, "%s: %v", s.Name, all)
	if m := numbersIn(beside, metricBar); m != nil {
		return m[0] / ratio
	}
	if m := numbersIn(beside, feetBar); m != nil {
		return (m[0]*12 + m[1]) * 25.4 / ratio
	}
	m := numbersIn(beside, inchBar)
	require.NotNil(t, m, "%s: %v", s.Name, beside)
	return m[0] * 25.4 / ratio
}

var (
	pathPoint = regexp.MustCompile(`[ML]([\d.]+) ([\d.]+)`)
	pdfLine   = regexp.MustCompile(`([\d.]+) ([\d.]+) m\s+([\d.]+) ([\d.]+) l`)
)

// Every scale bar of every ceiling, in both units, is as long in the SVG and in the PDF as
// what it stands for at the sheet's scale, to 0.1mm.
func TestEachScaleBarIsMeasured(t *testing.T) {
	bars := map[string]int{}
	for _, name := range sample.Names(t) {
		for _, units := range []string{"metric", "imperial"} {
			drawn, _, err := All(ceiling(t, name, map[string]any{"project.units": units}), sheet.Options{})
			require.NoError(t, err)
			for _, s := range drawn {
				if bar := grouped(s.Items, "scale-bar"); len(bar) > 0 {
					bars[s.Name]++
					barIsAsItSays(t, s, bar, fmt.Sprintf("%s, %s, %s", name, units, s.Name))
				}
			}
		}
	}
	for _, of := range []string{"section", "plan", "panel", "rib", "straps", "route", "raising"} {
		assert.Greater(t, bars[of], 5, of)
	}
}

// barIsAsItSays measures a sheet's scale bar.
func barIsAsItSays(t *testing.T, s paper.Sheet, bar []paper.Item, what string) {
	t.Helper()
	want := barSays(t, s)
	low, high := math.Inf(1), math.Inf(-1)
	for _, m := range pathPoint.FindAllStringSubmatch(svg.Body(bar), -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		low, high = min(low, x), max(high, x)
	}
	assert.InDelta(t, want, high-low, 0.1, "%s, SVG", what)
	part := want / float64(len(bar)-1) // the last is the text
	lines := pdfLines(t, s)
	assert.True(t, has(lines, low, low+part), "%s, first part in PDF", what)
	assert.True(t, has(lines, low+want-part, low+want), "%s, last part in PDF", what)
}

// pdfLines are from where to where the level lines of a sheet's PDF go, in mm.
func pdfLines(t *testing.T, s paper.Sheet) (out [][2]float64) {
	t.Helper()
	const point = 25.4 / 72
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, pdf.Document{Title: "t", Creator: "dryfit test", Date: time.Unix(0, 0), Plain: true}, []paper.Sheet{s}))
	for _, m := range pdfLine.FindAllStringSubmatch(b.String(), -1) {
		var at [4]float64
		for i := range at {
			n, err := strconv.ParseFloat(m[i+1], 64)
			require.NoError(t, err)
			at[i] = n * point
		}
		if at[1] == at[3] {
			out = append(out, [2]float64{min(at[0], at[2]), max(at[0], at[2])})
		}
	}
	return out
}

// has reports whether a line goes from one place to another, each to 0.1mm.
func has(lines [][2]float64, from, to float64) bool {
	return slices.ContainsFunc(lines, func(l [2]float64) bool { return math.Abs(l[0]-from) < 0.1 && math.Abs(l[1]-to) < 0.1 })
}

var strapOf = regexp.MustCompile(`\bstrap (\d+)`)

// ofStrap is the strap whose force a finding is on; 0 of another finding.
func ofStrap(f engine.Finding) int {
	if f.Rule.ID != "strap.load" && f.Rule.ID != "strap.setting" {
		return 0
	}
	m := strapOf.FindStringSubmatch(f.Text)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1]) // digits alone
	return n
}

// A mark of a finding on the force of a strap lies within 3mm of the strap on the section,
// and of its bars on the diagram of the straps, of every ceiling that has straps.
func TestMarksAreAtTheirStrap(t *testing.T) {
	seen := 0
	for _, name := range sample.Names(t) {
		in := ceiling(t, name, map[string]any{"strap.allowable.load": "0.1kN"})
		for _, of := range []string{"section", "straps"} {
			s, err := Draw(of, in, sheet.Options{})
			if err != nil {
				continue // without the keys of the straps
			}
			lines := strapLines(t, in, s)
			for i, f := range in.Assessment.Findings {
				at, marked := s.Marks[i+1]
				if n := ofStrap(f); n > 0 && marked && n <= len(lines) {
					seen++
					off := max(lines[n-1][0]-at.X, at.X-lines[n-1][1])
					assert.LessOrEqual(t, off, 3.0, "%s, %s: %s", name, of, f.Text)
				}
			}
		}
	}
	assert.Greater(t, seen, 20)
}

// strapLines are from where to where across a sheet each strap is drawn, or its bars.
func strapLines(t *testing.T, in sheet.Input, s paper.Sheet) (out [][2]float64) {
	t.Helper()
	if s.Name == "section" {
		for _, item := range group(t, s, "straps") {
			if l, ok := item.(paper.Line); ok && l.Stroke == pen.Bold {
				out = append(out, [2]float64{l.A.X, l.A.X})
			}
		}
		return out
	}
	var bars []paper.Poly
	for _, item := range group(t, s, "forces") {
		if p, ok := item.(paper.Poly); ok && len(p.Points) == 4 && p.Tone > paper.Paper {
			bars = append(bars, p)
		}
	}
	each := len(strapCases(in.Assessment.Results.Hanging()))
	for i := 0; i+each <= len(bars); i += each {
		out = append(out, [2]float64{bars[i].Points[0].X, bars[i+each-1].Points[1].X})
	}
	return out
}

// The plan of the demo names what the spec has: of framing every 400mm the first member at
// 200mm, of the fitting its size and coffer, both marks of the section, the entry; the view
// has its eye, at the usual 1600mm (common practice).
func TestThePlanAndTheViewNameWhatTheyShow(t *testing.T) {
	plan, err := Draw("plan", input(t), sheet.Options{})
	require.NoError(t, err)
	said := strings.Join(words(plan.Items), "\n")
	for _, want := range []string{"framing 400mm apart,\nruns across,\nthe first 200mm\nfrom the near wall", "downlight\n90mm across,\ncoffer 3, 3", "S\nS", "entry", "panel 6", "last gap 44"} {
		assert.Contains(t, said, want)
	}
	view, err := Draw("view", input(t), sheet.Options{})
	require.NoError(t, err)
	assert.Contains(t, strings.Join(words(view.Items), "\n"), "the eye 1600mm above the floor")
}
