package schema_test

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// described walks the parts of a JSON Schema that an editor shows help for.
func described(t *testing.T, text []byte, visit func(path string, part map[string]any)) {
	var root map[string]any
	require.NoError(t, json.Unmarshal(text, &root))
	var walk func(path string, part map[string]any)
	walk = func(path string, part map[string]any) {
		visit(path, part)
		keys, _ := part["properties"].(map[string]any)
		for name, p := range keys {
			walk(strings.TrimPrefix(path+"."+spec.Key(name), "."), p.(map[string]any))
		}
		if items, ok := part["items"].(map[string]any); ok {
			walk(path+".*", items)
		}
	}
	walk("", root)
}

// known is a catalogue with a limit of every unit that a limit may have.
func known() schema.Known {
	k := schema.Known{Rules: []schema.KnownRule{
		{ID: "a.rule", Title: "it fits"},
		{ID: "b.rule", Title: "someone else decides", Refers: true},
	}}
	for _, u := range []quantity.Unit{
		quantity.One, quantity.Metre, quantity.Kilogram, quantity.Newton, quantity.Pascal, quantity.Radian,
		quantity.Fraction, quantity.Hour,
	} {
		k.Limits = append(k.Limits, schema.KnownLimit{Name: "a.rule.n" + strconv.Itoa(int(u)), Title: "the least", Unit: u})
	}
	return k
}

func TestEveryKeyHasATitleAndADescription(t *testing.T) {
	texts := map[string][]byte{"spec": schema.SpecSchema(), "standards": schema.StandardsSchema(known())}
	for _, o := range schema.Outputs() {
		texts[o.Name] = o.Text()
	}
	for name, text := range texts {
		count := 0
		described(t, text, func(path string, part map[string]any) {
			count++
			title, _ := part["title"].(string)
			description, _ := part["description"].(string)
			assert.NotEmpty(t, title, "%s %s", name, path)
			assert.True(t, strings.HasSuffix(description, "."), "%s %s: %q", name, path, description)
		})
		assert.Greater(t, count, 12, name)
	}
}

// In the published schema how a value is written ends its description; beside
// a format that says so it is left off.
func TestDescriptionsSayHowAValueIsWritten(t *testing.T) {
	published := map[string]string{}
	described(t, schema.SpecSchema(), func(path string, part map[string]any) {
		published[path] = part["description"].(string)
	})
	for _, p := range schema.Properties() {
		meaning, form, _ := strings.Cut(published[p.Path], p.Description)
		assert.Empty(t, meaning, p.Path)
		assert.Equal(t, p.Format != "", form != "", "%s: %q", p.Path, form)
	}
}

// everyKey is a document with every key in it.
const everyKey = "testdata/good/every-key.ceiling.toml"

// place is where a path with stars stands in a tree.
func place(t *testing.T, d *spec.Document, path string) string {
	key, found := placed(d, path)
	require.True(t, found, "%s has no %s", d.Path, path)
	return key
}

func placed(d *spec.Document, path string) (string, bool) {
	for i := 1; i <= 8; i++ {
		key := strings.Replace(path, "*", strconv.Itoa(i), 1)
		key = strings.ReplaceAll(key, "*", "1")
		if _, found := spec.Lookup(d.Tree, key); found {
			return key, true
		}
	}
	return "", false
}

// with is a copy of a document with another value at a key.
func with(t *testing.T, d *spec.Document, key string, value any) *spec.Document {
	tree, ok := spec.With(d.Tree, key, value)
	require.True(t, ok, key)
	changed := *d
	changed.Tree = tree
	return &changed
}

// tomlValue is a value of JSON as a document has it.
func tomlValue(v any) any {
	switch v := v.(type) {
	case float64:
		return int64(v)
	case []any:
		out := make([]any, len(v))
		for i, x := range v {
			out[i] = tomlValue(x)
		}
		return out
	default:
		return v
	}
}

// Whatever an editor offers is taken: each example, each word, each unit that
// a description names. Another unit is refused.
func TestWhatTheSchemaOffersIsTaken(t *testing.T) {
	unitsOf := regexp.MustCompile(`with its unit: ([^.;]+)`)
	d := parse(t, everyKey)
	described(t, schema.SpecSchema(), func(path string, part map[string]any) {
		if path == "" || path == "route.*.kind" { // another kind needs other keys
			return
		}
		key := place(t, d, path)
		examples, _ := part["examples"].([]any)
		if part["format"] != nil {
			assert.NotEmpty(t, examples, path)
		}
		words, _ := part["enum"].([]any)
		offers := append(examples, words...)
		if m := unitsOf.FindStringSubmatch(part["description"].(string)); m != nil {
			for _, unit := range strings.Split(strings.ReplaceAll(m[1], " or ", ", "), ", ") {
				offers = append(offers, "1"+unit)
			}
			assert.NotEmpty(t, schema.Check(with(t, d, key, "1furlong")), path)
		}
		for _, v := range offers {
			assert.Empty(t, schema.Check(with(t, d, key, tomlValue(v))), "%s = %v", path, v)
		}
	})
}

// Without any one of the required keys a document lacks just that.
func TestRequiredKeysAreMissed(t *testing.T) {
	for _, p := range schema.Properties() {
		if !p.Required {
			continue
		}
		d := parse(t, everyKey)
		key := place(t, d, p.Path)
		names := spec.SplitKey(key)
		table := any(d.Tree)
		if len(names) > 1 {
			table, _ = spec.Lookup(d.Tree, strings.Join(names[:len(names)-1], "."))
		}
		delete(table.(map[string]any), names[len(names)-1])
		problems := schema.Check(d)
		require.Len(t, problems, 1, p.Path)
		assert.Equal(t, key, problems[0].Key)
		assert.Contains(t, problems[0].Message, "is missing: ")
	}
}

// Whatever stands in the place of one value is one mistake, at its key, unless
// it is of the key's own type.
func TestOneMistakeGivesOneMessage(t *testing.T) {
	values := map[string]any{"boolean": true, "integer": int64(7), "number": 7.5, "string": "~", "array": []any{}}
	good := parse(t, everyKey)
	for _, p := range schema.Properties() {
		key := place(t, good, p.Path)
		mistakes := map[string]*spec.Document{} // by where each is
		for kind, value := range values {
			if kind != p.Type || p.Format != "" || kind == "array" {
				mistakes[key+" "+kind] = with(t, good, key, value)
			}
		}
		if p.Type == "object" {
			mistakes[key+`."~"`] = with(t, good, key+".~", "x")
		}
		for at, d := range mistakes {
			problems := schema.Check(d)
			if assert.Len(t, problems, 1, "%s: %v", at, problems) {
				assert.Equal(t, strings.Fields(at)[0], problems[0].Key)
			}
		}
	}
}

// A key leads through elements of lists by their numbers; of one that there is not the
// nearest of those that may be meant is named.
func TestPropertyAt(t *testing.T) {
	for key, path := range map[string]string{
		"grid.along": "grid.along", "route.2.door.width": "route.*.door.width", "strap.stations.1": "strap.stations.*",
	} {
		p, err := schema.PropertyAt(key, nil)
		require.NoError(t, err)
		assert.Equal(t, path, p.Path)
	}
	_, err := schema.PropertyAt("edge.covr", nil)
	assert.EqualError(t, err, "there is no key edge.covr; is it edge.cover?")
	_, err = schema.PropertyAt("edge.covr", func(schema.Property) bool { return false })
	assert.EqualError(t, err, "there is no key edge.covr")
}
