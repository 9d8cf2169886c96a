package editor

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/spec"
	"dryfit/spec/edit"
)

func TestAKeyIsSetWhereItBelongs(t *testing.T) {
	for name, c := range map[string]struct {
		text, key string
		value     any
		want      string // the text after it
	}{
		"in place": {"a = 1\n[rib]\nwidth = \"9mm\" # why\n", "rib.width", "12mm", "a = 1\n[rib]\nwidth = \"12mm\" # why\n"},
		"in place of another kind of string": {
			"a = 1\n[rib]\nwidth = '''9mm'''\n", "rib.width", `1' 3"`,
			"a = 1\n[rib]\nwidth = \"1' 3\\\"\"\n",
		},
		"in place in an inline table": {
			"a = 1\nreveal = { width = \"9mm\", at = \"seam\" }\n", "reveal.width", "12mm",
			"a = 1\nreveal = { width = \"12mm\", at = \"seam\" }\n",
		},
		"in an array": {"a = [1, 2, 3]\n", "a.2", int64(7), "a = [1, 7, 3]\n"},
		"new line, in line with the others": {
			"a = 1\n[rib]\nwidth   = \"9mm\"  # why\n\n[rail]\nx = 1\n", "rib.depth", "60mm",
			"a = 1\n[rib]\nwidth   = \"9mm\"  # why\ndepth   = \"60mm\"\n\n[rail]\nx = 1\n",
		},
		"new line after a value of several": {
			"a = 1\n[strap]\nstations = [\n  1,\n  2,\n] # why\n", "strap.count", int64(3),
			"a = 1\n[strap]\nstations = [\n  1,\n  2,\n] # why\ncount    = 3\n",
		},
		"empty table":               {"a = 1\n[lift] # two\n[rail]\n", "lift.saddle", true, "a = 1\n[lift] # two\nsaddle = true\n[rail]\n"},
		"at the end, no line end":   {"a = 1\n[lift]", "lift.saddle", true, "a = 1\n[lift]\nsaddle = true"},
		"new table":                 {"a = 1\n", "lift.saddle", true, "a = 1\n\n[lift]\nsaddle = true\n"},
		"new table, no line end":    {"a = 1", "lift.saddle", true, "a = 1\n\n[lift]\nsaddle = true\n"},
		"new table, CRLF":           {"a = 1\r\n", "lift.saddle", true, "a = 1\r\n\r\n[lift]\r\nsaddle = true\r\n"},
		"new line, CRLF":            {"a = 1\r\n[lift]\r\nx = 1\r\n", "lift.saddle", true, "a = 1\r\n[lift]\r\nx = 1\r\nsaddle = true\r\n"},
		"new table under another":   {"a = 1\n[seam]\nb = 2\n", "seam.tenon.width", "9mm", "a = 1\n[seam]\nb = 2\ntenon = { width = \"9mm\" }\n"},
		"new in an inline table":    {"a = 1\nseam = { b = 2 }\n", "seam.c", int64(3), "a = 1\nseam = { b = 2, c = 3 }\n"},
		"new in an empty one":       {"a = 1\nseam = {}\n", "seam.c", int64(3), "a = 1\nseam = { c = 3 }\n"},
		"new table in an inline":    {"a = 1\nseam = { b = 2 }\n", "seam.tenon.width", "9mm", "a = 1\nseam = { b = 2, tenon = { width = \"9mm\" } }\n"},
		"a list":                    {"[r]\na = 1\n", "r.b", []any{"x", int64(2)}, "[r]\na = 1\nb = [\"x\", 2]\n"},
		"beside dotted keys":        {"a = 1\nrib.width = \"9mm\"\n[z]\n", "rib.depth", "6mm", "a = 1\nrib.width = \"9mm\"\nrib.depth = \"6mm\"\n[z]\n"},
		"table of an array":         {"a = 1\n[[route]]\nx = 1\n[[route]]\nx = 2\n", "route.1.y", int64(5), "a = 1\n[[route]]\nx = 1\ny = 5\n[[route]]\nx = 2\n"},
		"inline element of array":   {"a = 1\nroute = [{ x = 1 }, { x = 2 }]\n", "route.2.y", int64(5), "a = 1\nroute = [{ x = 1 }, { x = 2, y = 5 }]\n"},
		"byte order mark":           {outline.ByteOrderMark + "a = 1\n", "lift.saddle", true, outline.ByteOrderMark + "a = 1\n\n[lift]\nsaddle = true\n"},
		"strings that look like it": {"a = \"\"\"\n[lift]\nsaddle = false\n\"\"\"\n", "lift.saddle", true, "a = \"\"\"\n[lift]\nsaddle = false\n\"\"\"\n\n[lift]\nsaddle = true\n"},
	} {
		got, ok := set(c.text, c.key, c.value)
		if assert.True(t, ok, name) {
			assert.Equal(t, c.want, c.text[:got.at.Start]+got.text+c.text[got.at.End:], name)
		}
	}
}

// A change that would make something else of the text is not made.
func TestNoChangeThatBreaks(t *testing.T) {
	for _, c := range []struct {
		text, key string
		value     any
	}{
		{"a = 1\n", "a.b", true},
		{"a = [1]\n", "a.2", int64(2)},
	} {
		_, ok := set(c.text, c.key, c.value)
		assert.False(t, ok, c.key)
	}
}

// What is quoted reads back as it was, by the decoder.
func TestQuotedReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		d, problems := spec.Parse("x", []byte("a = "+asTOML(s)+"\n"))
		if len(problems) > 0 || d.Tree["a"] != s {
			t.Fatalf("%q: %v %v", s, problems, d.Tree["a"])
		}
	})
}

