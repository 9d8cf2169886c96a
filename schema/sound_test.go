package schema

import (
	"encoding/json"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec"
	"dryfit/spec/quantity"
)

// everySketch visits a sketch and all of its parts.
func everySketch(s *sketch, path string, visit func(string, *sketch)) {
	if s == nil {
		return
	}
	visit(path, s)
	for name, part := range s.parts {
		everySketch(part, path+"."+name, visit)
	}
	for _, part := range append([]*sketch{s.items, s.condition, s.then, s.otherwise}, s.all...) {
		everySketch(part, path+".*", visit)
	}
}

func exampleStandards() *Shape {
	return StandardsShape(Known{
		Limits: []KnownLimit{{Name: "a.b.c", Title: "t", Unit: quantity.One}},
		Rules:  []KnownRule{{ID: "a.b", Title: "t"}},
	})
}

// A keyword that the sketch does not know would send every file to the
// validator, which is slow and nothing else.
func TestTheSketchKnowsEveryKeywordOfOurSchemas(t *testing.T) {
	for _, shape := range []*Shape{specShape(), exampleStandards()} {
		everySketch(shape.sketch(), "", func(path string, s *sketch) { assert.False(t, s.unsure, path) })
	}
}

func TestTheSketchIsUnsureOfWhatItDoesNotKnow(t *testing.T) {
	for _, text := range []string{
		`{"pattern": "x"}`, `{"oneOf": []}`, `{"type": ["string", "null"]}`, `{"additionalProperties": {"type": "string"}}`,
		`{"format": "email"}`, `{"minimum": "1"}`, `{"multipleOf": 2}`, `{"enum": "a"}`, `{"required": [1]}`,
	} {
		var decoded any
		require.NoError(t, json.Unmarshal([]byte(text), &decoded))
		assert.Equal(t, unsure, sketchOf(decoded).says("x"), text)
	}
	number := sketchOf(object{"type": "number"})
	for _, v := range []any{math.NaN(), math.Inf(1), int64(math.MaxInt64), struct{}{}} {
		assert.NotEqual(t, yes, number.says(v), "%v", v)
	}
	assert.Equal(t, unsure, sketchOf(object{"type": "integer"}).says(6.0))
	assert.Equal(t, yes, sketchOf(true).says("x"))
	assert.Equal(t, no, sketchOf(false).says("x"))
}

// agrees fails where the sketch passes what the validator, the judge of record,
// refuses.
func agrees(t *testing.T, shape *Shape, d *spec.Document) {
	t.Helper()
	refused := shape.schema().Validate(d.Tree)
	if shape.sketch().says(d.Tree) == yes && refused != nil {
		t.Fatalf("the sketch passes what the validator refuses: %v", refused)
	}
}

func seeds(f *testing.F) {
	for _, pattern := range []string{"testdata/good/*", "testdata/bad/*", "../docs/examples/*/*.toml", "../docs/examples/*/specs/*"} {
		files, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, file := range files {
			src, err := os.ReadFile(file)
			require.NoError(f, err)
			f.Add(src)
		}
	}
	f.Add([]byte("dryfit = 1\nname = \"s\"\n[limit]\n\"a.b.c\" = { value = 2, source = \"x\" }\n[severity]\n\"a.b\" = \"note\"\n[accept]\nholds = [\"a.b\"]\n"))
}

func FuzzSketch(f *testing.F) {
	seeds(f)
	standards := exampleStandards()
	f.Fuzz(func(t *testing.T, src []byte) {
		d, problems := spec.Parse("fuzz", src)
		if len(problems) > 0 {
			return
		}
		agrees(t, specShape(), d)
		agrees(t, standards, d)
	})
}

// Most sound files never reach the validator.
func TestTheSketchPassesTheGoodFiles(t *testing.T) {
	files, err := filepath.Glob("testdata/good/*")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		d, problems := spec.Parse(file, src)
		require.Empty(t, problems)
		assert.Equal(t, yes, specShape().sketch().says(d.Tree), file)
	}
}

// changed is a copy of a value with one place of it changed: another value put
// there, a key taken away, or a key added.
func changed(random *rand.Rand, v any) any {
	odd := []any{
		"", "x", "90mm", "-1mm", "0mm", "35%", "half", "door", int64(0), int64(1), int64(-3), int64(99), 0.5, 6.0,
		true,
		[]any{},
		[]any{"10%", "x"},
		map[string]any{},
		map[string]any{"width": "1mm"},
		"2027-06-30",
	}
	switch v := v.(type) {
	case map[string]any:
		names := slices.Sorted(maps.Keys(v))
		out := maps.Clone(v)
		switch n := random.IntN(8); {
		case n == 0:
			out["stray"] = odd[random.IntN(len(odd))]
		case n == 1 && len(names) > 0:
			delete(out, names[random.IntN(len(names))])
		case len(names) > 0:
			name := names[random.IntN(len(names))]
			out[name] = changed(random, v[name])
		}
		return out
	case []any:
		if len(v) > 0 && random.IntN(4) > 0 {
			out := slices.Clone(v)
			i := random.IntN(len(v))
			out[i] = changed(random, v[i])
			return out
		}
	}
	return odd[random.IntN(len(odd))]
}

// Over specs with one to three values changed the sketch passes nothing that the
// validator refuses, and of what it says no, the validator says no.
func TestTheSketchAgreesWithTheValidator(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 27))
	files, err := filepath.Glob("testdata/good/*")
	require.NoError(t, err)
	answers := map[answer]int{}
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		d, problems := spec.Parse(file, src)
		require.Empty(t, problems)
		for range 400 {
			var tree any = d.Tree
			for range 1 + random.IntN(3) {
				tree = changed(random, tree)
			}
			refused := specShape().schema().Validate(tree) != nil
			says := specShape().sketch().says(tree)
			answers[says]++
			if says == yes && refused || says == no && !refused {
				t.Fatalf("%s: the sketch says %v of what the validator refuses: %v\n%v", file, says, refused, tree)
			}
			if beside := specShape().sketch().beside(tree, d.Tree); beside != says {
				t.Fatalf("%s: beside the sound file the sketch says %v, and %v without it\n%v", file, beside, says, tree)
			}
		}
	}
	assert.Greater(t, answers[yes], 50)
	assert.Greater(t, answers[no], 500)
}
