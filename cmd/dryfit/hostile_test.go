package main

import (
	"bytes"
	"compress/zlib"
	"context"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
)

// hostile is what may stand in a spec from outside, as TOML writes it, to make
// whoever reads an output of it do something else.
var hostile = []string{
	`<script>alert(1)</script>`, `\u001b[2J\u0007\u0000bell`, `\u202egnirts\u200b`, `=HYPERLINK(\"x\")`, `</text></svg><img src=x>`,
	`a\n::error::owned\r\n@b`, `]]> --> &amp; %0A`, `\"); alert(1) //`, `+1;-2|`, `@SUM(1)`, "\u202eraw\u200b", `{{.}} {measured}`,
}

// turned is the name of a folder that turns its reader's text.
const turned = "x\u202egnirts\u200b\u009b"

// hostileCommands are every command and format, on files of that folder, and what
// judges its output.
var hostileCommands = map[string]func(*testing.T, string){
	"check ?a.ceiling.toml":                                           judgeText,
	"check --summary .":                                               judgeText,
	"check --rule rib.* ?a.ceiling.toml":                              judgeText,
	"check --format json .":                                           judgeJSON,
	"check --format jsonl .":                                          judgeJSON,
	"check --format sarif .":                                          judgeJSON,
	"check --format junit .":                                          judgeText,
	"check --format markdown .":                                       judgeText,
	"check --format annotations ?a.ceiling.toml":                      judgeSeen,
	"calcs ?a.ceiling.toml":                                           judgeText,
	"calcs --format json ?a.ceiling.toml":                             judgeJSON,
	"raise ?a.ceiling.toml":                                           judgeText,
	"takeoff ?a.ceiling.toml":                                         judgeText,
	"takeoff --format csv ?a.ceiling.toml":                            judgeCSV,
	"takeoff --format json ?a.ceiling.toml":                           judgeJSON,
	"compare ?a.ceiling.toml ?b.ceiling.toml":                         judgeText,
	"compare --format markdown ?a.ceiling.toml ?b.ceiling.toml":       judgeText,
	"compare --format json ?a.ceiling.toml ?b.ceiling.toml":           judgeJSON,
	"remedy --strict ?a.ceiling.toml --may-change route.2.width":      judgeText,
	"remedy --strict --each ?a.ceiling.toml --may-change route":       judgeText,
	"remedy --format json ?a.ceiling.toml --may-change route.2.width": judgeJSON,
	"remedy --strict --each --format json ?a.ceiling.toml":            judgeJSON,
	"study ?a.ceiling.toml --vary grid.along=4,6":                     judgeText,
	"study ?a.ceiling.toml --vary grid.along=4,6 --format csv":        judgeCSV,
	"study ?a.ceiling.toml --vary grid.along=4,6 --format json":       judgeJSON,
	"study ?a.ceiling.toml --vary grid.along=4,6 --format jsonl":      judgeJSON,
	"study ?a.ceiling.toml --vary grid.along=4,6 --format html":       judgePage,
	"study ?a.ceiling.toml --vary grid.along=4,6 --format svg":        judgeXML,
	"draw ?a.ceiling.toml --sheet section --format svg":               judgeXML,
	"draw ?a.ceiling.toml --sheet plan --format svg":                  judgeXML,
	"draw ?a.ceiling.toml --sheet route --format svg":                 judgeXML,
	"draw ?a.ceiling.toml --sheet all --format pdf":                   judgePDF,
	"submittal ?a.ceiling.toml":                                       judgePage,
	"standards ?a.ceiling.toml":                                       judgeText,
	"standards --format json ?a.ceiling.toml":                         judgeJSON,
}

// Every command keeps hostile texts what they are: text, whatever key of a spec
// or of a standards file they stand at.
func TestHostileTexts(t *testing.T) {
	demo := longInOwnFolder(t)
	require.NoError(t, os.Mkdir(turned, 0o755))
	for turn := range 2 {
		hostileFolder(t, turned, demo, 6*turn)
		for line, judge := range hostileCommands {
			t.Run(line, func(t *testing.T) {
				args := strings.Fields(strings.ReplaceAll(line, "?", turned+"/"))
				if slices.Contains([]string{"check", "compare", "remedy", "study", "draw", "submittal"}, args[0]) {
					args = append(args, "--on", "2026-11-25")
				}
				var out, errs bytes.Buffer
				status := run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
				require.LessOrEqual(t, status, 1, "%s", &errs)
				judge(t, out.String())
				seen(t, errs.String())
			})
		}
		pages := t.TempDir()
		follow(t, "dryfit submittal --on 2026-11-25 --output "+pages+" "+turned)
		index, err := os.ReadFile(pages + "/index.html")
		require.NoError(t, err)
		judgePage(t, string(index))
		said := follow(t, "dryfit submittal --verify "+pages+"/x-gnirts---a.html "+turned+"/a.ceiling.toml")
		judgeText(t, said)
		assert.Contains(t, said, "\nBELONGS")
	}
}

