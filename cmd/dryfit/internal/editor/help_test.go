package editor

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec"
)

func helpOn(c *client, text, mark string, after int) string {
	c.t.Helper()
	h := request[*hover](c, "textDocument/hover", at(uri, placeOf(c.t, text, mark, after)))
	if h == nil {
		return ""
	}
	return h.Contents.Value
}

func TestHover(t *testing.T) {
	text := demo(t)
	e := connect(t, options()).greet(everything)
	e.open(uri, text)
	// On the key and on its value alike.
	help := helpOn(e, text, `lamination   = "6mm"`, 3)
	assert.Equal(t, help, helpOn(e, text, `"6mm"`, 2))
	for _, want := range []string{
		"**Lamination** `rib.lamination`",
		"A length with its unit: mm, cm, m, ft or in.",
		"For example `\"6mm\"`, `\"1/4in\"`",
		// R of a segmental arch is (s²/4 + h²)/(2h) = (4.2²/4 + 0.84²)/1.68 = 3.045m, and 3045/6 = 507.5.
		"`= 3045 / 6 = 507.5`",
		"`bend.lamination.ratio`",
		"**at least 100**",
	} {
		assert.Contains(t, help, want)
	}
	rise := helpOn(e, text, `"840mm"`, 1)
	assert.Contains(t, rise, "`vault.radius`")
	assert.Less(t, strings.Index(rise, "`vault.rise-ratio.least`"), strings.Index(rise, "`grid.module-size.least`"), "its own first")
	assert.Contains(t, rise, "more, which `dryfit standards` lists")
	assert.Contains(t, helpOn(e, text, `"10%", "36%"`, 2), "`strap.stations`", "an element is told of with its list")
	assert.Contains(t, helpOn(e, text, "[strap]", 2), "Without it not checked: ")
	assert.Contains(t, helpOn(e, text, "[[route]]", 4), "`route`")
	assert.Contains(t, helpOn(e, text, `humidity = "28%"`, 1), "`climate.dry.humidity`")
	assert.Contains(t, helpOn(e, text, `wall   = "220mm"`, 1), "`route.*.wall`")
	assert.Contains(t, helpOn(e, text, `blocking = true`, 12), "`room.framing.blocking`")
	assert.Empty(t, helpOn(e, text, "# wall to wall", 4), "a comment")
	assert.Empty(t, helpOn(e, text, "\n\n[room]", 1), "an empty line")

	// While the text is not TOML, what a key means is still told, and the figures
	// are said to be old.
	broken := edited(t, text, `depth        = "60mm"`, `depth        = 60mm`)
	e.change(uri, 2, broken)
	help = helpOn(e, broken, `lamination   = "6mm"`, 3)
	assert.Contains(t, help, "before the text's last change")
	assert.Contains(t, help, "507.5")

	imperial := edited(t, text, `"metric"`, `"imperial"`)
	e.change(uri, 3, imperial)
	assert.Contains(t, helpOn(e, imperial, `first_gap = "18mm"`, 1), `at least 1/4"`, "6mm, as the units of the spec print it")
	e.leave()
}

// Every key of the schema is told of, in Markdown that an outside parser reads
// as no more than it is.
func TestEveryKeyHasHelp(t *testing.T) {
	s := &server{Options: options()}
	d := &document{}
	for _, p := range schema.Properties() {
		if strings.HasSuffix(p.Path, "*") {
			continue
		}
		key := strings.ReplaceAll(p.Path, "*", "1")
		help := s.help(d, key)
		assert.Contains(t, help, p.Title, key)
		var html bytes.Buffer
		require.NoError(t, goldmark.Convert([]byte(help), &html))
		assert.NotContains(t, html.String(), "raw HTML", key)
		assert.NotContains(t, html.String(), "<a", key)
	}
}

func TestEveryKeyOfStandardsHasHelp(t *testing.T) {
	s := &server{Options: options()}
	for _, p := range standardsKeys().list {
		if key := strings.ReplaceAll(p.Path, "*", "1"); !strings.HasSuffix(p.Path, "*") {
			assert.Contains(t, s.standardsHelp(&document{}, key), p.Title, key)
		}
	}
}

// What a firm writes into its standards is text, and no markup.
func TestHelpIsEscaped(t *testing.T) {
	hostile := "<img src=x> [a](http://b) `c` **d** \u202e|"
	layer, problems := catalog.ReadStandards("dryfit.toml", []byte("dryfit = 1\nname = \"x\"\n[limit]\n\"bend.lamination.ratio\" = { value = 130, source = "+asTOML(hostile)+" }\n"))
	require.Empty(t, problems)
	o := options()
	o.Standards = func(string) Found { return Found{Standards: standards.With(layer)} }
	e := connect(t, o).greet(everything)
	e.open(uri, demo(t))
	help := helpOn(e, demo(t), `lamination   = "6mm"`, 3)
	assert.Contains(t, help, "**at least 130**")
	assert.Contains(t, help, "set at dryfit.toml")
	assert.NotContains(t, help, "\u202e")
	var html bytes.Buffer
	require.NoError(t, goldmark.Convert([]byte(help), &html))
	for _, markup := range []string{"<img", "<a ", "<strong>d", "<code>c"} {
		assert.NotContains(t, html.String(), markup)
	}
	e.leave()
}

