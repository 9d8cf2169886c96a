package edit_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/spec"
	"dryfit/spec/edit"
)

// What each edit must give is written out by hand.
func TestEdits(t *testing.T) {
	tests := []struct {
		name, src, key string
		value          any
		want           string
	}{
		{"a value, its comment kept", "[rib]\ndepth  = \"60mm\"  # as drawn\n", "rib.depth", "66mm", "[rib]\ndepth  = \"66mm\"  # as drawn\n"},
		{"a count", "[grid]\nalong=6\n", "grid.along", int64(5), "[grid]\nalong=5\n"},
		{"literal quotes stay", "[rib]\ndepth = '2in'\n", "rib.depth", "3in", "[rib]\ndepth = '3in'\n"},
		{"and go where they can't", "[rib]\ndepth = '2in'\n", "rib.depth", "2'", "[rib]\ndepth = \"2'\"\n"},
		{"quotes are escaped", "[rib]\ndepth = \"2in\"\n", "rib.depth", `2"`, "[rib]\ndepth = \"2\\\"\"\n"},
		{"carriage returns", "[rib]\r\ndepth = \"2in\"\r\n", "rib.width", "4in", "[rib]\r\ndepth = \"2in\"\r\nwidth = \"4in\"\r\n"},
		{"a byte order mark", "\xef\xbb\xbf[rib]\ndepth = \"2in\"\n", "rib.depth", "3in", "\xef\xbb\xbf[rib]\ndepth = \"3in\"\n"},
		{"a new key, in its neighbours' column", "[rib]\n  depth   = \"2in\" # deep\n\n[rail]\n", "rib.width", "4in", "[rib]\n  depth   = \"2in\" # deep\n  width   = \"4in\"\n\n[rail]\n"},
		{"at the end of a file without a line end", "[rib]\ndepth = \"2in\"", "rib.width", "4in", "[rib]\ndepth = \"2in\"\nwidth = \"4in\""},
		{"in an empty table", "[rib] # none\n[rail]\n", "rib.width", "4in", "[rib] # none\nwidth = \"4in\"\n[rail]\n"},
		{"in a new table", "a = 1\n", "wrap.allowance", "25mm", "a = 1\n\n[wrap]\nallowance = \"25mm\"\n"},
		{"a whole new table", "a = 1\n", "wrap", map[string]any{"b": "2mm", "a": true}, "a = 1\n\n[wrap]\na = true\nb = \"2mm\"\n"},
		{"a new table after a line without an end", "a = 1", "wrap.allowance", "25mm", "a = 1\n\n[wrap]\nallowance = \"25mm\"\n"},
		{"an inline table", "skin = { a = 1 } # x\n", "skin.b", int64(2), "skin = { a = 1, b = 2 } # x\n"},
		{"an empty inline table", "skin = {  }\n", "skin.b", int64(2), "skin = { b = 2 }\n"},
		{"inside of inline tables", "s = { a = { x = [1, { y = 2 }] }, c = 3 }\n", "s.a.b", int64(2), "s = { a = { x = [1, { y = 2 }], b = 2 }, c = 3 }\n"},
		{"dotted keys inside of an inline table", "s = { a.x = 1, c = 3 }\n", "s.a.b", int64(2), "s = { a.x = 1, a.b = 2, c = 3 }\n"},
		{"an inline table of a key with no table", "[strap]\nlap = \"60mm\"\n", "strap.fixing.top", "side", "[strap]\nlap = \"60mm\"\nfixing = { top = \"side\" }\n"},
		{"dotted keys", "rib.depth = \"2in\"\nrib.cut = \"flat\" # x\n[rail]\n", "rib.width", "4in", "rib.depth = \"2in\"\nrib.cut = \"flat\" # x\nrib.width = \"4in\"\n[rail]\n"},
		{"a table that dotted keys pass through", "a.b.c = 1\n[d]\n", "a.x", int64(2), "a.b.c = 1\na.x = 2\n[d]\n"},
		{"a table that a header passes through", "[strap.screws]\ncount = 3\n", "strap.lap", "60mm", "[strap.screws]\ncount = 3\n\n[strap]\nlap = \"60mm\"\n"},
		{"an element of an array of tables", "[[route]]\nwidth = \"1m\"\n[[route]]\nwidth = \"2m\"\n", "route.1.height", "2m", "[[route]]\nwidth = \"1m\"\nheight = \"2m\"\n[[route]]\nwidth = \"2m\"\n"},
		{"a table of one of its elements", "[[route]]\nwidth = \"1m\"\n[[route]]\n", "route.1.door.width", "2m", "[[route]]\nwidth = \"1m\"\ndoor  = { width = \"2m\" }\n[[route]]\n"},
		{"a table under one of its elements", "[[route]]\n[route.door]\nwidth = \"1m\"\n[[route]]\n", "route.1.door.height", "2m", "[[route]]\n[route.door]\nwidth = \"1m\"\nheight = \"2m\"\n[[route]]\n"},
		{"a list, what is between its elements kept", "s = [ \"1%\", # one\n  \"2%\" ]\n", "s", []any{"1%", "3%"}, "s = [ \"1%\", # one\n  \"3%\" ]\n"},
		{"a table with the same keys", "s = { b = 1, a = [{ x = 2 }] } # x\n", "s", map[string]any{"a": []any{map[string]any{"x": int64(3)}}, "b": int64(1)}, "s = { b = 1, a = [{ x = 3 }] } # x\n"},
		{"a table with a header", "[s] # x\nb = 1 # y\na = 2\n", "s", map[string]any{"a": int64(2), "b": int64(5)}, "[s] # x\nb = 5 # y\na = 2\n"},
		{"a longer list", "s = [\"1%\"] # x\n", "s", []any{"1%", "3%"}, "s = [\"1%\", \"3%\"] # x\n"},
		{"the element of a list", "s = [\"1%\", \"2%\"]\n", "s.2", "3%", "s = [\"1%\", \"3%\"]\n"},
		{"a key that needs quotes", "[limit]\n\"a.b\" = 1\n", `limit."c.d"`, int64(2), "[limit]\n\"a.b\" = 1\n\"c.d\" = 2\n"},
		{"a key at the top", "# a spec\n[rib]\n", "dryfit", int64(1), "dryfit = 1\n# a spec\n[rib]\n"},
		{"a word that looks like a bracket", "[rib] # ] { \" \ncut = \"]\" # [x]\n", "rib.cut", "flat", "[rib] # ] { \" \ncut = \"flat\" # [x]\n"},
		{"a text of several lines", "s = \"\"\"a\nb\"\"\" # x\nt = 1\n", "s", "c", "s = \"c\" # x\nt = 1\n"},
		{"no change at all", "s = [1]\n", "s", []any{int64(1)}, "s = [1]\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := edit.Apply([]byte(tt.src), []edit.Change{{Key: tt.key, Value: tt.value}})
			require.NoError(t, err)
			assert.Equal(t, tt.want, string(got))

			doc, problems := spec.Parse("", []byte(tt.src))
			require.Empty(t, problems)
			parts, err := edit.Splices(doc, edit.Change{Key: tt.key, Value: tt.value})
			require.NoError(t, err)
			assert.Equal(t, strings.TrimPrefix(tt.want, "\ufeff"), spliced(doc, parts))
		})
	}
}