// seen fails on what moves a cursor, hides text or turns its direction, where it
// stands raw.
func seen(t *testing.T, out string) {
	t.Helper()
	at := strings.IndexFunc(out, func(r rune) bool {
		return r != '\n' && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Co)
	})
	if at >= 0 {
		t.Errorf("raw in the output: %q", out[max(0, at-60):min(len(out), at+20)])
	}
}

// What is wrong with a spec, with standards or with the command line is said
// without what turns text, too.
func TestHostileMistakes(t *testing.T) {
	demo, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir(".git", 0o755))
	require.NoError(t, os.Mkdir("house", 0o755))
	require.NoError(t, os.WriteFile("good.ceiling.toml", demo, 0o644))
	var spec map[string]any
	require.NoError(t, toml.Unmarshal(demo, &spec))
	spoil(spec)
	writeTOML(t, "bad.ceiling.toml", spec)
	house := hostileStandards(t, func() string { return turning }, "wood", "sheet")
	spoil(house)
	writeTOML(t, "house/dryfit.toml", house)
	for _, line := range hostileLines {
		t.Run(line, func(t *testing.T) {
			args := strings.Fields(line)
			for i, a := range args {
				args[i] = strings.ReplaceAll(a, "?", strings.Trim(turning, "\x00"))
			}
			var out, errs bytes.Buffer
			run(context.Background(), args, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
			judgeSeen(t, out.String()+errs.String())
		})
	}
}

// hostileLines are command lines, a question mark for what turns text.
var hostileLines = []string{
	"?", "--?", "help ?", "help \u202ekcehc", "basis ?", "schema ?", "completion ?",
	"check bad.ceiling.toml", "check --format json bad.ceiling.toml", "check --format sarif bad.ceiling.toml",
	"check --format junit bad.ceiling.toml", "check --format markdown bad.ceiling.toml", "check --format annotations bad.ceiling.toml",
	"check --standards house/dryfit.toml good.ceiling.toml", "check --standards house/dryfit.toml --format jsonl good.ceiling.toml",
	"check ?", "check --format ?", "check --on ?", "check --color ?", "check --jobs ?", "check --part ?", "check --rule ?", "check --skip ?",
	"check --standards ? good.ceiling.toml", "check --changed-since ? good.ceiling.toml", "check --output ?/? good.ceiling.toml", "check --?",
	"check --format json --stdin-name ? -",
	"calcs ?", "calcs bad.ceiling.toml", "calcs --format ? good.ceiling.toml", "takeoff ?", "takeoff --format ? good.ceiling.toml",
	"standards ?", "standards --standards house/dryfit.toml good.ceiling.toml", "standards --format ?",
	"compare ? good.ceiling.toml", "compare HEAD:? good.ceiling.toml", "compare --fail-on ? good.ceiling.toml good.ceiling.toml",
	"study ? --vary grid.along=1", "study good.ceiling.toml --vary ?=1", "study good.ceiling.toml --vary project.title=?,b",
	"study good.ceiling.toml --vary project.title=?,b --format json", "study good.ceiling.toml --vary project.title=?,b --format csv",
	"study good.ceiling.toml --vary grid.along=?", "study good.ceiling.toml --vary grid.along=4 --sort ?",
	"remedy ?", "remedy good.ceiling.toml --strict --may-change ?", "draw ?", "draw good.ceiling.toml --sheet ?", "draw good.ceiling.toml --paper ?",
	"draw good.ceiling.toml --scale ?", "submittal ?", "submittal --verify ? good.ceiling.toml", "submittal --output ?/? good.ceiling.toml",
	"begin --span ? --rise 1m --length 3m", "begin --profile ? --span 3m --length 6m", "begin --title ? --span 4200mm --rise 840mm --length 7080mm",
	"begin --units ? --span 3m --length 6m",
}

// spoil puts what turns text at every value that is a string, and into a key of
// every table.
func spoil(v any) {
	switch v := v.(type) {
	case map[string]any:
		for key, value := range v {
			if _, ok := value.(string); ok {
				v[key] = turning
			} else {
				spoil(value)
			}
		}
		v[turning] = turning
	case []map[string]any:
		for _, element := range v {
			spoil(element)
		}
	}
}

func judgeSeen(t *testing.T, out string) {
	t.Helper()
	require.NotEmpty(t, out)
	seen(t, out)
}

// judgeText fails on what is not to be seen, and on what the log of a workflow
// obeys.
func judgeText(t *testing.T, out string) {
	t.Helper()
	judgeSeen(t, out)
	for line := range strings.Lines(out) {
		assert.False(t, strings.HasPrefix(strings.TrimSpace(line), "::"), line)
	}
}

// judgeJSON decodes each document; the text in it may be anything, by its codes.
func judgeJSON(t *testing.T, out string) {
	t.Helper()
	judgeSeen(t, out)
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
	judgeSeen(t, strings.ReplaceAll(out, "\r\n", "\n"))
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
	judgeSeen(t, out)
	assert.True(t, strings.HasPrefix(out, "<!"))
	assert.NotRegexp(t, harmful, out)
	for _, tag := range acts.FindAllString(out, -1) {
		assert.Regexp(t, `^<(script|script type="application/json" id="dryfit-submittal"|meta [^>]*)>$`, tag)
	}
}