// offered are the labels at the bar in a text, which is taken out.
func offered(c *client, text string) []string {
	var out []string
	for _, item := range items(c, text) {
		out = append(out, item.Label)
	}
	return out
}

func items(c *client, text string) []completion {
	c.t.Helper()
	place := placeOf(c.t, text, "|", 0)
	c.change(uri, 2, strings.Replace(text, "|", "", 1))
	return request[[]completion](c, "textDocument/completion", at(uri, place))
}

func TestCompletion(t *testing.T) {
	e := connect(t, withShop(t)).greet(everything)
	e.open(uri, demo(t))
	e.found(uri, 1)

	got := offered(e, "dryfit = 1\n[rail]\nwidth = \"1mm\"\n|\n[rib]\n")
	assert.Equal(t, []string{"species", "cut", "depth"}, got[:3], "in the schema's order, without what is there")
	assert.NotContains(t, got, "width")
	assert.Contains(t, got, "[strap]")
	assert.NotContains(t, got, "[rib]")
	assert.Contains(t, got, "[[route]]")

	assert.Equal(t, got[:3], offered(e, "dryfit = 1\n[rail]\nwidth = \"1mm\"\nspe|")[:3], "the client narrows it down")

	for text, want := range map[string][]string{
		"dryfit = 1\n[rail]\ndepth = \"1mm\"\nspecies = \"x\"\nwidth = \"2\"\ncu|t = \"flat\"": {"cut", "joint"},
		"[rail]\ncut = |":                         {`"vertical"`, `"flat"`, `"mixed"`},
		"[rail]\ncut = \"fl|":                     {`"vertical"`, `"flat"`, `"mixed"`},
		"[rail]\ncut = fl|":                       {`"vertical"`, `"flat"`, `"mixed"`},
		"[rail]\ncut=|\r\n[rib]\r\n":              {`"vertical"`, `"flat"`, `"mixed"`},
		"[ledger]\npacked = |":                    {"true", "false"},
		"[ledger]\npacked = t|":                   {"true", "false"},
		"[rib]\nspecies = |":                      append([]string{`"our oak"`}, quoted(timber.Names())...),
		"[room]\nframing = { species = |":         append([]string{`"our oak"`}, quoted(timber.Names())...),
		"[skin]\nmaterial = \"|\"":                append([]string{`"our sheet"`}, quoted(timber.SheetNames())...),
		"room.framing = { runs = \"across\", | }": {"spacing", "offset", "member", "species", "blocking", "movement"},
		"[room]\nframing = { runs = \"across\", member = \"1mm\", sp|": {"spacing", "offset", "species", "blocking", "movement"},
		"[seam]\ntenon.|":                           {"thickness", "width", "length"},
		"[seam]\ntenon.width = \"1mm\"\ntenon.le|":  {"thickness", "length"},
		"[strap]\nstations = [\n  \"10%\",\n  |\n]": {`"10%"`, `"36%"`, `"64%"`, `"90%"`},
		"[[fitting]]\ncoffer = [|":                  {"3"},
		"[vault]\nspan = |":                         {`"4200mm"`, `"13ft 9in"`},
		"[[|]]":                                     {"[[rib.layer]]", "[[survey.station]]", "[[route]]", "[[fitting]]", "[[align]]", "[[accept]]"},
		"[rail]\n# cu|":                             nil,
		"[rail]\ncut = \"flat\" |":                  nil,
		"[rail] |":                                  nil,
		"[nonsense]\nx = |":                         nil,
		"[[accept]]\nrule = \"x\"\nat = \"|\"":      {`"panels"`, `"rib.width"`, `"rib.lamination"`, `"rail.width"`, `"skin.material"`, `"strap.setting"`, `"edge.cover"`, `"climate.dry"`, `"climate.wet"`, `"crew.people"`}, // of the text before
	} {
		assert.Equal(t, want, offered(e, text), text)
	}

	// A leg has the keys of its kind.
	leg := offered(e, "[[route]]\nkind = \"stair\"\n|")
	assert.Equal(t, []string{"name", "width", "headroom", "rise", "going", "risers"}, leg[:6])

	accepting := offered(e, "[[accept]]\nrule = |")
	for _, r := range catalog.Rules() {
		assert.Equal(t, r.Severity != engine.Refer, slices.Contains(accepting, asTOML(r.ID)), r.ID)
	}
	e.leave()
}

func quoted(words []string) []string {
	var out []string
	for _, w := range words {
		out = append(out, asTOML(w))
	}
	return out
}

