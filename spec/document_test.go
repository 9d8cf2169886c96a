package spec_test

import (
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec"
)

const example = "../docs/examples/alder-quay/specs/reading-room.ceiling.toml"

func readExample(t testing.TB) []byte {
	src, err := os.ReadFile(example)
	require.NoError(t, err)
	return src
}

// leaves calls f with the key and value of everything in a tree that is not a
// table.
func leaves(v any, path []any, f func(key string, v any)) {
	switch v := v.(type) {
	case map[string]any:
		for name, x := range v {
			leaves(x, append(path[:len(path):len(path)], name), f)
		}
	case []any:
		if len(path) > 0 {
			f(spec.Key(path...), v)
		}
		for i, x := range v {
			leaves(x, append(path[:len(path):len(path)], i+1), f)
		}
	default:
		f(spec.Key(path...), v)
	}
}

// tricky has every shape that a value or a key can take.
const tricky = `a = "plain" # ] }
"quoted.key" = 'it # is'
dotted.name . last = 12
list = [ "x]", # a comment with ] and ,
  "y",
  [1, 2,], { p = "q}", r = [true] } ]
text = """
two ] lines # not a comment
"""
empty = []
none = {}
when = 2027-06-30
[table.sub]
n = -1.5
[[row]]
name = "one"
[row.opt]
k = "v"
[[row]]
name = "two"
[[row.inner]]
z = 1
[[row.inner]]
z = 2
[row.opt]
k = "w"
`

func TestRangesAreExact(t *testing.T) {
	for name, src := range map[string][]byte{
		"example": readExample(t),
		"tricky":  []byte(tricky),
		"crlf":    []byte(strings.ReplaceAll(tricky, "\n", "\r\n")),
		"mark":    []byte("\xef\xbb\xbf" + tricky),
	} {
		t.Run(name, func(t *testing.T) {
			d, problems := spec.Parse(name, src)
			require.Empty(t, problems)
			count := 0
			leaves(d.Tree, nil, func(key string, v any) {
				count++
				r, ok := d.ValueRange(key)
				if rows, list := v.([]any); list && !ok {
					assert.IsType(t, map[string]any{}, rows[0], "only tables under headers have no value")
					return
				}
				require.True(t, ok, "no range for %s", key)
				again, problems := spec.Parse("again", []byte("x = "+string(d.Source[r.Start:r.End])))
				require.Empty(t, problems, "%s: %q", key, d.Source[r.Start:r.End])
				assert.Equal(t, v, again.Tree["x"], key)
			})
			assert.Greater(t, count, 15)
		})
	}
}

func TestLocate(t *testing.T) {
	d, problems := spec.Parse("p", []byte(tricky))
	require.Empty(t, problems)
	at := func(key string) spec.Position { return d.Position(d.Locate(key).Start) }
	assert.Equal(t, spec.Position{Line: 3, Column: 22}, at("dotted.name.last"))
	assert.Equal(t, spec.Position{Line: 13, Column: 8}, at("table.sub.absent"), "an absent key is at its table")
	assert.Equal(t, spec.Position{Line: 22, Column: 5}, at("row.2.inner.1.z"))
	assert.Equal(t, spec.Position{Line: 26, Column: 5}, at("row.2.opt.k"))
	assert.Equal(t, spec.Position{Line: 1, Column: 1}, at("nothing.of.the.kind"))
}

func TestPositionCountsCodePoints(t *testing.T) {
	d, problems := spec.Parse("p", []byte("a = \"é\" # …\nb = 1"))
	require.Empty(t, problems)
	assert.Equal(t, spec.Position{Line: 1, Column: 8}, d.Position(strings.Index("a = \"é\" #", " #")))
	assert.Equal(t, spec.Position{Line: 2, Column: 2}, d.Position(len(d.Source)-4))
}

func TestProblemsOfTheFile(t *testing.T) {
	for _, c := range []struct {
		name, src     string
		line, column  int
		rule, message string
	}{
		{"empty", " \n", 1, 1, "file.read", "the file is empty"},
		{"only a byte order mark", "\xef\xbb\xbf", 1, 1, "file.read", "the file is empty"},
		{"too large", strings.Repeat("#", spec.MaxSize+1), 1, 1, "file.read", "the file is over 1MiB, which no spec is"},
		{"not UTF-8", "a = 1\nb = \"\xff\"", 2, 6, "file.toml", "byte 0xff is not UTF-8; save the file as UTF-8"},
		{"a key twice", "a = 1\nb = 2\na = 3", 3, 1, "file.toml", "not TOML: Key 'a' has already been defined"},
		{"no value", "[a]\nb =\n", 2, 4, "file.toml", "not TOML: expected value but found '\\n' instead"},
		{"not a number", "[a]\nb = nan\n", 2, 5, "file.shape", "is not a finite number"},
		{"infinite", "a = [1.0, -inf]\n", 1, 11, "file.shape", "is not a finite number"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := spec.Parse("p", []byte(c.src))
			require.Len(t, problems, 1)
			assert.Equal(t, spec.Position{Line: c.line, Column: c.column}, problems[0].Position)
			assert.Equal(t, c.rule, problems[0].Rule)
			assert.Equal(t, c.message, problems[0].Message)
		})
	}
}

