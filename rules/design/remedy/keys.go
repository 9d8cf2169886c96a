package remedy

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"dryfit/rules/model/standards"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/nearest"
)

// fixed is what a search leaves alone unless it is named: the room, the way in
// and the curve, which the building and the design give; and facts, which do
// not change by being written otherwise. A table stands for all that is in it.
var fixed = []string{
	"dryfit", "project", "align", "accept",
	"room", "route", "survey",
	"vault.profile", "vault.span", "vault.rise", "vault.radius", "vault.crown_radius", "vault.haunch_radius",
	"climate.dry", "climate.wet", "climate.above", "strap.allowable", "strap.material", "strap.hung",
	"lift.units", "lift.capacity", "lift.reach", "lift.stowed", "lift.base",
	"fitting.*.name", "fitting.*.kind", "fitting.*.coffer", "fitting.*.size",
}

// allowed is which keys a search may change.
type allowed struct{ named []string }

// allow reads the keys that a designer names; without any, all but the fixed.
func allow(named []string) (allowed, error) {
	var known []string
	for _, p := range schema.Properties() {
		known = append(known, p.Path)
	}
	for _, key := range named {
		if key == "dryfit" || under(key, "project") || under(key, "accept") {
			return allowed{}, fmt.Errorf("%s does not change what is built", key)
		}
		if !slices.Contains(known, strings.TrimSuffix(pattern(key), ".*")) {
			return allowed{}, fmt.Errorf("there is no key %s%s", key, suggestion(key, known))
		}
	}
	return allowed{named}, nil
}

func suggestion(key string, known []string) string {
	if near, ok := nearest.Word(key, known); ok {
		return "; is it " + near + "?"
	}
	return ""
}

func (a allowed) key(key string) bool {
	if len(a.named) == 0 {
		return !slices.ContainsFunc(fixed, func(f string) bool { return under(pattern(key), f) })
	}
	return slices.ContainsFunc(a.named, func(n string) bool { return under(key, n) || under(pattern(key), n) })
}

// under reports whether a key is a table or in it.
func under(key, table string) bool {
	return key == table || strings.HasPrefix(key, table+".")
}

// pattern is a key as the schema lists it: the number of an element is a *.
func pattern(key string) string {
	parts := strings.Split(key, ".")
	for i, p := range parts {
		if _, err := strconv.Atoi(p); err == nil {
			parts[i] = "*"
		}
	}
	return strings.Join(parts, ".")
}

// base is the spec as it stands, with what is taken for the keys that it
// leaves out.
type base struct {
	tree    map[string]any
	assumed []standards.Assumed
}

// now is the value of a key, stated or assumed.
func (b base) now(key string) (value any, assumed, ok bool) {
	if v, ok := spec.Lookup(b.tree, key); ok {
		return v, false, true
	}
	for _, a := range b.assumed {
		if a.Key == key {
			return a.Value, true, true
		}
		if table, isTable := a.Value.(map[string]any); isTable && under(key, a.Key) {
			v, ok := spec.Lookup(table, strings.TrimPrefix(key, a.Key+"."))
			return v, true, ok
		}
	}
	return nil, false, false
}

// with is a tree in which a key has a value. What is assumed for the rest of
// its table is stated with it, since a part of a table is not assumed.
func (b base) with(tree map[string]any, key string, value any) (map[string]any, bool) {
	if whole := b.whole(key); whole != key {
		if _, stated := spec.Lookup(tree, whole); !stated {
			v, _, _ := b.now(whole)
			filled, ok := spec.With(tree, whole, v)
			if !ok {
				return tree, false
			}
			tree = filled
		}
	}
	return spec.With(tree, key, value)
}

// whole is what has to be written for a key to be stated: the table that is
// assumed as one where the spec leaves it out, else the key itself.
func (b base) whole(key string) string {
	for _, a := range b.assumed {
		if _, isTable := a.Value.(map[string]any); isTable && key != a.Key && under(key, a.Key) {
			return a.Key
		}
	}
	return key
}