var (
	pdfStream = regexp.MustCompile(`(?s)stream\n(.*?)\nendstream`)
	pdfText   = regexp.MustCompile(`(?s)\(((?:\\.|[^\\()])*)\)`)
	pdfEscape = regexp.MustCompile(`(?s)\\(.)`)
)

// judgePDF reads every text of the pages and of what the document says of
// itself, all in UTF-16.
func judgePDF(t *testing.T, out string) {
	t.Helper()
	texts, shown := 0, false
	read := func(part string) {
		for _, m := range pdfText.FindAllStringSubmatch(part, -1) {
			raw := pdfEscape.ReplaceAllStringFunc(m[1], func(s string) string {
				if s[1] == 'r' {
					return "\r"
				}
				return s[1:]
			})
			units := make([]uint16, 0, len(raw)/2)
			for i := 0; i+1 < len(raw); i += 2 {
				units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
			}
			text := strings.TrimPrefix(string(utf16.Decode(units)), "\ufeff")
			seen(t, text)
			texts++
			shown = shown || strings.Contains(text, `\u202e`)
		}
	}
	for _, m := range pdfStream.FindAllStringSubmatch(out, -1) {
		inflated, err := zlib.NewReader(strings.NewReader(m[1]))
		if err != nil {
			continue // a font
		}
		page, err := io.ReadAll(inflated)
		require.NoError(t, err)
		if strings.Contains(string(page), " Tj") {
			read(string(page))
		}
	}
	pages := texts
	for line := range strings.Lines(pdfStream.ReplaceAllString(out, "")) {
		if strings.HasPrefix(line, "/Title ") || strings.HasPrefix(line, "<</Title ") {
			read(line)
		}
	}
	assert.Greater(t, pages, 100)
	assert.Greater(t, texts, pages)
	assert.True(t, shown, "what would turn the text is there, by its code")
}

// What an editor is told of a spec and of standards, and shows, is text too.
// What it puts into the file is the file's own.
func TestHostileEditor(t *testing.T) {
	demo, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	folder := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(folder, ".git"), 0o755))
	hostileFolder(t, folder, demo, 3)
	e := startEditing(t, folder)
	e.send(`{"jsonrpc":"2.0","id":"first","method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{"textDocument":{"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":[]}}},"documentSymbol":{"hierarchicalDocumentSymbolSupport":true},"publishDiagnostics":{"relatedInformation":true}}}}}`)
	e.next(`"id":"first"`)
	e.send(`{"jsonrpc":"2.0","method":"initialized","params":{}}`)
	asked := 0
	ask := func(method, document, more string) {
		asked++
		id := fmt.Sprintf(`"id":"%d of these"`, asked)
		e.send(fmt.Sprintf(`{"jsonrpc":"2.0",%s,"method":"textDocument/%s","params":{%s}%s}}`, id, method, document, more))
		judgeMessage(t, e.next(id))
	}
	for _, name := range []string{"a.ceiling.toml", "dryfit.toml"} {
		path := filepath.Join(folder, name)
		src, err := os.ReadFile(path)
		require.NoError(t, err)
		document := `"textDocument":{"uri":` + quotedJSON(t, (&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}).String())
		e.send(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{` + document + `,"languageId":"toml","version":1,"text":` + quotedJSON(t, string(src)) + `}}}`)
		judgeMessage(t, e.next("publishDiagnostics"))
		ask("documentSymbol", document, "")
		lines := strings.Count(string(src), "\n")
		ask("codeAction", document, fmt.Sprintf(`,"range":{"start":{"line":0,"character":0},"end":{"line":%d,"character":0}},"context":{"diagnostics":[]}`, lines))
		for line := 0; line < min(lines, 150); line += 2 {
			for _, column := range []int{3, 14} {
				place := fmt.Sprintf(`,"position":{"line":%d,"character":%d}`, line, column)
				ask("hover", document, place)
				ask("completion", document, place)
				ask("definition", document, place)
			}
		}
	}
	e.send(`{"jsonrpc":"2.0","id":"last","method":"shutdown"}`)
	e.next(`"id":"last"`)
	e.send(`{"jsonrpc":"2.0","method":"exit"}`)
	assert.Zero(t, e.status())
	seen(t, e.errors.String())
}

// judgeMessage looks at the bytes of a message, and at every text in it but
// those that go into the file or are held against it.
func judgeMessage(t *testing.T, body string) {
	t.Helper()
	judgeJSON(t, body)
	var document any
	require.NoError(t, json.Unmarshal([]byte(body), &document))
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, under := range v {
				if key != "newText" && key != "insertText" && key != "filterText" {
					walk(under)
				}
			}
		case []any:
			for _, under := range v {
				walk(under)
			}
		case string:
			seen(t, v)
		}
	}
	walk(document)
}