func TestFormatComesFirst(t *testing.T) {
	for src, want := range map[string]string{
		"a = 1":          "the format's version is missing; begin the file with dryfit = 1",
		"dryfit = \"1\"": "the format's version is a whole number; write dryfit = 1",
		"dryfit = 0":     "the format's version is a whole number; write dryfit = 1",
		"dryfit = 2":     "the file is written for format 2, and this version of dryfit reads format 1",
	} {
		d, problems := spec.Parse("p", []byte(src))
		require.Empty(t, problems)
		_, problem := spec.Format(d)
		require.NotNil(t, problem, src)
		assert.Equal(t, want, problem.Message)
	}
}

func TestBindTheExample(t *testing.T) {
	d, problems := spec.Parse(example, readExample(t))
	require.Empty(t, problems)
	s, err := spec.Bind(d.Tree)
	require.NoError(t, err)
	assert.Equal(t, "Reading room, Alder Quay library", s.Project.Title)
	assert.InDelta(t, 4.2, float64(s.Vault.Span), 1e-12)
	assert.Equal(t, 6, *s.Panels.Along)
	assert.InDelta(t, 0.36, float64(s.Strap.Stations[1]), 1e-12)
	assert.InDelta(t, 900, float64(s.Strap.Allowable.Load), 1e-9)
	assert.Equal(t, []int{3, 3}, s.Fitting[0].Coffer)
	assert.True(t, *s.Room.Framing.Blocking)
	assert.Len(t, s.Route, 3)
}

func TestWithLeavesTheTreeAlone(t *testing.T) {
	tree := map[string]any{"rib": map[string]any{"depth": "60mm"}, "route": []any{map[string]any{"width": "1m"}}}
	changed, ok := spec.With(tree, "route.1.width", "2m")
	require.True(t, ok)
	added, ok := spec.With(changed, "skin.sheet.bent", "1m")
	require.True(t, ok)
	v, _ := spec.Lookup(added, "route.1.width")
	assert.Equal(t, "2m", v)
	v, _ = spec.Lookup(added, "skin.sheet.bent")
	assert.Equal(t, "1m", v)
	v, _ = spec.Lookup(tree, "route.1.width")
	assert.Equal(t, "1m", v, "the first tree is as it was")
	_, ok = spec.With(tree, "route.2.width", "2m")
	assert.False(t, ok, "past the end of an array")
	_, ok = spec.With(tree, "rib.depth.of", "2m")
	assert.False(t, ok, "through a value")
}

func TestKeysRoundTrip(t *testing.T) {
	key := spec.Key("limit", "strap.load.share", "value")
	assert.Equal(t, `limit."strap.load.share".value`, key)
	assert.Equal(t, []string{"limit", "strap.load.share", "value"}, spec.SplitKey(key))
	assert.Equal(t, "route.2.width", spec.Key("route", 2, "width"))
	assert.Equal(t, `"2".x`, spec.Key("2", "x"))
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(tricky))
	f.Add(readExample(f))
	f.Add([]byte("a = [[[{b=[1]}]]]"))
	f.Add([]byte("[[a]]\n[a.b]\n[[a.b.c]]"))
	f.Add([]byte("a = nan"))
	f.Fuzz(func(t *testing.T, src []byte) {
		d, problems := spec.Parse("fuzz", src)
		for _, p := range problems {
			if p.Range.Start < 0 || p.Range.End > len(d.Source) || p.Range.Start > p.Range.End {
				t.Fatalf("a problem outside the file: %+v", p)
			}
		}
		if len(problems) > 0 {
			return
		}
		leaves(d.Tree, nil, func(key string, _ any) {
			if r := d.Locate(key); r.Start < 0 || r.End > len(d.Source) || r.Start > r.End {
				t.Fatalf("%s is outside the file: %v", key, r)
			}
		})
	})
}

func BenchmarkParse(b *testing.B) {
	src := readExample(b)
	for b.Loop() {
		if _, problems := spec.Parse("p", src); len(problems) > 0 {
			b.Fatal(problems)
		}
	}
}

// BenchmarkDecode is the bare decoding of the same file, to compare with.
func BenchmarkDecode(b *testing.B) {
	src := string(readExample(b))
	for b.Loop() {
		var tree map[string]any
		if _, err := toml.Decode(src, &tree); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBind(b *testing.B) {
	d, _ := spec.Parse("p", readExample(b))
	for b.Loop() {
		if _, err := spec.Bind(d.Tree); err != nil {
			b.Fatal(err)
		}
	}
}
