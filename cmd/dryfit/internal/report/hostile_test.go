package report

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/text"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// hostile is what a spec's author, or whoever names a file, may write to make a
// reader of findings do something else.
var hostile = []string{
	"\x1b[31mred\x1b[0m", "bell\a\b\x00", "\u202egnirts", "zero\u200bwidth\ufeff", "line\nbreak\r\nreturn",
	"::error file=a.go,line=1::owned", "\n::set-output name=x::y", "  ::stop-commands::z", "##[error]owned", "100%0Aowned%0D",
	"`code` ``two`` |cell|", "| a | b |\n| --- | --- |", "**bold** _em_ ~~gone~~ $x^2$", "[link](javascript:alert(1))", "![image](http://x.example/y.png)",
	"<script>alert(1)</script>", "<!-- hidden", "--> ]]> &amp; &#x41;", "</testsuite>", "</details>", "# heading", "- item", "1. item", "> quote",
	"@somebody #123 https://x.example www.x.example a@b.example :smile:", "{0} {{1}} {measured} {limit}", "\\[brackets\\]", "=HYPERLINK(\"x\")", "+1", "@SUM(1)",
	"bad \xff\xfe bytes", "emoji 🏛️ 漢字", strings.Repeat("long ", 40), "\u2028separator\u2029", "private \ue000 \U0010fffd, tag \U000e0041", " ",
}

// hostileReport is a report on specs and files named by each of some texts, with
// it in every place that is printed.
func hostileReport(t *testing.T, hostile []string) Report {
	src := sample.Source(t, sample.ReadingRoom)
	std := standards.BuiltIn()
	o := review.Options{Rules: catalog.Rules(), Standards: std, On: "2026-11-25", Offers: true}
	run := Run{Standards: []string{"../house\n::error::/dryfit.toml"}}
	for _, h := range hostile {
		quoted := strings.ToValidUTF8(tomlString(h), "\uFFFD")
		spec := strings.NewReplacer(
			`"Reading room, Alder Quay library"`, quoted, `"A-612"`, quoted, `name   = "street door"`, "name = "+quoted, `name   = "downlight"`, "name = "+quoted,
			`width  = "900mm"`, `width  = "300mm"`, `length   = "7080mm"`, `length   = "7130mm"`, `size   = { diameter = "90mm" }`, `size   = { diameter = "900mm" }`,
			"invented)", "invented) "+strings.Trim(quoted, `"`),
		).Replace(string(src))
		spec += "\n[[accept]]\nrule = \"strap.setting\"\nreason = " + quoted + "\nby = " + quoted + "\nuntil = 2027-06-30\n"
		run.Assessments = append(run.Assessments, review.Spec("specs/"+h+".ceiling.toml", []byte(spec), o))
	}
	run.Assessments = append(run.Assessments,
		review.Spec(hostile[0], []byte("x = 1\n"+tomlString(hostile[len(hostile)-1])+" = 2\n"), o),
		review.Unreadable("::error::gone", "\n::error::there is no such file", o))
	return Report{Version: "1.2.3", On: "2026-11-25", Rules: catalog.Rules(), Runs: []Run{run}, Folder: "/rooms/tree", Root: "/rooms/tree"}
}

// tomlString is text as a basic string: JSON's escapes are TOML's.
func tomlString(s string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		panic(err)
	}
	return strings.ReplaceAll(strings.TrimSpace(b.String()), "\x7f", `\u007f`)
}

// checked is a report on the demo with some of its text changed.
func checked(t *testing.T, changes ...string) Report {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	s := review.Spec("room.ceiling.toml", sample.Source(t, sample.ReadingRoom, changes...), o)
	return Report{On: "2026-11-25", Rules: catalog.Rules(), Runs: []Run{{Assessments: []*review.Assessment{s}}}}
}

// everyWriter is every format that findings are written in.
var everyWriter = map[string]Format{
	"text":        Text(false),
	"json":        JSON,
	"jsonl":       JSONLines,
	"sarif":       SARIF,
	"junit":       JUnit,
	"annotations": Annotations, "markdown": Markdown,
}

// judges hold the bytes of a format, of a report on some files, against what it
// promises.
func judges(files int) map[string]func(*testing.T, []byte) {
	return map[string]func(*testing.T, []byte){
		"text": judgeLog, "annotations": judgeAnnotations, "markdown": judgeMarkdown,
		"junit": func(t *testing.T, out []byte) { assert.Equal(t, files, judgeXML(t, out)) },
		"json":  judgeJSON, "jsonl": judgeJSON, "sarif": judgeJSON,
	}
}

// FuzzWriters puts any text in every place that is printed, and through every
// format.
func FuzzWriters(f *testing.F) {
	for _, h := range hostile {
		f.Add(h)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r := hostileReport(t, []string{text})
		for name, format := range everyWriter {
			var b bytes.Buffer
			require.NoError(t, Write(&b, r, format), name)
			judges(3)[name](t, b.Bytes())
		}
	})
}

func TestHostileTextStaysText(t *testing.T) {
	r := hostileReport(t, hostile)
	for _, s := range r.Runs[0].Assessments[:len(hostile)] {
		require.Empty(t, s.Problems, "%s", s.Path)
	}
	for name, format := range everyWriter {
		t.Run(name, func(t *testing.T) {
			var b, again bytes.Buffer
			require.NoError(t, Write(&b, r, format))
			require.NoError(t, Write(&again, r, format))
			assert.Equal(t, b.Bytes(), again.Bytes(), "the same bytes each time")
			judges(len(hostile) + 2)[name](t, b.Bytes())
		})
	}
}