// A completion takes the place of what is written, and no more.
func TestCompletionEdits(t *testing.T) {
	e := connect(t, options()).greet(everything)
	e.open(uri, "")
	for text, want := range map[string]string{
		"[rail]\ncu|":                             "[rail]\ncut = ",
		"[rail]\ncu| = \"flat\"":                  "[rail]\ncut = \"flat\"",
		"[rail]\ncut = \"ve|\" # why":             "[rail]\ncut = \"vertical\" # why",
		"[rail]\ncut = \"ve| # why":               "[rail]\ncut = \"vertical\" # why",
		"[rail]\ncut = ve|":                       "[rail]\ncut = \"vertical\"",
		"x = { 🪵 = \"𝄞\" }\n[rail]\ncut = v|":     "x = { 🪵 = \"𝄞\" }\n[rail]\ncut = \"vertical\"",
		"rail = { cut = \"ve|, width = \"1mm\" }": "rail = { cut = \"vertical\", width = \"1mm\" }",
		"[rai|":     "[rail]",
		"[rai|]":    "[rail]",
		"[[rout|]":  "[[route]]",
		"[[rout|]]": "[[route]]",
		"rai|":      "[rail]",
	} {
		for _, item := range items(e, text) {
			plain := strings.Replace(text, "|", "", 1)
			if changed := apply(t, plain, []textEdit{item.Edit}, false); item.FilterText != "" && changed == want {
				want = ""
			}
		}
		assert.Empty(t, want, text)
	}
	e.leave()
}

// While a spec is being typed from its first byte to its last, every question at
// the cursor is answered; and what is offered as a key at the start of a line is
// one that the schema knows there.
func TestTyping(t *testing.T) {
	s := &server{Options: options(), documents: map[string]*document{}}
	text := strings.Replace(demo(t), "Reading", "𝕽eading", 1)
	for newline, step := range map[string]int{"\n": 3, "\r\n": 11} {
		text := strings.ReplaceAll(text, "\n", newline)
		for i := range text {
			if i%step > 0 && !strings.HasSuffix(text[:i], "\n") {
				continue
			}
			d := &document{uri: uri, path: "/rooms/room.ceiling.toml", text: newLined(text[:i], false)}
			s.documents[uri] = d
			p := placeParams{Document: identifier{uri}, Position: d.text.position(i)}
			s.helpAt(d, p.Position)
			list, err := s.complete(p)
			require.NoError(t, err)
			keys := slices.DeleteFunc(list.([]completion), func(c completion) bool { return c.Kind != kindProperty })
			if !strings.HasSuffix(text[:i], "\n") || newline != "\n" || len(keys) == 0 {
				continue
			}
			item := keys[i%len(keys)]
			knownKey(t, apply(t, text[:i], []textEdit{item.Edit}, false)+"1\n", item.Label)
		}
	}
}

// knownKey fails where the schema does not know a key that was added.
func knownKey(t *testing.T, text, key string) {
	d, problems := spec.Parse("x", []byte(text))
	require.Empty(t, problems, "%s", text[max(0, len(text)-200):])
	for _, p := range schema.Check(d) {
		last := p.Position.Line >= strings.Count(text, "\n")
		assert.False(t, last && (strings.Contains(p.Message, "no such key") || strings.Contains(p.Message, "does not belong")), "%s: %s", key, p.Message)
	}
}

func TestPaths(t *testing.T) {
	for uri, want := range map[string]string{
		"file:///a/b.toml":             "/a/b.toml",
		"file:///a%20b/%C3%A9%23.toml": "/a b/é#.toml",
		"file://localhost/a":           "/a",
		"file:///c%3A/a.toml":          "c:/a.toml",
		"file://host/share/a":          "//host/share/a",
		"untitled:Untitled-1":          "",
		"git:/a/b.toml?%7B%7D":         "",
		"":                             "",
		":":                            "",
		"file:":                        "",
	} {
		got, ok := pathOf(uri)
		assert.Equal(t, want, strings.ReplaceAll(got, `\`, "/"), uri)
		assert.Equal(t, want != "", ok, uri)
	}
	for _, path := range []string{"/a b/é#?%.toml", "/x"} {
		back, ok := pathOf(uriOf(path))
		assert.True(t, ok)
		assert.Equal(t, path, back)
	}
}

func TestShownIsNeverNothing(t *testing.T) {
	for _, text := range []string{"dryfit = 1\n", "\n\n", "", "a", "\r\n"} {
		l := newLined(text, false)
		for i := range len(text) + 1 {
			if i < len(text) && !utf8.RuneStart(text[i]) {
				continue
			}
			s := l.shown(spec.Range{Start: i, End: i})
			assert.False(t, s.End.before(s.Start), "%q %d", text, i)
			if l.lineEnd(l.position(i).Line) > l.starts[l.position(i).Line] {
				assert.True(t, s.Start.before(s.End), "%q %d", text, i)
			}
		}
	}
}
