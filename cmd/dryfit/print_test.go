package main

import (
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/internal/outside"
)

// eachPageSaysWhatItIsOf reads a printed submittal as its reader does, and counts its
// pages.
func eachPageSaysWhatItIsOf(t *testing.T, pdf string) int {
	outside.Program(t, "pdftotext")
	out, err := exec.Command("pdftotext", "-layout", pdf, "-").Output()
	require.NoError(t, err)
	pages := strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
	require.Greater(t, len(pages), 10)
	for _, word := range []string{"Contractor", "has reviewed and", "Reviewer", "name", "licence", "date", "signature", "stamp", "Sheets", "1. A-612.1 Cross section"} {
		assert.Contains(t, pages[0], word, "the first page")
	}
	for i, page := range pages {
		assert.Contains(t, page, fmt.Sprintf("page %d of %d", i+1, len(pages)))
		assert.Regexp(t, `sheet A-612,(.|\n)*revision C`, page)
		assert.Regexp(t, `(?m) [0-9a-f]{12}$`, page)
		assert.Regexp(t, `(PASS WITH NOTES|FAIL) on 2026-11-25, dryfit`, page)
		lines := strings.Split(strings.TrimSpace(page), "\n")
		assert.Greater(t, len(lines), 4, "a page has more than its margins")
	}
	return len(pages)
}

// printedBar is a scale bar's text on a printed page, in points.
type printedBar struct {
	page                 int
	says                 string
	from, to, above, end float64
}

var barText = regexp.MustCompile(`xMin="([\d.]+)" yMin="([\d.]+)"[^>]*yMax="([\d.]+)">(\d+mm;)</word>\s*<word[^>]*>dimensions</word>\s*<word[^>]*>in</word>\s*<word[^>]*xMax="([\d.]+)"[^>]*>mm</word>`)

// barsOf finds the scale bars of a printed submittal.
func barsOf(t *testing.T, pdf string) (bars []printedBar) {
	out, err := exec.Command("pdftotext", "-bbox", pdf, "-").Output()
	require.NoError(t, err)
	number := func(s string) float64 {
		f, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return f
	}
	for i, page := range strings.Split(string(out), "</page>") {
		for _, m := range barText.FindAllStringSubmatch(page, -1) {
			bars = append(bars, printedBar{page: i + 1, says: m[4], from: number(m[1]), above: number(m[2]), end: number(m[3]), to: number(m[5])})
		}
	}
	assert.GreaterOrEqual(t, len(bars), 6, "section, plan, panel, rib, straps and route")
	return bars
}

// lettersAreAsHighAsDrawn measures what stands beside each scale bar of a printed
// submittal: a text is drawn as wide as it was reckoned for letters of 2.5mm.
func lettersAreAsHighAsDrawn(t *testing.T, bars []printedBar) {
	const point = 25.4 / 72 // mm
	for _, b := range bars {
		printed := 2.5 * (b.to - b.from) * point / paper.TextWidth(b.says+" dimensions in mm", 2.5)
		assert.InDelta(t, 2.5, printed, 0.02, b.says)
	}
}

var barDrawn = regexp.MustCompile(`<g data-part="scale-bar">\n<path d="M([\d.]+) [^"]*"[^>]*/>\n(?:<path[^>]*/>\n)*<path d="M[\d.]+ [\d.]+L([\d.]+) [^"]*"[^>]*/>\n<text[^>]*>(\d+mm;)`)

// barsAreAsLongAsDrawn measures the ink of each scale bar of a printed submittal,
// between the outer edges of its outline, against the bar in the page's own millimetres.
func barsAreAsLongAsDrawn(t *testing.T, page, pdf string, bars []printedBar) {
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	drawn := barDrawn.FindAllStringSubmatch(string(src), -1)
	require.Len(t, drawn, len(bars))
	for i, m := range drawn {
		require.Equal(t, m[3], bars[i].says)
		from, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		to, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
		assert.InDelta(t, to-from+paper.Fine.Width(), inkBefore(t, pdf, bars[i]), 0.1, m[3])
	}
}

// inkBefore is how far ink goes, in mm, on the line of a bar's text before the text.
func inkBefore(t *testing.T, pdf string, b printedBar) float64 {
	const dots = 600.0 / 72 // a point
	number := strconv.Itoa(b.page)
	wide, high := int(b.from*dots)-20, int((b.end-b.above)*dots)
	out, err := exec.Command("pdftoppm", "-r", "600", "-gray", "-f", number, "-l", number, "-x", "0", "-y", strconv.Itoa(int(b.above*dots)), "-W", strconv.Itoa(wide), "-H", strconv.Itoa(high), pdf).Output()
	require.NoError(t, err)
	var w, h, most int
	_, err = fmt.Sscanf(string(out), "P5\n%d %d\n%d", &w, &h, &most)
	require.NoError(t, err)
	dotsOf := out[len(out)-w*h:]
	first, last := w, 0
	for i, dot := range dotsOf {
		if dot < 128 {
			first, last = min(first, i%w), max(last, i%w)
		}
	}
	return float64(last-first+1) / dots * 25.4 / 72
}

