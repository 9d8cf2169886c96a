// Package schema publishes the JSON Schemas of the files that dryfit reads and
// writes, and says in sentences what is wrong with the shape of a spec.
package schema

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/spec"
)

//go:embed spec.schema.json
var specSchema []byte

//go:embed output.schema.json
var outputSchema []byte

//go:embed compare.schema.json
var compareSchema []byte

// SpecSchema is the JSON Schema of a spec, as it is published.
func SpecSchema() []byte { return withPatterns(specSchema) }

// OutputSchema is the JSON Schema of what check --format json writes.
func OutputSchema() []byte { return bytes.Clone(outputSchema) }

// CompareSchema is the JSON Schema of what compare --format json writes.
func CompareSchema() []byte { return bytes.Clone(compareSchema) }

// Shape checks files of one kind against their schema. The sketch says of most
// sound files that they are; the validator judges the rest, and is compiled when
// the first of these comes.
type Shape struct {
	sketch func() *sketch
	schema func() *jsonschema.Schema
	tree   func() *node
}

// newShape is that of a schema of ours, as text and as decoded; an error in it
// is a mistake in this program.
func newShape(id string, text func() []byte, decoded func() object) *Shape {
	return &Shape{
		sketch: sync.OnceValue(func() *sketch { return sketchOf(decoded()) }),
		schema: sync.OnceValue(func() *jsonschema.Schema { return compiled(id, text()) }),
		tree: sync.OnceValue(func() *node {
			tree := new(node)
			if err := json.Unmarshal(text(), tree); err != nil {
				panic(err)
			}
			return tree
		}),
	}
}

// compiled is a schema for the validator.
func compiled(id string, text []byte) *jsonschema.Schema {
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.AssertFormat = true
	for name, f := range formats {
		c.Formats[name] = func(v any) bool {
			text, ok := v.(string)
			return !ok || f.check(text) == nil
		}
	}
	if err := c.AddResource(id, bytes.NewReader(text)); err != nil {
		panic(err)
	}
	return c.MustCompile(id)
}

// decodedSpec is the schema of a spec, which nobody may change.
var decodedSpec = sync.OnceValue(func() object {
	var root object
	if err := json.Unmarshal(specSchema, &root); err != nil {
		panic(err)
	}
	return root
})

// specShape is that of a spec.
var specShape = sync.OnceValue(func() *Shape {
	return newShape("https://dryfit.example/schema/spec-1.json", func() []byte { return specSchema }, decodedSpec)
})

// Check says what is wrong with the shape of a spec: each mistake once, at its
// place, in the order of the file.
func Check(d *spec.Document) []spec.Problem { return specShape().Check(d) }
