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

// Shape checks files of one kind against their schema.
type Shape struct {
	schema *jsonschema.Schema
	tree   *node
}

// newShape compiles a schema of ours; an error in it is a mistake in this
// program.
func newShape(id string, text []byte) *Shape {
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
	s := &Shape{schema: c.MustCompile(id), tree: new(node)}
	if err := json.Unmarshal(text, s.tree); err != nil {
		panic(err)
	}
	return s
}

// specShape is that of a spec.
var specShape = sync.OnceValue(func() *Shape {
	return newShape("https://dryfit.example/schema/spec-1.json", specSchema)
})

// Check says what is wrong with the shape of a spec: each mistake once, at its
// place, in the order of the file.
func Check(d *spec.Document) []spec.Problem { return specShape().Check(d) }