var (
	headingText = regexp.MustCompile(`(?s)<h[23][^>]*>(.*?)</h[23]>`)
	lineText    = regexp.MustCompile(`<text top="(\d+)" left="(\d+)" width="(\d+)" height="(\d+)" font="\d+">(<b>)?(.*?)(?:</b>)?</text>`)
)

// headingsKeep asserts that below each heading of a printed submittal something follows
// on the same page, in its own column: within 15mm, and not the page's margin.
func headingsKeep(t *testing.T, page, pdf string) {
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	heads := map[string]bool{}
	for _, m := range headingText.FindAllStringSubmatch(string(src), -1) {
		heads[m[1]] = true
	}
	out, err := exec.Command("pdftohtml", "-xml", "-i", "-stdout", pdf).Output()
	require.NoError(t, err)
	plain := strings.NewReplacer("\ufb01", "fi", "\ufb02", "fl", "\ufb00", "ff", "\ufb03", "ffi").Replace(string(out))
	found := 0
	for i, printed := range strings.Split(plain, "</page>") {
		lines := linesOf(printed)
		for _, l := range lines {
			if last, ok := headingEnd(lines, l, heads); ok {
				found++
				assert.True(t, slices.ContainsFunc(lines, last.keeps), "page %d: %s", i+1, l.text)
			}
		}
	}
	assert.Greater(t, found, 20, "headings of findings, drawings' notes, calculations and takeoff")
}

// printedLine is a line of text on a printed page, in dots of 1/108in.
type printedLine struct {
	top, left, width, height int
	bold                     bool
	text                     string
}

func linesOf(page string) (out []printedLine) {
	for _, m := range lineText.FindAllStringSubmatch(page, -1) {
		var l printedLine
		for k, to := range []*int{&l.top, &l.left, &l.width, &l.height} {
			*to, _ = strconv.Atoi(m[k+1]) // digits alone
		}
		l.bold, l.text = m[5] != "", m[6]
		out = append(out, l)
	}
	return out
}

// headingEnd is the last line of the heading that begins with a line: of one that is
// wrapped the bold line under it that ends it.
func headingEnd(lines []printedLine, first printedLine, heads map[string]bool) (last printedLine, ok bool) {
	last = first
	for text := first.text; first.bold; text += " " + last.text {
		if heads[text] {
			return last, true
		}
		at := slices.IndexFunc(lines, last.goesOn)
		if at < 0 {
			break
		}
		last = lines[at]
	}
	return last, false
}

// goesOn reports whether another line is the next one of the same bold text.
func (l printedLine) goesOn(other printedLine) bool {
	const off = 3 // dots
	below := other.top - l.top
	return other.bold && below > 0 && below < 2*l.height && max(other.left-l.left, l.left-other.left) < off
}

// keeps reports whether another line follows a heading.
func (l printedLine) keeps(other printedLine) bool {
	const most = 15 * 108 / 25.4
	below := float64(other.top - l.top - l.height)
	return below > -2 && below < most && other.left < l.left+l.width && other.left+other.width > l.left && !marginText.MatchString(other.text)
}

var marginText = regexp.MustCompile(`^page \d+ of |^(PASS WITH NOTES|FAIL) on `)

// A heading of two lines ends with the second, and what follows is looked for under that.
func TestHeadingOfTwoLines(t *testing.T) {
	heads := map[string]bool{"the way in through the north door": true, "raising": true}
	first := printedLine{top: 100, left: 50, width: 200, height: 15, bold: true, text: "the way in through"}
	second := printedLine{top: 117, left: 50, width: 100, height: 15, bold: true, text: "the north door"}
	other := printedLine{top: 117, left: 400, width: 100, height: 15, bold: true, text: "raising"}
	follows := printedLine{top: 136, left: 50, width: 200, height: 14, text: "passes, on edge"}
	lines := []printedLine{other, first, second, follows}
	last, ok := headingEnd(lines, first, heads)
	require.True(t, ok)
	assert.Equal(t, second, last)
	assert.True(t, slices.ContainsFunc(lines, last.keeps))
	assert.False(t, slices.ContainsFunc([]printedLine{other, first, second}, last.keeps), "stranded")
	last, ok = headingEnd(lines, other, heads)
	assert.True(t, ok)
	assert.Equal(t, other, last)
	_, ok = headingEnd(lines, second, heads)
	assert.False(t, ok, "its second line begins no heading")
}
