package editor

import (
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
)

// Standards that can't be taken show on their own file, at their place, until
// they are mended on disk.
func TestBrokenStandards(t *testing.T) {
	const file = "/rooms/dryfit.toml"
	src := "dryfit = 1\nname = \"é𝄞\"\nnonsense = 1\n"
	var broken atomic.Bool
	broken.Store(true)
	o := options()
	o.Standards = func(folder string) Found {
		assert.Equal(t, "/rooms", folder)
		if !broken.Load() {
			return builtIn("")
		}
		_, problems := catalog.ReadStandards(file, []byte(src))
		return Found{Broken: []Broken{{Path: file, Source: []byte(src), Problems: problems}}}
	}
	e := connect(t, o).greet(everything)
	e.open(uri, demo(t))
	found := e.found(uri, 1)
	require.Len(t, found, 1)
	assert.Equal(t, "file.read", found[0].Code)
	assert.Contains(t, found[0].Message, file)
	found = e.found(uriOf(file), 0)
	require.Len(t, found, 1)
	assert.Equal(t, "file.shape", found[0].Code)
	assert.Equal(t, span{position{2, 0}, position{2, 8}}, found[0].Range)
	assert.Contains(t, helpOn(e, demo(t), "[rib]", 2), "`rib`", "help needs no standards")

	// While the file is open, it is judged by its text there.
	e.open(uriOf(file), "dryfit = 1\n")
	found = e.found(uriOf(file), 1)
	require.NotEmpty(t, found)
	assert.Contains(t, found[0].Message, "name")
	e.change(uriOf(file), 2, "dryfit = 1\nname = \"x\"\n")
	assert.Empty(t, e.found(uriOf(file), 2))

	broken.Store(false)
	e.notify("textDocument/didSave", fields{"textDocument": fields{"uri": uriOf(file)}})
	assert.Greater(t, len(e.found(uri, 1)), 3)
	e.notify("textDocument/didClose", fields{"textDocument": fields{"uri": uriOf(file)}})
	assert.Empty(t, e.found(uriOf(file), 0))

	broken.Store(true)
	e.notify("workspace/didChangeWatchedFiles", fields{"changes": []fields{{"uri": uriOf(file), "type": 2}}})
	assert.Len(t, e.found(uriOf(file), 0), 1)
	broken.Store(false)
	e.kept = nil
	e.notify("workspace/didChangeWatchedFiles", fields{"changes": []fields{{"uri": uriOf(file), "type": 2}}})
	assert.Empty(t, e.found(uriOf(file), 0))
	e.leave()
}

func TestHoverInStandards(t *testing.T) {
	e := connect(t, withShop(t)).greet(everything)
	file := uriOf(shopFile)
	e.open(file, shop)
	help := func(mark string, after int) string {
		t.Helper()
		h := request[*hover](e, "textDocument/hover", at(file, placeOf(t, shop, mark, after)))
		if h == nil {
			return ""
		}
		return h.Contents.Value
	}
	for _, c := range []struct {
		mark  string
		after int
		want  []string
	}{
		{`"bend.lamination.ratio"`, 3, []string{
			"**at least 100**", "**at least 120** (trials, set at " + shopFile + "&#58;8)", "`bend.lamination`: ", "Replaces the built-in limit",
		}},
		{`[limit."strap.setting.share"]`, 9, []string{"**at most 50%**", "**at most 40%**", "`strap.setting`: "}},
		{`value  = "40%"`, 2, []string{"The value of the limit.", "A percentage", "**at most 40%**"}},
		{`"strap.setting" = "note"`, 3, []string{"Built in: `query`", "In force: `note` (" + shopFile + "&#58;15)", "`strap.setting`: "}},
		{`"note"`, 2, []string{"Built in: `query`", "One of `note`, `query`, `hold`"}},
		{`holds = [`, 1, []string{"Rules with holds that a spec may accept."}},
		{`"bend.lamination", "strap`, 3, []string{"`bend.lamination`: "}},
		{`"room.framing"`, 3, []string{"**Framing** `room.framing`", "Without it not checked: "}},
		{`runs = "across"`, 2, []string{"`room.framing.runs`"}},
		{`density`, 2, []string{"A density with its unit: kg/m3 or lb/ft3."}},
		{`folders`, 2, []string{"Folders to check if the command names no path"}},
		{`"specs"`, 2, []string{"Folders to check if the command names no path"}},
		{`[severity]`, 2, []string{"The severity of refer findings can't be changed"}},
	} {
		got := help(c.mark, c.after)
		for _, want := range c.want {
			assert.Contains(t, got, want, c.mark)
		}
	}
	e.leave()
	assert.Empty(t, e.log.text())
}

