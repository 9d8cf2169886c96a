// Package schema publishes the JSON Schemas of the files that dryfit reads and
// writes, and says in sentences what is wrong with the shape of a spec.
package schema

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/spec"
	"dryfit/spec/quantity"
)

//go:embed spec.schema.json
var specSchema []byte

//go:embed output.schema.json
var outputSchema []byte

// SpecSchema is the JSON Schema of a spec.
func SpecSchema() []byte { return bytes.Clone(specSchema) }

// OutputSchema is the JSON Schema of what check --format json writes.
func OutputSchema() []byte { return bytes.Clone(outputSchema) }

// formats are our own: each says what is wrong with a text.
var formats = map[string]func(string) error{
	"length":        sized(quantity.Metre, "must be greater than zero", func(v float64) bool { return v > 0 }),
	"length-zero":   sized(quantity.Metre, "must not be negative", func(v float64) bool { return v >= 0 }),
	"length-signed": sized(quantity.Metre, "", nil),
	"mass":          sized(quantity.Kilogram, "must be greater than zero", func(v float64) bool { return v > 0 }),
	"force":         sized(quantity.Newton, "must be greater than zero", func(v float64) bool { return v > 0 }),
	"density":       sized(quantity.KilogramPerCubicMetre, "must be greater than zero", func(v float64) bool { return v > 0 }),
	"temperature":   sized(quantity.Celsius, "is below absolute zero", func(v float64) bool { return v > -273.15 }),
	"share":         sized(quantity.Fraction, "must be from 0% to 100%", func(v float64) bool { return v >= 0 && v <= 1 }),
	"humidity":      sized(quantity.Fraction, "must be from 0% to 100%", func(v float64) bool { return v >= 0 && v <= 1 }),
	"stress":        sized(quantity.Pascal, "must be greater than zero", func(v float64) bool { return v > 0 }),
	"angle":         sized(quantity.Radian, "", nil),
	"hours":         sized(quantity.Hour, "must not be negative", func(v float64) bool { return v >= 0 }),
	"stock":         func(s string) error { _, err := quantity.Stock(s).Quarters(); return err },
}

// unitOf is the unit of a format that is a quantity.
var unitOf = map[string]quantity.Unit{
	"length": quantity.Metre, "length-zero": quantity.Metre, "length-signed": quantity.Metre,
	"mass": quantity.Kilogram, "force": quantity.Newton, "density": quantity.KilogramPerCubicMetre,
	"temperature": quantity.Celsius, "share": quantity.Fraction, "humidity": quantity.Fraction,
	"stress": quantity.Pascal, "angle": quantity.Radian, "hours": quantity.Hour,
}

type boundError string

func (e boundError) Error() string { return string(e) }

// greatest is past any size of a building, a load or a temperature in SI. It
// keeps what is worked out from a spec finite.
const greatest = 1e12

func sized(u quantity.Unit, otherwise string, fits func(float64) bool) func(string) error {
	return func(text string) error {
		v, err := quantity.Parse(u, text)
		switch {
		case err != nil:
			return err
		case !(v.SI < greatest && v.SI > -greatest):
			return boundError("is past anything physical")
		case fits != nil && !fits(v.SI):
			return boundError(otherwise)
		default:
			return nil
		}
	}
}

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
	for name, check := range formats {
		c.Formats[name] = func(v any) bool {
			text, ok := v.(string)
			return !ok || check(text) == nil
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

// node is a part of a schema, as far as messages and help need it.
type node struct {
	Title       string     `json:"title"`
	Description string     `json:"description"`
	Type        string     `json:"type"`
	Format      string     `json:"format"`
	Properties  properties `json:"properties"`
	Items       *node      `json:"items"`
	Enum        []any      `json:"enum"`
	Required    []string   `json:"required"`
	Minimum     int        `json:"minimum"`
	Maximum     int        `json:"maximum"`
	MinItems    int        `json:"minItems"`
	MaxItems    int        `json:"maxItems"`
	AllOf       []variant  `json:"allOf"`
	Else        *struct {
		Required []string `json:"required"`
	} `json:"else"`
}

// variant is what a table needs where its kind is one of several.
type variant struct {
	If struct {
		Properties struct {
			Kind struct {
				Const string `json:"const"`
			} `json:"kind"`
		} `json:"properties"`
	} `json:"if"`
	Then struct {
		Required []string `json:"required"`
	} `json:"then"`
}

// properties keeps the order of the schema.
type properties struct {
	names []string
	nodes map[string]*node
}

// UnmarshalJSON implements json.Unmarshaler.
func (p *properties) UnmarshalJSON(data []byte) error {
	if err := json.Unmarshal(data, &p.nodes); err != nil {
		return err
	}
	d := json.NewDecoder(bytes.NewReader(data))
	if _, err := d.Token(); err != nil {
		return err
	}
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return err
		}
		p.names = append(p.names, name.(string))
		var skipped json.RawMessage
		if err := d.Decode(&skipped); err != nil {
			return err
		}
	}
	return nil
}

// Property is one key of a spec.
type Property struct {
	Path        string // dotted; an element of an array is a *: "route.*.width"
	Title       string
	Description string
	Type        string   // "string", "integer", "boolean", "object", "array"
	Format      string   // of a string that is a quantity, else ""
	Enum        []string // the words that it may be, if only some
	Required    bool     // in the table that it is in
}

// Properties lists every key of a spec, in the order of the schema.
func Properties() []Property {
	var out []Property
	var walk func(path string, n *node)
	walk = func(path string, n *node) {
		for _, name := range n.Properties.names {
			child := n.Properties.nodes[name]
			p := Property{
				Path: strings.TrimPrefix(path+"."+name, "."), Title: child.Title, Description: child.Description,
				Type: child.Type, Format: child.Format,
			}
			for _, v := range child.Enum {
				p.Enum = append(p.Enum, v.(string))
			}
			for _, r := range n.Required {
				p.Required = p.Required || r == name
			}
			out = append(out, p)
			walk(p.Path, child)
			if child.Items != nil {
				walk(p.Path+".*", child.Items)
			}
		}
	}
	walk("", specShape().tree)
	return out
}