// asTOML is a text as TOML writes it.
func asTOML(s string) string {
	text, err := edit.Literal(s)
	if err != nil {
		panic(err) // not UTF-8
	}
	return text
}

func isLeaf(v any) bool {
	switch v.(type) {
	case map[string]any, []any:
		return false
	default:
		return true
	}
}

// corpus are specs that are good, with every key in some way of writing it.
func corpus(t testing.TB) map[string]string {
	out := map[string]string{}
	for _, pattern := range []string{
		"../../../../schema/testdata/good/*.toml", "../../../../docs/examples/*/specs/*.toml", "../../../../docs/examples/*/*.toml",
	} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, f := range files {
			src, err := os.ReadFile(f)
			require.NoError(t, err)
			out[f] = string(src)
		}
	}
	require.NotEmpty(t, out)
	return out
}

// Where the text is TOML, the outline finds every key and value where the
// index of the document does, which comes from a parser of others.
func TestTheOutlineAgreesWithTheIndex(t *testing.T) {
	texts := corpus(t)
	for name, text := range corpus(t) {
		texts[name+" CRLF"] = strings.ReplaceAll(text, "\n", "\r\n")
	}
	texts["hard"] = "a.b . \"c d\" = { x = [ { y = '#]' }, [1, 2] ], z = \"\"\"q\n\"\"\" } # [no]\n[[r]]\n[[r.s]] # x\nk = [ # c ]\n 'a', # d\n]\n[r.t.\"u.v\"]\nw = 1979-05-27 07:32:00\n"
	for name, text := range texts {
		d, problems := spec.Parse(name, []byte(text))
		require.Empty(t, problems, name)
		seen := 0
		for _, e := range outline.Of(text).Entries {
			at, ok := d.ValueRange(e.Key)
			assert.True(t, ok && at == e.Value, "%s %s: %v, index %v", name, e.Key, e.Value, at)
			seen++
		}
		assert.Equal(t, leaves(d.Tree), seen-inner(d, outline.Of(text)), name)
	}
}

// leaves counts what is neither a table nor an array.
func leaves(v any) int {
	n := 0
	switch v := v.(type) {
	case map[string]any:
		for _, x := range v {
			n += leaves(x)
		}
	case []any:
		for _, x := range v {
			n += leaves(x)
		}
	default:
		return 1
	}
	return n
}

// inner counts the entries that are tables or arrays.
func inner(d *spec.Document, o *outline.Outline) int {
	n := 0
	for _, e := range o.Entries {
		switch v, _ := spec.Lookup(d.Tree, e.Key); v.(type) {
		case map[string]any, []any:
			n++
		}
	}
	return n
}

// The change of each value of a good spec, and of each left out, says what it
// should and nothing else; set itself compares.
func TestEveryValueCanBeSet(t *testing.T) {
	for name, text := range corpus(t) {
		d, problems := spec.Parse(name, []byte(text))
		require.Empty(t, problems, name)
		for _, e := range outline.Of(text).Entries {
			if v, _ := spec.Lookup(d.Tree, e.Key); v != nil {
				if isLeaf(v) {
					_, ok := set(text, e.Key, "1in")
					assert.Equal(t, !isDate(e.Key), ok, "%s %s", name, e.Key)
				}
			}
		}
		for _, key := range spec.Keys() {
			if strings.Contains(key, "*") {
				continue
			}
			if v, given := spec.Lookup(d.Tree, key); given {
				if !isLeaf(v) || isDate(key) {
					continue
				}
			}
			if strings.HasSuffix(name, "dryfit.toml") {
				continue
			}
			_, can := spec.With(d.Tree, key, "1in")
			_, ok := set(text, key, "1in")
			assert.Equal(t, can, ok, "%s %s", name, key)
		}
	}
}

// isDate reports whether a key has a date, which a text can't take the place of.
func isDate(key string) bool {
	return strings.HasSuffix(key, ".until") || strings.HasSuffix(key, ".date") || strings.HasSuffix(key, ".issued")
}

// A text as long as a spec may be is read in time that grows with its length,
// however its lines are: by its square these would outlast the limit on a run of
// the tests.
func TestLongTexts(t *testing.T) {
	for _, text := range []string{
		"a = [" + strings.Repeat("1,", spec.MaxSize/2) + "]",
		"a = [" + strings.Repeat("'1',", spec.MaxSize/4) + "]",
		strings.Repeat("a = [\n", spec.MaxSize/6),
		"a = " + strings.Repeat("[", spec.MaxSize),
		strings.Repeat("a = {", spec.MaxSize/5),
	} {
		o := outline.Of(text)
		o.At(len(text))
	}
}

func FuzzOutline(f *testing.F) {
	for _, text := range corpus(f) {
		f.Add(text, 10)
	}
	for _, text := range []string{"a = [", "a = {", "[", "[[", "a.b.", "= 1", "a = \"", "a = '''", "a = [\n[b]\nc = 1", outline.ByteOrderMark, "]", "a = [[[{{", "[rib\n0"} {
		f.Add(text, len(text))
	}
	f.Fuzz(func(t *testing.T, text string, offset int) {
		o := outline.Of(text)
		s := o.At(min(max(offset, 0), len(text)))
		_ = text[s.Word.Start:s.Word.End]
		for _, e := range o.Entries {
			_ = text[e.Value.Start:e.Value.End]
		}
		d := &document{path: "/x.ceiling.toml", text: newLined(text, false)}
		lines, all := whole(text)
		nested(t, lines, newSymbolizer(d).all(), all)
	})
}