// spliced is a document with its parts replaced, without the mark of the byte order.
func spliced(doc *spec.Document, parts []edit.Splice) string {
	text := string(doc.Source)
	for _, p := range slices.Backward(parts) {
		text = text[:p.Start] + p.Text + text[p.End:]
	}
	return text
}

func TestWhatCannotBeEdited(t *testing.T) {
	tests := []struct {
		name, src, key string
		value          any
		says           string
	}{
		{"not TOML", "a = ", "a", int64(1), "line 1"},
		{"through a value", "a = 1\n", "a.b", int64(1), "not a table"},
		{"past the end of a list", "[[route]]\n", "route.2.width", "1m", "not a table"},
		{"a date", "until = 2027-06-30\n", "until", "2028-06-30", "a date"},
		{"no such type", "a = 1\n", "a", struct{}{}, "can't be written"},
		{"not UTF-8", "a = 1\n", "a", "\xff", "not UTF-8"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := edit.Apply([]byte(tt.src), []edit.Change{{Key: tt.key, Value: tt.value}})
			require.ErrorContains(t, err, tt.says)
			if doc, problems := spec.Parse("", []byte(tt.src)); len(problems) == 0 {
				_, err := edit.Splices(doc, edit.Change{Key: tt.key, Value: tt.value})
				require.ErrorContains(t, err, tt.says)
			}
		})
	}
}

