package schema_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/schema"
	"dryfit/spec"
)

// judged is one line of the list of quantities.
type judged struct {
	format, text string
	good         bool
}

func quantities(t *testing.T) []judged {
	src, err := os.ReadFile("testdata/quantities.txt")
	require.NoError(t, err)
	var out []judged
	format := ""
	for line := range strings.Lines(string(src)) {
		line = strings.TrimRight(line, "\n")
		text, good := strings.CutPrefix(line, "+ ")
		bad := false
		if !good {
			text, bad = strings.CutPrefix(line, "- ")
		}
		switch {
		case strings.HasPrefix(line, "["):
			format = strings.Trim(line, "[]")
		case good || bad:
			out = append(out, judged{format, text, good})
		default:
			require.True(t, line == "" || line[0] == '#', line)
		}
	}
	return out
}

// holder is a key of a format: its part of the published schema, and a document
// to put a value into.
type holder struct {
	part  map[string]any
	plain *jsonschema.Schema // the part, to a validator of Go that knows none of our formats
	key   string
	doc   *spec.Document
	check func(*spec.Document) []spec.Problem
}

const someStandards = `dryfit = 1
name   = "x"
[limit]
"a.rule.n5" = { value = "1Pa", source = "x" }
"a.rule.n8" = { value = "1rad", source = "x" }
"a.rule.n15" = { value = "1h", source = "x" }
[[material]]
name = "y"
kind = "sheet"
source = "x"
density = "1kg/m3"
`

// holders are one key of each format, of a spec where it has one and else of a
// standards file. Every text of a format that either schema has is looked at.
func holders(t *testing.T) map[string]holder {
	out := map[string]holder{}
	add := func(doc *spec.Document, check func(*spec.Document) []spec.Problem, text []byte) {
		described(t, text, func(path string, part map[string]any) {
			format, _ := part["format"].(string)
			pattern, _ := part["pattern"].(string)
			assert.Equal(t, format != "" && format != "date", pattern != "", path)
			key, there := placed(doc, path)
			if _, had := out[format]; pattern != "" && there && !had {
				out[format] = holder{part, compiled(t, part), key, doc, check}
			}
		})
	}
	add(parse(t, everyKey), schema.Check, schema.SpecSchema())
	d, err := spec.Parse("dryfit.toml", []byte(someStandards))
	require.Empty(t, err)
	add(d, schema.StandardsShape(known()).Check, schema.StandardsSchema(known()))
	return out
}

func compiled(t *testing.T, part map[string]any) *jsonschema.Schema {
	text, err := json.Marshal(part)
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	require.NoError(t, c.AddResource("part.json", bytes.NewReader(text)))
	s, err := c.Compile("part.json")
	require.NoError(t, err)
	return s
}

// The program, a validator of Go and one of ECMAScript judge a hundred good
// quantities and a hundred bad ones alike.
func TestGeneralValidatorsJudgeQuantitiesAsWeDo(t *testing.T) {
	keys, list, count := holders(t), quantities(t), map[bool]int{}
	type question struct {
		Schema map[string]any `json:"schema"`
		Text   string         `json:"text"`
	}
	var questions []question
	for _, q := range list {
		h, ok := keys[q.format]
		require.True(t, ok, "no key has the format %q", q.format)
		count[q.good]++
		ours := h.check(with(t, h.doc, h.key, q.text))
		assert.Equal(t, q.good, len(ours) == 0, "%s %q: %v", q.format, q.text, ours)
		err := h.plain.Validate(q.text)
		assert.Equal(t, q.good, err == nil, "%s %q: %v", q.format, q.text, err)
		questions = append(questions, question{h.part, q.text})
	}
	assert.GreaterOrEqual(t, count[true], 100)
	assert.GreaterOrEqual(t, count[false], 100)
	text, err := json.Marshal(questions)
	require.NoError(t, err)
	var theirs []bool
	require.NoError(t, json.Unmarshal(script(t, text, "quantities.mjs"), &theirs))
	require.Len(t, theirs, len(list))
	for i, q := range list {
		assert.Equal(t, q.good, theirs[i], "%s %q by ajv", q.format, q.text)
	}
}

// script runs one of the validators' scripts on an input.
func script(t *testing.T, input []byte, name string) []byte {
	c := command(t, name)
	c.Stdin, c.Stderr = bytes.NewReader(input), os.Stderr
	out, err := c.Output()
	require.NoError(t, err)
	return out
}

// What only the program refuses, since a pattern compares no numbers.
func TestWhatPatternsDoNotSay(t *testing.T) {
	keys := holders(t)
	for _, q := range []judged{
		{format: "length", text: `9 11/8"`},
		{format: "length", text: "20000m"},
		{format: "length", text: "1e-9m"},
		{format: "length", text: strings.Repeat("1", 41) + "mm"},
		{format: "temperature", text: "-300C"},
		{format: "share", text: "2e2%"},
	} {
		h := keys[q.format]
		assert.NotEmpty(t, h.check(with(t, h.doc, h.key, q.text)), q.text)
		assert.NoError(t, h.plain.Validate(q.text), q.text)
	}
}

// The schema that runs with every check has no patterns: a fault is told once,
// in words.
func TestAFaultOfAQuantityIsToldOnce(t *testing.T) {
	d := parse(t, everyKey)
	problems := schema.Check(with(t, d, "room.width", "90"))
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].Message, "no unit")
	unpublished, err := os.ReadFile("spec.schema.json")
	require.NoError(t, err)
	assert.NotContains(t, string(unpublished), `"pattern"`)
}
