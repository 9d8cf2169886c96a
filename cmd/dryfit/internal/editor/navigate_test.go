package editor

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
)

// shop is a standards file with each thing that a definition can lead to.
const shop = `dryfit = 1
name   = "shop"

[check]
folders = ["specs"]

[limit]
"bend.lamination.ratio" = { value = 120, source = "trials" }

[limit."strap.setting.share"]
value  = "40%"
source = "trials"

[severity]
"strap.setting" = "note"

[accept]
holds = ["bend.lamination", "strap.setting"]

[default]
"room.framing" = { spacing = "400mm", runs = "across", offset = "0mm", member = "45mm", species = "our oak" }

[[material]]
name = "our sheet"
kind = "sheet"
density = "540kg/m3"
least_radius = { long_bent = "300mm", short_bent = "300mm" }
source = "a test"

[[material]]
name = "our oak"
kind = "timber"
group = "hardwood"
specific_gravity = 0.6
modulus = "12GPa"
rupture = "90MPa"
radial = 0.001
tangential = 0.002
source = "a test"
`

const shopFile = "/rooms/dryfit.toml"

// withShop are options under the shop's standards.
func withShop(t *testing.T) Options {
	layer, problems := catalog.ReadStandards(shopFile, []byte(shop))
	require.Empty(t, problems)
	o := options()
	o.Standards = func(string) Found { return Found{Standards: standards.With(layer)} }
	return o
}

// marked are the texts at the places of a definition, of those in a text, and
// the lines of those in the shop's file.
func marked(t *testing.T, c *client, uri, text, mark string, after int) []any {
	t.Helper()
	var out []any
	for _, l := range request[[]location](c, "textDocument/definition", at(uri, placeOf(t, text, mark, after))) {
		if l.URI != uri {
			assert.Equal(t, uriOf(shopFile), l.URI)
			out = append(out, strings.Split(shop, "\n")[l.Range.Start.Line])
			continue
		}
		lines := newLined(text, false)
		out = append(out, text[lines.offset(l.Range.Start):lines.offset(l.Range.End)])
		assert.Equal(t, l.Range.Start, lines.position(lines.offset(l.Range.Start)))
	}
	return out
}

func TestDefinitionInASpec(t *testing.T) {
	text := "\ufeff" + demo(t) + `
[[accept]] # 🪵
rule   = "strap.setting"
at     = "strap.setting"
reason = "x"
by     = "x"
until  = 2027-01-01

[[accept]]
rule   = "transit.door"
at     = "route.2.width"
reason = "x"
by     = "x"
until  = 2027-01-01

[[accept]]
rule   = "bend.lamination"
at     = 'fitting.1.size.diameter'
reason = "x"
by     = "x"
until  = 2027-01-01
`
	text = edited(t, text, `material  = "bendable plywood"`, `material  = "Our sheet"`)
	e := connect(t, withShop(t)).greet(everything)
	e.open(uri, text)
	e.found(uri, 1)
	find := func(mark string, after int) []any { t.Helper(); return marked(t, e, uri, text, mark, after) }

	// The key of an acceptance, up to the name at the cursor: a leg, a fitting, a
	// value in them.
	leg := find(`"route.2.width"`, 3)
	assert.Equal(t, []any{"route"}, leg)
	assert.Equal(t, leg, find(`"route.2.width"`, 8))
	second := request[[]location](e, "textDocument/definition", at(uri, placeOf(t, text, `"route.2.width"`, 3)))[0].Range.Start
	assert.Equal(t, "street door", nameAfter(text, second))
	assert.Equal(t, []any{"width"}, find(`"route.2.width"`, 11))
	assert.Equal(t, []any{"fitting"}, find(`'fitting.1.size.diameter'`, 2))
	assert.Equal(t, []any{"size"}, find(`'fitting.1.size.diameter'`, 12))
	assert.Equal(t, []any{"diameter"}, find(`'fitting.1.size.diameter'`, 18))

	// The rule of an acceptance: what it finds, then what standards set of it.
	rule := find("rule   = \"strap.setting\"", 12)
	require.Len(t, rule, 4)
	assert.Equal(t, []any{`[limit."strap.setting.share"]`, `"strap.setting" = "note"`, `holds = ["bend.lamination", "strap.setting"]`}, rule[1:])
	assert.Equal(t, `"1mm"`, rule[0], "the value that is found")
	// Where it finds nothing, what standards set of it.
	assert.Equal(t, []any{`"bend.lamination.ratio" = { value = 120, source = "trials" }`, `holds = ["bend.lamination", "strap.setting"]`},
		find("rule   = \"bend.lamination\"", 12))
	// Where neither is, the keys that it needs.
	assert.NotEmpty(t, find("rule   = \"transit.door\"", 12))

	assert.Equal(t, []any{`name = "our sheet"`}, find(`"Our sheet"`, 3))
	for _, nothing := range []string{`species      = "white oak"`, "# wall to wall", "by     = "} {
		assert.Empty(t, find(nothing, len(nothing)-2), nothing)
	}
	e.leave()
	assert.Empty(t, e.log.text())
}

