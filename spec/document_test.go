package spec_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/spec"
)

const example = "../docs/examples/alder-quay/specs/reading-room.ceiling.toml"

func readExample(t testing.TB) []byte {
	src, err := os.ReadFile(example)
	require.NoError(t, err)
	return src
}

// readFull reads a file that has every key of the format.
func readFull(t testing.TB) []byte {
	src, err := os.ReadFile("testdata/full.ceiling.toml")
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
		"full":    readFull(t),
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

func TestLocatePrefersATablesOwnHeader(t *testing.T) {
	d, problems := spec.Parse("p", []byte("[[rib.layer]]\ndepth = 1\n[ rib ]\nwidth = 2\n[\"2\"]\nx = 1\n"))
	require.Empty(t, problems)
	at := func(key string) spec.Position { return d.Position(d.Locate(key).Start) }
	assert.Equal(t, spec.Position{Line: 3, Column: 3}, at("rib.depth"))
	assert.Equal(t, spec.Position{Line: 1, Column: 7}, at("rib.layer.1.stock"))
	assert.Equal(t, spec.Position{Line: 5, Column: 2}, at(`"2".absent`), "a name of digits is not an element's number")
}

func TestPositionCountsCodePoints(t *testing.T) {
	d, problems := spec.Parse("p", []byte("a = \"é\" # …\nb = 1"))
	require.Empty(t, problems)
	assert.Equal(t, spec.Position{Line: 1, Column: 8}, d.Position(strings.Index("a = \"é\" #", " #")))
	assert.Equal(t, spec.Position{Line: 2, Column: 2}, d.Position(len(d.Source)-4))
	assert.Equal(t, spec.Position{Line: 2, Column: 6}, d.Position(len(d.Source)+1), "past the end is the end")
}

func TestPositionAgreesWithCounting(t *testing.T) {
	for size := range 1100 {
		src := []byte("# first\n# " + strings.Repeat("é", size))
		d, problems := spec.Parse("p", src)
		require.Empty(t, problems)
		require.Equal(t, spec.Position{Line: 2, Column: size + 3}, d.Position(len(src)))
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
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfN(rapid.String(), 1, 4).Draw(t, "names")
		parts := make([]any, len(names))
		for i, name := range names {
			parts[i] = name
		}
		if key := spec.Key(parts...); !slices.Equal(names, spec.SplitKey(key)) {
			t.Fatalf("%q is written %s and read as %q", names, key, spec.SplitKey(key))
		}
	})
}

func TestTimesKeepWhatWasWritten(t *testing.T) {
	for _, text := range []string{
		"2027-06-30", "10:20:30", "10:20:30.5", "2027-06-30T10:20:30.125", "2027-06-30T10:20:30Z", "2027-06-30T10:20:30.5+02:00",
	} {
		d, problems := spec.Parse("p", []byte("x = "+text))
		require.Empty(t, problems)
		assert.Equal(t, text, d.Tree["x"])
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(tricky))
	f.Add(readExample(f))
	f.Add(readFull(f))
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
		leaves(d.Tree, nil, func(key string, v any) {
			if r := d.Locate(key); r.Start < 0 || r.End > len(d.Source) || r.Start > r.End {
				t.Fatalf("%s is outside the file: %v", key, r)
			}
			r, written := d.ValueRange(key)
			if !written {
				return
			}
			again, problems := spec.Parse("again", []byte("x = "+string(d.Source[r.Start:r.End])))
			if len(problems) > 0 || !assert.ObjectsAreEqual(v, again.Tree["x"]) {
				t.Fatalf("%s is %v, but its place holds %q", key, v, d.Source[r.Start:r.End])
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