// leaves are the keys of all values that are no tables and no lists.
func leaves(key string, v any) []string {
	var out []string
	switch v := v.(type) {
	case map[string]any:
		for name, x := range v {
			out = append(out, leaves(strings.TrimPrefix(key+"."+spec.Key(name), "."), x)...)
		}
	case []any:
		for i, x := range v {
			out = append(out, leaves(key+"."+spec.Key(i+1), x)...)
		}
	default:
		return []string{key}
	}
	return out
}

func sources(t require.TestingT) [][]byte {
	var out [][]byte
	for _, name := range []string{"../testdata/full", "../../schema/testdata/good/every-key", "../../schema/testdata/good/sawn", "../../docs/examples/alder-quay/specs/map-gallery"} {
		src, err := os.ReadFile(name + ".ceiling.toml")
		require.NoError(t, err)
		crlf := "\xef\xbb\xbf" + strings.ReplaceAll(string(src), "\n", "\r\n")
		out = append(out, src, []byte(crlf))
	}
	return out
}

// Splice and reload equals the typed change; the bytes outside of the value
// stay; and a key that is added leaves the file as it was around it.
func TestTheRestStaysAsItWas(t *testing.T) {
	all := sources(t)
	rapid.Check(t, func(t *rapid.T) {
		src := all[rapid.IntRange(0, len(all)-1).Draw(t, "file")]
		doc, problems := spec.Parse("", src)
		require.Empty(t, problems)
		keys := leaves("", doc.Tree)
		slices.Sort(keys)
		key := rapid.SampledFrom(keys).Draw(t, "key")
		if rapid.Bool().Draw(t, "new") {
			key = strings.TrimPrefix(spec.Parent(key)+"."+spec.Key(rapid.StringMatching(`[a-z.]{1,6}x`).Draw(t, "name")), ".")
			if in, ok := spec.Lookup(doc.Tree, spec.Parent(key)); ok {
				if _, table := in.(map[string]any); !table {
					return
				}
			}
		}
		var value any = rapid.OneOf(
			rapid.Custom(func(t *rapid.T) any { return rapid.String().Draw(t, "text") }),
			rapid.Custom(func(t *rapid.T) any { return rapid.Int64().Draw(t, "whole") }),
			rapid.Custom(func(t *rapid.T) any { return rapid.Bool().Draw(t, "yes") }),
		).Draw(t, "value")
		if strings.HasSuffix(key, "until") || strings.HasSuffix(key, "date") || strings.HasSuffix(key, "issued") {
			return // dates are not changed in place
		}
		want, ok := spec.With(doc.Tree, key, value)
		require.True(t, ok)
		out, err := edit.Apply(src, []edit.Change{{Key: key, Value: value}})
		require.NoError(t, err)
		again, problems := spec.Parse("", out)
		require.Empty(t, problems)
		require.Equal(t, want, again.Tree)
		parts, err := edit.Splices(doc, edit.Change{Key: key, Value: value})
		require.NoError(t, err)
		require.Equal(t, string(again.Source), spliced(doc, parts))

		mark := len(src) - len(doc.Source)
		if at, ok := doc.ValueRange(key); ok {
			start, end := at.Start+mark, at.End+mark
			require.Equal(t, string(src[:start]), string(out[:start]))
			require.True(t, strings.HasSuffix(string(out), string(src[end:])))
			return
		}
		same := 0
		for same < len(src) && src[same] == out[same] {
			same++
		}
		require.True(t, strings.HasSuffix(string(out), string(src[same:])), "one piece is added, and nothing is lost")
		require.Equal(t, strings.Contains(string(src), "\r\n"), !strings.Contains(strings.ReplaceAll(string(out), "\r\n", ""), "\n"))
	})
}

// Whatever the file, an edit either reads back as the typed change or is
// refused.
func FuzzApply(f *testing.F) {
	for _, src := range sources(f) {
		f.Add(src, "rib.depth", "66mm")
		f.Add(src, "strap.screws.length", "x\"'\\\n")
	}
	f.Add([]byte("a.b = 1\n[c]\n[[d]]\n[d.e]\n"), "d.1.e.f", "g")
	f.Fuzz(func(t *testing.T, src []byte, key, value string) {
		doc, problems := spec.Parse("", src)
		out, err := edit.Apply(src, []edit.Change{{Key: key, Value: value}})
		if len(problems) > 0 {
			require.Error(t, err)
			return
		}
		if err != nil {
			return
		}
		want, ok := spec.With(doc.Tree, key, value)
		require.True(t, ok)
		again, problems := spec.Parse("", out)
		require.Empty(t, problems)
		require.Equal(t, want, again.Tree)
	})
}