// nameAfter is the first name that is given after a place.
func nameAfter(text string, p position) string {
	rest := text[newLined(text, false).offset(p):]
	_, rest, _ = strings.Cut(rest, `"`)
	name, _, _ := strings.Cut(rest, `"`)
	return name
}

// A key that is not written leads to the table that it would be in.
func TestDefinitionOfWhatIsNotWritten(t *testing.T) {
	text := "dryfit = 1\n[room]\nwidth = \"4m\"\n[[accept]]\nat = \"room.tolerance\"\n[[accept]]\nat = \"lift.units\"\n[[accept]]\nat = \"route.9.width\"\n"
	e := connect(t, options()).greet(everything)
	e.open(uri, text)
	assert.Equal(t, []any{"room"}, marked(t, e, uri, text, "room.tolerance", 8))
	assert.Empty(t, marked(t, e, uri, text, "lift.units", 8))
	assert.Empty(t, marked(t, e, uri, text, "route.9", 8))
	e.leave()
}

func TestDefinitionInStandards(t *testing.T) {
	e := connect(t, withShop(t)).greet(everything)
	file := uriOf("/rooms/inner/dryfit.toml")
	inner := strings.Replace(shop, `[limit."strap.setting.share"]`, `[limit."strap.setting.share"] # our own`, 1)
	e.open(file, inner)
	assert.Empty(t, e.found(file, 1))
	find := func(mark string, after int) []any { t.Helper(); return marked(t, e, file, inner, mark, after) }
	outer := []any{`[limit."strap.setting.share"]`, `"strap.setting" = "note"`, `holds = ["bend.lamination", "strap.setting"]`}
	assert.Equal(t, append([]any{`limit."strap.setting.share"`, `"strap.setting"`}, outer...), find(`"strap.setting"]`, 3))
	assert.Equal(t, append([]any{`limit."strap.setting.share"`, `"strap.setting"`}, outer...), find(`"strap.setting" =`, 3))
	assert.Equal(t, append([]any{`"strap.setting"`, `"strap.setting"`}, outer...), find(`limit."strap.setting.share"`, 9))
	assert.Equal(t, []any{`"our oak"`, `name = "our oak"`}, find(`"our oak" }`, 3))

	// The shop's own file leads to no other.
	e.open(uriOf(shopFile), shop)
	assert.Equal(t, []any{`"bend.lamination"`}, marked(t, e, uriOf(shopFile), shop, `"bend.lamination.ratio"`, 3))
	e.leave()
	assert.Empty(t, e.log.text())
}

// names are the names of a tree of symbols, each in the one that it is in.
func names(list []symbol) []any {
	var out []any
	for _, s := range list {
		out = append(out, s.Name)
		if len(s.Children) > 0 {
			out = append(out, names(s.Children))
		}
	}
	return out
}

// nested fails where a symbol is not in its place, which editors refuse.
func nested(t *testing.T, lines lined, list []symbol, within span) {
	for _, s := range list {
		assert.NotEmpty(t, strings.TrimSpace(s.Name))
		for _, p := range []position{s.Range.Start, s.Range.End, s.Selection.Start, s.Selection.End} {
			assert.Equal(t, p, lines.position(lines.offset(p)), s.Name)
		}
		for _, inside := range []struct{ in, out span }{{s.Range, within}, {s.Selection, s.Range}} {
			assert.False(t, inside.in.Start.before(inside.out.Start) || inside.out.End.before(inside.in.End), "%s: %v is not in %v", s.Name, inside.in, inside.out)
		}
		nested(t, lines, s.Children, s.Range)
	}
}

