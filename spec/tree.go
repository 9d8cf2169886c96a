package spec

import (
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"dryfit/spec/record"
)

// Lookup returns the value at a key of a normalised tree.
func Lookup(tree map[string]any, key string) (any, bool) {
	var at any = tree
	if strings.Contains(key, `"`) {
		for _, part := range SplitKey(key) {
			v, ok := within(at, part)
			if !ok {
				return nil, false
			}
			at = v
		}
		return at, true
	}
	for more := true; more; { // without a list of the parts
		var part string
		part, key, more = strings.Cut(key, ".")
		v, ok := within(at, part)
		if !ok {
			return nil, false
		}
		at = v
	}
	return at, true
}

// within is what a table has at a name, or an array at the number of an element.
func within(in any, part string) (v any, ok bool) {
	switch in := in.(type) {
	case map[string]any:
		v, ok = in[part]
	case []any:
		n, err := strconv.Atoi(part)
		if err == nil && n >= 1 && n <= len(in) {
			return in[n-1], true
		}
	}
	return v, ok
}

// Differ are the keys that two trees do not have alike, with all that is in a table or a
// list that only one of them has, or in a list whose elements differ.
func Differ(a, b map[string]any) (out record.Set) {
	differ("", a, b, &out)
	return out
}

func differ(key string, a, b map[string]any, out *record.Set) {
	for name, v := range a {
		w, both := b[name]
		if both && one(v, w) {
			continue
		}
		at := join(key, quotedName(name))
		in, isTable := v.(map[string]any)
		if other, too := w.(map[string]any); isTable && too {
			differ(at, in, other, out)
			continue
		}
		*out = out.Or(IDs(at))
	}
	for name := range b {
		if _, both := a[name]; !both {
			*out = out.Or(IDs(join(key, quotedName(name))))
		}
	}
}

// With returns tree with value at key, adding the tables on the way. Tree
// itself and all that it holds are left as they were; what does not change is
// shared. It reports false, and returns tree, where the key leads through
// something that is not a table or past the end of an array.
func With(tree map[string]any, key string, value any) (map[string]any, bool) {
	v, ok := with(tree, SplitKey(key), value)
	if !ok {
		return tree, false
	}
	return v.(map[string]any), true
}

// Share puts what a tree has alike with another in place of its own, in the tree itself, so
// that the two are compared by what they share. Both have the same values as before.
func Share(tree, with map[string]any) { share(tree, with) }

// share is w where it is like v, and else v with what its parts share.
func share(v, w any) (shared any, alike bool) {
	switch v := v.(type) {
	case map[string]any:
		other, ok := w.(map[string]any)
		if !ok {
			return v, false
		}
		alike = len(v) == len(other)
		for name, in := range v {
			x, had := other[name]
			part, same := share(in, x)
			if v[name] = part; !had || !same {
				alike = false
			}
		}
	case []any:
		other, ok := w.([]any)
		if !ok {
			return v, false
		}
		alike = len(v) == len(other)
		for i := range min(len(v), len(other)) {
			part, same := share(v[i], other[i])
			v[i], alike = part, alike && same
		}
	case float64: // by its bits, which tell 0 from -0
		x, ok := w.(float64)
		alike = ok && math.Float64bits(v) == math.Float64bits(x)
	default:
		alike = v == w
	}
	if alike {
		return w, true
	}
	return v, false
}

// Shared reports whether two values are one and the same table or list.
func Shared(v, w any) bool {
	switch v := v.(type) {
	case map[string]any:
		w, ok := w.(map[string]any)
		return ok && reflect.ValueOf(v).Pointer() == reflect.ValueOf(w).Pointer()
	case []any:
		w, ok := w.([]any)
		return ok && len(v) > 0 && len(v) == len(w) && &v[0] == &w[0]
	default:
		return false
	}
}

func with(at any, path []string, value any) (any, bool) {
	if len(path) == 0 {
		return value, true
	}
	switch in := at.(type) {
	case nil:
		return with(map[string]any{}, path, value)
	case map[string]any:
		v, ok := with(in[path[0]], path[1:], value)
		if !ok {
			return nil, false
		}
		out := maps.Clone(in)
		out[path[0]] = v
		return out, true
	case []any:
		return withElement(in, path, value)
	default:
		return nil, false
	}
}

// withElement is with for a list, whose elements are counted from 1.
func withElement(in []any, path []string, value any) (any, bool) {
	n, err := strconv.Atoi(path[0])
	if err != nil || n < 1 || n > len(in) {
		return nil, false
	}
	v, ok := with(in[n-1], path[1:], value)
	if !ok {
		return nil, false
	}
	out := slices.Clone(in)
	out[n-1] = v
	return out, true
}

// Identity is what an element of an array of tables is known by: its name; of an
// acceptance its rule and place.
func Identity(element map[string]any) string {
	if name, ok := element["name"].(string); ok {
		return name
	}
	rule, _ := element["rule"].(string)
	at, _ := element["at"].(string)
	return strings.TrimSpace(rule + " " + at)
}

// Unnumbered is a key with the identity of each element in place of its number,
// which changes when another is put before it. An element without one keeps its
// number.
func Unnumbered(tree map[string]any, key string) string {
	var at any = tree
	parts := SplitKey(key)
	out := make([]any, len(parts))
	for i, part := range parts {
		out[i] = part
		switch in := at.(type) {
		case map[string]any:
			at = in[part]
		case []any:
			at = nil
			n, err := strconv.Atoi(part)
			if err == nil {
				out[i] = n
			}
			if n < 1 || n > len(in) {
				continue
			}
			at = in[n-1]
			if element, ok := at.(map[string]any); ok && Identity(element) != "" {
				out[i] = Identity(element)
			}
		}
	}
	return Key(out...)
}
