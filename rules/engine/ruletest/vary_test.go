package ruletest

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// variant is a spec with one key put otherwise, or left out.
type variant struct {
	key  string // of the value, the list or the table that differs
	keys record.Set
	what string
	tree map[string]any
}

// otherWords are names that stand in place of those that a spec gives, where any
// text may stand that is one of a list.
var otherWords = map[string][]string{
	"rib.species":          {"red oak", "Douglas-fir, coast"},
	"rail.species":         {"red oak", "Douglas-fir, coast"},
	"room.framing.species": {"red oak", "Douglas-fir, coast"},
	"skin.material":        {"softwood plywood", "MDF"},
}

// unitTexts are how a value in the SI unit is written.
var unitTexts = map[quantity.Unit]string{
	quantity.Pascal: "Pa", quantity.Hour: "h", quantity.Metre: "m", quantity.Kilogram: "kg", quantity.Newton: "N", quantity.Celsius: "C", quantity.Radian: "rad", quantity.Fraction: "%",
}

// variants are what a spec becomes by one change: each quantity a little and
// much more or less, each count one up and one down, each word every other,
// each list shorter and the other way round, each key left out; as far as the
// schema takes it. Only keys that are wanted are touched.
func variants(tree map[string]any, wanted func(record.Set) bool) []variant {
	var out []variant
	add := func(key, what string, changed map[string]any, ok bool) {
		if ok && schema.Fits(changed) {
			out = append(out, variant{key, spec.IDs(key), what, changed})
		}
	}
	put := func(key string, values ...any) {
		if !wanted(spec.IDs(key)) {
			return
		}
		for _, v := range values {
			changed, ok := spec.With(tree, key, v)
			add(key, fmt.Sprint(v), changed, ok)
		}
	}
	var walk func(v any, key, path string)
	walk = func(v any, key, path string) {
		if key != "" && wanted(spec.IDs(key)) {
			changed, ok := without(tree, key)
			add(key, "left out", changed, ok)
		}
		switch v := v.(type) {
		case map[string]any:
			for _, name := range sortedKeys(v) {
				walk(v[name], strings.TrimPrefix(key+"."+name, "."), strings.TrimPrefix(path+"."+name, "."))
			}
		case []any:
			if len(v) > 1 {
				other := slices.Clone(v)
				slices.Reverse(other)
				put(key, other, v[:len(v)-1])
			}
			for i, x := range v {
				walk(x, key+"."+strconv.Itoa(i+1), path+".*")
			}
		case string:
			put(key, others(v, key, path)...)
		case int64:
			if path != "dryfit" {
				put(key, v+1, v-1, int64(1))
			}
		case bool:
			put(key, !v)
		}
	}
	walk(tree, "", "")
	return out
}

// others are what may stand in place of a text.
func others(text, key, path string) (out []any) {
	p := properties()[path]
	for _, word := range append(slices.Clone(p.Enum), otherWords[spec.Pattern(key)]...) {
		if word != text {
			out = append(out, word)
		}
	}
	switch {
	case len(out) > 0:
		return out
	case p.Format == "stock":
		return []any{"4/4", "8/4"}
	case p.Format == "date":
		return []any{"2026-01-31", "2031-01-31"}
	case p.Unit == 0:
		return []any{text + " x"}
	}
	q, err := quantity.Parse(p.Unit, text)
	if err != nil {
		return nil
	}
	for _, by := range []float64{1.03, 0.4, 2.2} {
		out = append(out, written(q.SI*by, p.Unit))
	}
	if q.SI == 0 {
		out = []any{written(0.007, p.Unit)}
	}
	return out
}

func written(si float64, unit quantity.Unit) string {
	if unit == quantity.Fraction {
		si *= 100
	}
	return strconv.FormatFloat(si, 'f', 9, 64) + unitTexts[unit]
}

func sortedKeys(m map[string]any) []string {
	var out []string
	for name := range m {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

// without is a tree that lacks a key of a table.
func without(tree map[string]any, key string) (map[string]any, bool) {
	parent, name := spec.Parent(key), spec.SplitKey(key)
	var in any = tree
	if parent != "" {
		in, _ = spec.Lookup(tree, parent)
	}
	table, ok := in.(map[string]any)
	if !ok {
		return tree, false
	}
	fewer := map[string]any{}
	for k, v := range table {
		if k != name[len(name)-1] {
			fewer[k] = v
		}
	}
	if parent == "" {
		return fewer, true
	}
	return spec.With(tree, parent, fewer)
}