func whole(text string) (lined, span) {
	lines := newLined(text, false)
	return lines, span{End: lines.position(len(text))}
}

var tree = fields{"textDocument": fields{"documentSymbol": fields{"hierarchicalDocumentSymbolSupport": true}}}

func TestOutline(t *testing.T) {
	text := strings.Replace(demo(t), "Reading", "𝕽eading", 1)
	document := fields{"textDocument": fields{"uri": uri}}
	e := connect(t, options()).greet(tree)
	e.open(uri, text)
	list := request[[]symbol](e, "textDocument/documentSymbol", document)
	lines, all := whole(text)
	nested(t, lines, list, all)
	of := func(name string) symbol {
		t.Helper()
		i := slices.IndexFunc(list, func(s symbol) bool { return s.Name == name })
		require.GreaterOrEqual(t, i, 0, name)
		return list[i]
	}
	assert.Equal(t, "dryfit", list[0].Name)
	assert.Equal(t, symbolNumber, list[0].Kind)
	room := of("room")
	assert.Equal(t, "Room", room.Detail)
	assert.Contains(t, names(room.Children), "framing")
	assert.Contains(t, names(room.Children), []any{"spacing", "runs", "offset", "member", "species", "blocking", "movement"})
	assert.Equal(t, "street door", of("route.2").Detail)
	assert.Equal(t, placeOf(t, text, "[[route]]", 2), of("route.1").Selection.Start)
	assert.Equal(t, `"4240mm"`, room.Children[0].Detail)
	assert.Equal(t, symbolString, room.Children[0].Kind)

	// While it is no TOML, there is still an outline.
	broken := "dryfit = \n[room\nwidth = \"4\n= 3\n[]\n[[route]]\nname =\nx = [{ a = 1, b = [{ c = true"
	e.change(uri, 2, broken)
	list = request[[]symbol](e, "textDocument/documentSymbol", document)
	lines, all = whole(broken)
	nested(t, lines, list, all)
	assert.Equal(t, []any{"dryfit", "room", []any{"width"}, "route.1", []any{"name", "x", []any{"1", []any{"a", "b", []any{"1", []any{"c"}}}}}}, names(list))
	e.leave()

	e = connect(t, options()).greet(everything)
	e.open(uri, text)
	plain := request[[]flatSymbol](e, "textDocument/documentSymbol", document)
	i := slices.IndexFunc(plain, func(s flatSymbol) bool { return s.Name == "spacing" && s.Within == "framing" })
	require.GreaterOrEqual(t, i, 0, "for a client that takes no tree")
	assert.Equal(t, uri, plain[i].Location.URI)
	e.leave()
}

// A text of one long line is outlined in time that grows with its length: by its
// square it would outlast the limit on a run of the tests.
func TestOutlineOfALongLine(t *testing.T) {
	text := "x = ['𝕽'," + strings.Repeat("{a=[{b=1}]},", 1<<20/12) + "]"
	d := &document{path: "/rooms/room.ceiling.toml", text: newLined(text, false)}
	list := newSymbolizer(d).all()
	require.Len(t, list, 1)
	last := list[0].Children[len(list[0].Children)-1]
	assert.Equal(t, d.text.position(len(text)-2), last.Range.End)
	assert.Len(t, list[0].Children, 1<<20/12)
}

func TestOutlineOfStandards(t *testing.T) {
	file := uriOf(shopFile)
	e := connect(t, withShop(t)).greet(tree)
	e.open(file, shop)
	list := request[[]symbol](e, "textDocument/documentSymbol", fields{"textDocument": fields{"uri": file}})
	lines, all := whole(shop)
	nested(t, lines, list, all)
	got := names(list)
	for _, want := range []any{"check", "limit", []any{`"bend.lamination.ratio"`, []any{"value", "source"}}, `limit."strap.setting.share"`, "material.2"} {
		assert.Contains(t, got, want)
	}
	e.leave()
}
