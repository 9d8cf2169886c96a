package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"dryfit/spec"
	"dryfit/spec/nearest"
	"dryfit/spec/quantity"
)

// node is a part of a schema, as far as messages and help need it.
type node struct {
	Title       string     `json:"title"`
	Description string     `json:"description"`
	Type        string     `json:"type"`
	Format      string     `json:"format"`
	Properties  properties `json:"properties"`
	Items       *node      `json:"items"`
	Enum        []any      `json:"enum"`
	Examples    []any      `json:"examples"`
	Required    []string   `json:"required"`
	Minimum     int        `json:"minimum"`
	Maximum     int        `json:"maximum"`
	MinItems    int        `json:"minItems"`
	MaxItems    int        `json:"maxItems"`
	// AllOf is what a table needs where its kind is one of several.
	AllOf []variant `json:"allOf"`
	// If and Else are of a table that needs the keys of one or of the other.
	If   keys `json:"if"`
	Else keys `json:"else"`
}

type keys struct {
	Required []string `json:"required"`
}

type variant struct {
	If struct {
		Properties struct {
			Kind struct {
				Const string `json:"const"`
			} `json:"kind"`
		} `json:"properties"`
	} `json:"if"`
	Then keys `json:"then"`
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

// child is the part for a key of a table or for an element of an array; nil
// where the schema knows none.
func (n *node) child(name string) *node {
	switch {
	case n == nil:
		return nil
	case n.Items != nil:
		return n.Items
	default:
		return n.Properties.nodes[name]
	}
}

// meaning is the description without how its format is written.
func (n *node) meaning() string {
	return strings.TrimSuffix(n.Description, " "+formats[n.Format].written)
}

// Property is one key of a spec.
type Property struct {
	Path        string // dotted; an element of an array is a *: "route.*.width"
	Title       string
	Description string        // what it means, and what holds where it is absent
	Type        string        // "string", "integer", "boolean", "object", "array"; "" of one with Enum
	Format      string        // of a string that is a quantity, a stock or a date, else ""
	Unit        quantity.Unit // of a quantity, else zero
	Enum        []string      // the words that it may be, if only some
	Examples    []any         // values as JSON has them
	Required    bool          // in the table that it is in
	// Element is one of a list of texts or numbers: "strap.stations.*".
	Element *Property
}

// Properties lists every key of a spec, in the order of the schema.
func Properties() []Property { return specShape().Properties() }

// Properties lists every key of the files of a shape, in the order of the
// schema.
func (s *Shape) Properties() []Property {
	var out []Property
	var walk func(path string, n *node)
	walk = func(path string, n *node) {
		for _, name := range n.Properties.names {
			child := n.Properties.nodes[name]
			p := child.property(strings.TrimPrefix(path+"."+spec.Key(name), "."))
			p.Required = slices.Contains(n.Required, name)
			if i := child.Items; i != nil && len(i.Properties.names) == 0 {
				element := i.property(p.Path + ".*")
				p.Element = &element
			}
			out = append(out, p)
			walk(p.Path, child)
			if child.Items != nil {
				walk(p.Path+".*", child.Items)
			}
		}
	}
	walk("", s.tree())
	return out
}

// PropertyAt is what the format says of a key, whichever elements of lists it leads
// through. Of a key that there is not the error names the nearest of those that may be
// meant, or of all without a choice of them.
func PropertyAt(key string, meant func(Property) bool) (Property, error) {
	parts := spec.SplitKey(key)
	for i, part := range parts {
		if _, err := strconv.Atoi(part); err == nil {
			parts[i] = "*"
		}
	}
	path := strings.Join(parts, ".")
	var known []string
	for _, p := range Properties() {
		if p.Element != nil && p.Element.Path == path {
			p = *p.Element
		}
		if p.Path == path {
			return p, nil
		}
		if meant == nil || meant(p) {
			known = append(known, p.Path)
		}
	}
	if near, ok := nearest.Word(path, known); ok {
		return Property{}, fmt.Errorf("there is no key %s; is it %s?", key, near)
	}
	return Property{}, fmt.Errorf("there is no key %s", key)
}

func (n *node) property(path string) Property {
	p := Property{
		Path: path, Title: n.Title, Description: n.meaning(), Type: n.Type, Format: n.Format,
		Unit: formats[n.Format].unit, Examples: n.Examples,
	}
	for _, v := range n.Enum {
		p.Enum = append(p.Enum, v.(string))
	}
	return p
}
