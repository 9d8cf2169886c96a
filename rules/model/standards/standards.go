// Package standards holds the limits that a firm or a shop works to, as
// against the spec of one ceiling: figures set in place of the rules' own,
// severities, and what is taken for keys that a spec leaves out. They come in
// layers, the nearest first; the last layer is built in.
package standards

import (
	"fmt"

	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Origin says which file sets something, and on which line. The zero Origin is
// the program itself.
type Origin struct {
	File string
	Line int
}

// String is the place as errors print it, "dryfit.toml:12".
func (o Origin) String() string { return fmt.Sprintf("%s:%d", o.File, o.Line) }

// BuiltIn reports whether the program itself sets it.
func (o Origin) BuiltIn() bool { return o.File == "" }

// Limit is a figure set in place of a rule's own.
type Limit struct {
	Value  quantity.Value
	Source string
	Origin Origin
}

// Default is what is taken for a key that the spec leaves out.
type Default struct {
	Key    string // as in the spec
	Value  any    // as in a spec's tree
	Source string
	Origin Origin
	// Within, if set, is the table that must be present for the default to
	// apply: nothing is assumed of straps where no strap is specified.
	Within string
	// Where and Is, if set, are a key and the value that it must have.
	Where, Is string
}

// Standards is what one check works to.
type Standards struct {
	Name       string
	Files      []string            // nearest first; empty for the built-in alone
	Require    []Requirement       // what must be checked, and given
	Exclude    []Pattern           // of specs that are not checked
	Docs       string              // address of the docs, where a file gives it
	limits     map[string]Limit    // by rule and name: "bend.lamination.ratio"
	severities map[string]Severity // by rule
	holds      map[string]Origin   // rules whose hold may be accepted
	trials     *Trials             // nil where no file speaks of them
	defaults   []Default
	sheets     []timber.SheetMaterial
	species    []timber.Species
	materials  map[string]Origin   // of a firm's own, by name
	beyond     map[string][]Beyond // by name of a material
	order      *Order              // of changes, where a file sets it
	route      *Route              // nil where no file has one
	shop       map[string]Setting  // what files say of the shop, by key
}

// BuiltIn is the standards that hold where no file says otherwise.
func BuiltIn() *Standards {
	return &Standards{Name: "built-in standards", defaults: builtInDefaults()}
}

// Defaults lists what is taken for keys that a spec leaves out.
func (s *Standards) Defaults() []Default { return s.defaults }

// Limit is the figure that a file sets for the limit of a rule, by its full
// name.
func (s *Standards) Limit(name string) (Limit, bool) {
	l, ok := s.limits[name]
	return l, ok
}

// Assumed is a figure that the spec does not state.
type Assumed struct {
	Key    string
	Value  any // as in a spec's tree
	Source string
	Origin Origin
}

// Fill returns the tree of a spec with the defaults for what it leaves out,
// and what they were, in the order of the built-in table. The tree given is
// not changed.
func (s *Standards) Fill(tree map[string]any) (map[string]any, []Assumed) {
	var assumed []Assumed
	for _, d := range s.defaults {
		if !d.applies(tree) {
			continue
		}
		filled, ok := spec.With(tree, d.Key, d.Value)
		if !ok {
			continue
		}
		tree = filled
		assumed = append(assumed, Assumed{Key: d.Key, Value: d.Value, Source: d.Source, Origin: d.Origin})
	}
	return tree, assumed
}

func (d Default) applies(tree map[string]any) bool {
	if _, given := spec.Lookup(tree, d.Key); given {
		return false
	}
	if d.Within != "" {
		if _, ok := spec.Lookup(tree, d.Within); !ok {
			return false
		}
	}
	if d.Where != "" {
		if v, _ := spec.Lookup(tree, d.Where); v != d.Is {
			return false
		}
	}
	return true
}
