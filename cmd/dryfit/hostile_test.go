package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostile is what may stand in a spec from outside, as TOML writes it, to make
// whoever reads an output of it do something else.
var hostile = []string{
	`<script>alert(1)</script>`, `\u001b[2J\u0007\u0000bell`, `\u202egnirts\u200b`, `=HYPERLINK(\"x\")`, `</text></svg><img src=x>`,
	`a\n::error::owned\r\n@b`, `]]> --> &amp; %0A`, `\"); alert(1) //`, `+1;-2|`, `@SUM(1)`, "\u202eraw\u200b", `{{.}} {measured}`,
}

// Every command that is not check keeps hostile texts what they are: text. Those
// of check have tests beside their writers.
func TestHostileTexts(t *testing.T) {
	demo, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	for turn := range 2 {
		text := func(i int) string { return `"` + hostile[(6*turn+i)%len(hostile)] + `"` }
		spec := strings.NewReplacer(
			`"Reading room, Alder Quay library"`, text(0), `"A-612"`, text(1), `"C"`, text(2), `engineer = ""`, "engineer = "+text(3),
			`"street door"`, text(4), `"downlight"`, text(5), `width  = "900mm"`, `width  = "300mm"`,
		).Replace(string(demo))
		require.NoError(t, os.WriteFile("a.ceiling.toml", []byte(spec), 0o644))
		require.NoError(t, os.WriteFile("b.ceiling.toml", bytes.Replace([]byte(spec), []byte(`"300mm"`), []byte(`"900mm"`), 1), 0o644))
		for line, judge := range map[string]func(*testing.T, string){
			"calcs a.ceiling.toml":                                                         judgeText,
			"calcs --format json a.ceiling.toml":                                           judgeJSON,
			"takeoff a.ceiling.toml":                                                       judgeText,
			"takeoff --format csv a.ceiling.toml":                                          judgeCSV,
			"takeoff --format json a.ceiling.toml":                                         judgeJSON,
			"compare a.ceiling.toml b.ceiling.toml":                                        judgeText,
			"compare --format json a.ceiling.toml b.ceiling.toml":                          judgeJSON,
			"remedy a.ceiling.toml --may-change route.1.width,route.2.width":               judgeText,
			"remedy --format json a.ceiling.toml --may-change route.1.width,route.2.width": judgeJSON,
			"study a.ceiling.toml --vary grid.along=4,6":                                   judgeText,
			"study a.ceiling.toml --vary grid.along=4,6 --format csv":                      judgeCSV,
			"study a.ceiling.toml --vary grid.along=4,6 --format json":                     judgeJSON,
			"study a.ceiling.toml --vary grid.along=4,6 --format jsonl":                    judgeJSON,
			"study a.ceiling.toml --vary grid.along=4,6 --format html":                     judgePage,
			"study a.ceiling.toml --vary grid.along=4,6 --format svg":                      judgeXML,
			"draw a.ceiling.toml --sheet route --format svg":                               judgeXML,
			"submittal a.ceiling.toml":                                                     judgePage,
			"standards a.ceiling.toml":                                                     judgeText,
		} {
			t.Run(line, func(t *testing.T) {
				out, errs, _ := printed(t, "dryfit "+line)
				judge(t, out)
				if errs != "" {
					judgeText(t, errs)
				}
			})
		}
	}
}

// judgeText fails on what moves a cursor, hides text or turns its direction, and
// on what the log of a workflow obeys.
func judgeText(t *testing.T, out string) {
	t.Helper()
	require.NotEmpty(t, out)
	assert.Equal(t, -1, strings.IndexFunc(out, func(r rune) bool {
		return r != '\n' && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
	}))
	for line := range strings.Lines(out) {
		assert.False(t, strings.HasPrefix(strings.TrimSpace(line), "::"), line)
	}
}

// judgeJSON decodes each document; the text in it may be anything.
func judgeJSON(t *testing.T, out string) {
	t.Helper()
	n := 0
	for d := json.NewDecoder(strings.NewReader(out)); d.More(); n++ {
		var document any
		require.NoError(t, d.Decode(&document))
	}
	assert.Positive(t, n)
}

// judgeCSV fails on a cell that a table would work out.
func judgeCSV(t *testing.T, out string) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	assert.Greater(t, len(rows), 1)
	for _, row := range rows {
		for _, cell := range row {
			_, err := strconv.ParseFloat(cell, 64)
			assert.True(t, err == nil || cell == "" || !strings.Contains("=+-@\t\r", cell[:1]), "%q", cell)
		}
	}
}

// judgeXML reads the picture: whole, and without what acts.
func judgeXML(t *testing.T, out string) {
	t.Helper()
	judgeText(t, out)
	for d := xml.NewDecoder(strings.NewReader(out)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			assert.Contains(t, []string{"svg", "title", "desc", "style", "g", "path", "text"}, e.Name.Local)
			for _, a := range e.Attr {
				assert.False(t, strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href", a.Name.Local)
			}
		}
	}
}

var (
	acts    = regexp.MustCompile(`(?i)<(script|img|iframe|object|embed|form|meta|link|base)\b[^>]*>`)
	harmful = regexp.MustCompile(`(?i)alert\(1\)</script>|<img src=x|\son[a-z]+\s*=`)
)

// judgePage fails on an element that acts and is not the page's own.
func judgePage(t *testing.T, out string) {
	t.Helper()
	assert.True(t, strings.HasPrefix(out, "<!"))
	assert.NotRegexp(t, harmful, out)
	for _, tag := range acts.FindAllString(out, -1) {
		assert.Regexp(t, `^<(script|script type="application/json" id="dryfit-submittal"|meta [^>]*)>$`, tag)
	}
}