func TestCompletionInStandards(t *testing.T) {
	e := connect(t, withShop(t)).greet(everything)
	file := uriOf(shopFile)
	e.open(file, shop)
	version := 1
	at := func(text string) []completion {
		t.Helper()
		version++
		e.change(file, version, strings.Replace(text, "|", "", 1))
		e.found(file, version)
		return request[[]completion](e, "textDocument/completion", at(file, placeOf(t, text, "|", 0)))
	}
	labels := func(text string) (out []string) {
		t.Helper()
		for _, item := range at(text) {
			out = append(out, item.Label)
		}
		return out
	}
	for text, want := range map[string][]string{
		"|":                                           {"dryfit", "name", "[accept]", "[check]", "[check.require]", "[default]", "[[default.route]]", "[limit]", "[[material]]", "[remedy]", "[severity]", "[shop]", "[shop.clamp]", "[shop.defect]", "[shop.scarf]", "[shop.trim]"},
		"dryfit = 1\n[check]\n[|]":                    nil, // below
		"[severity]\n\"joint.count\" = |":             {`"note"`, `"query"`, `"hold"`},
		"[limit]\n\"joint.count.most\" = { |":         {"source", "value"},
		"[limit.\"joint.count.most\"]\nvalue = |":     {"60"},
		"[limit]\n\"joint.count.most\" = |":           {`{ source = "", value = 60 }`},
		"[default]\n\"room.tolerance\" = |":           {`"4mm"`, `"1/4in"`},
		"[default]\n\"skin.straight\" = |":            {`"along"`, `"along"`, `"around"`},
		"[default]\n\"room.framing\" = { species = |": append([]string{`"our oak"`}, quoted(timber.Names())...),
		"[[material]]\nkind = |":                      {`"sheet"`, `"timber"`},
		"[[material]]\nname = \"x\"\nle|":             {"least_radius"},
	} {
		got := labels(text)
		switch {
		case want == nil:
			assert.Contains(t, got, `[limit."joint.count.most"]`)
			assert.NotContains(t, got, "[[material]]", "one bracket is there")
		case strings.HasSuffix(text, "le|"):
			assert.Contains(t, got, want[0])
		default:
			assert.Equal(t, want, got, text)
		}
	}
	names := labels("[limit]\n\"joint.count.most\" = { value = 1, source = \"x\" }\n|\n")
	assert.Contains(t, names, `"bend.lamination.ratio"`)
	assert.NotContains(t, names, `"joint.count.most"`)
	holds := labels("[accept]\nholds = [|]")
	for _, r := range catalog.Rules() {
		assert.Equal(t, r.Severity != engine.Refer, slices.Contains(holds, asTOML(r.ID)), r.ID)
	}
	// A name is found with and without its quotes.
	for text, filter := range map[string]string{"[severity]\nbend|": "bend.lamination", "[severity]\n\"bend|": `"bend.lamination"`} {
		assert.True(t, slices.ContainsFunc(at(text), func(c completion) bool {
			return c.FilterText == filter && c.Edit.NewText == `"bend.lamination" = `
		}), text)
	}
	e.leave()
	assert.Empty(t, e.log.text())
}

// What is offered for a limit is what is built in, and a file that sets it so is
// taken.
func TestEveryLimitIsOfferedAsItIs(t *testing.T) {
	offers := 0
	for _, r := range catalog.Rules() {
		for _, l := range r.Limits {
			value, ok := settable(l.Value)
			if !ok {
				continue
			}
			offers++
			layer, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[limit]\n\""+r.Full(l.Key)+"\" = { value = "+example(value)+", source = \"x\" }"))
			require.Empty(t, problems, r.Full(l.Key))
			set, _ := standards.With(layer).Limit(r.Full(l.Key))
			assert.InEpsilon(t, 1+l.Value.SI, 1+set.Value.SI, 1e-9, r.Full(l.Key))
		}
	}
	assert.Greater(t, offers, 40)
}

// While a standards file is being typed, every question at the cursor is
// answered, and each key that is offered at the start of a line is known there.
func TestTypingStandards(t *testing.T) {
	s := &server{Options: withShop(t), documents: map[string]*document{}}
	for i := range shop {
		d := &document{uri: uri, path: shopFile, text: newLined(shop[:i], false)}
		s.documents[uri] = d
		p := placeParams{Document: identifier{uri}, Position: d.text.position(i)}
		s.helpAt(d, p.Position)
		s.definedAt(d, p.Position)
		_, err := s.symbols(documentParams{p.Document})
		require.NoError(t, err)
		list, err := s.complete(p)
		require.NoError(t, err)
		keys := slices.DeleteFunc(list.([]completion), func(c completion) bool { return c.Kind != kindProperty })
		if len(keys) == 0 || !strings.HasSuffix(shop[:i], "\n") {
			continue
		}
		item := keys[i%len(keys)]
		text := apply(t, shop[:i], []textEdit{item.Edit}, false) + "1\n"
		_, problems := catalog.ReadStandards("s", []byte(text))
		for _, problem := range problems {
			last := problem.Position.Line >= strings.Count(text, "\n")
			assert.False(t, last && strings.Contains(problem.Message, "no such key"), "%s: %s", item.Label, problem.Message)
		}
	}
}