// visible fails on what moves a cursor, hides text or turns its direction.
func visible(t *testing.T, text string) {
	t.Helper()
	assert.Less(t, strings.IndexFunc(text, func(r rune) bool {
		return r != '\n' && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Co)
	}), 0)
	assert.NotContains(t, text, "\xff")
}

// judgeLog looks for lines that a workflow's log would obey.
func judgeLog(t *testing.T, out []byte) {
	visible(t, string(out))
	for line := range strings.Lines(string(out)) {
		text := strings.TrimSpace(line)
		assert.False(t, strings.HasPrefix(text, "::") || strings.HasPrefix(text, "##["), line)
	}
}

var annotation = regexp.MustCompile(`^::(error|warning|notice) file=[^,:]*,line=\d+,endLine=\d+(,col=\d+,endColumn=\d+)?,title=((hold|query|note|refer|loosened|not computed) [a-z]+\.[a-z-]+|not checked|\d+ more%2C listed here)::[^\r\n]*$`)

func judgeAnnotations(t *testing.T, out []byte) {
	for line := range strings.Lines(string(out)) {
		line = strings.TrimSuffix(line, "\n")
		assert.True(t, annotation.MatchString(line) || strings.HasPrefix(line, "checked "), "%q", line)
		assert.NotContains(t, line, "%0A::")
	}
	visible(t, string(out))
}

// judgeMarkdown reads the page with a parser of its own and looks for what only
// the writer may put there.
func judgeMarkdown(t *testing.T, out []byte) {
	visible(t, string(out))
	assert.LessOrEqual(t, len([]rune(string(out))), 65536)
	parser := goldmark.New(goldmark.WithExtensions(extension.GFM)).Parser()
	require.NoError(t, ast.Walk(parser.Parse(text.NewReader(out)), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.Link, *ast.Image, *ast.AutoLink, *ast.RawHTML:
			t.Errorf("a %s got through: %s", n.Kind(), plainText(n, out))
		case *ast.HTMLBlock:
			for i := range n.Lines().Len() {
				line := n.Lines().At(i)
				assert.Regexp(t, `^(<details><summary>not checked, assumed</summary>|</details>)\s*$`, string(line.Value(out)))
			}
		case *ast.Heading:
			assert.Contains(t, []int{2, 3}, n.Level)
		case *ast.Emphasis:
			if n.Level == 2 {
				assert.Regexp(t, `^(hold|query|note|accepted|could not be computed|give first|loosened by the standards|PASS|PASS WITH NOTES|FAIL|COULD NOT CHECK)$`, plainText(n, out))
			}
		}
		return ast.WalkContinue, nil
	}))
}

// plainText is the text under a node.
func plainText(n ast.Node, src []byte) string {
	var b strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if leaf, ok := c.(*ast.Text); ok {
			b.Write(leaf.Value(src))
		} else {
			b.WriteString(plainText(c, src))
		}
	}
	return b.String()
}

// judgeXML reads the document, and is how many suites it has.
func judgeXML(t *testing.T, out []byte) (suites int) {
	d := xml.NewDecoder(bytes.NewReader(out))
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			if token.Name.Local == "testsuite" {
				suites++
			}
			for _, a := range token.Attr {
				visible(t, a.Value)
			}
		case xml.CharData:
			visible(t, string(token))
		case xml.Comment, xml.Directive:
			t.Error("neither comments nor directives are written")
		}
	}
	return suites
}

// judgeJSON decodes each document; the text in it may be anything, by its codes.
func judgeJSON(t *testing.T, out []byte) {
	hidden(t, out)
	d := json.NewDecoder(bytes.NewReader(out))
	n := 0
	for d.More() {
		var document map[string]any
		require.NoError(t, d.Decode(&document))
		n++
	}
	assert.Positive(t, n)
	assert.NotContains(t, string(out), "\xff")
}

func TestMarkdownText(t *testing.T) {
	for in, want := range map[string]string{
		"plain 1.4mm, 58.5%": "plain 1.4mm, 58.5%", "a*b_c`d": "a\\*b\\_c\\`d", "<b> & @me": "&#60;b&#62; &#38; &#64;me",
		"http://x": "http&#58;//x", "note: text": "note: text", "www.x": "www&#46;x", "#12": "\\#12",
	} {
		assert.Equal(t, want, markdown.Text(in))
	}
	for in, want := range map[string]string{"a": "`a`", "a`b": "``a`b``", "`": "`` ` ``", "": "`  `", "a|b": "`a|b`"} {
		assert.Equal(t, want, markdown.Code(in))
	}
	assert.Equal(t, "`a\\|b`", markdown.Cell("a|b"))
}

// hidden fails on bytes that have a control or format character raw.
func hidden(t *testing.T, out []byte) {
	t.Helper()
	if at := bytes.IndexFunc(out, func(r rune) bool { return r != '\n' && !show.SafeRune(r) }); at >= 0 {
		t.Errorf("%q stands raw in the output", out[at:min(len(out), at+20)])
	}
}
