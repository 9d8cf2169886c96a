package editor

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules"
	"dryfit/rules/standards"
	"dryfit/schema"
	"dryfit/spec/edit"
	"dryfit/spec/quantity"
)

// known is what the schema says of the keys of a spec.
type known struct {
	list []schema.Property
	at   map[string]schema.Property
	// written is the description with how a value is written.
	written map[string]string
	// barred are the keys that a leg of a kind does not have.
	barred map[string]map[string]bool
}

// part is a part of the schema's text.
type part struct {
	Description string          `json:"description"`
	Properties  map[string]part `json:"properties"`
	Items       *part           `json:"items"`
	AllOf       []struct {
		If struct {
			Properties struct {
				Kind struct {
					Const string `json:"const"`
				} `json:"kind"`
			} `json:"properties"`
		} `json:"if"`
		Then struct {
			Properties map[string]json.RawMessage `json:"properties"`
		} `json:"then"`
	} `json:"allOf"`
}

var keys = sync.OnceValue(func() known {
	k := known{
		list: schema.Properties(), at: map[string]schema.Property{}, written: map[string]string{},
		barred: map[string]map[string]bool{},
	}
	for _, p := range k.list {
		k.at[p.Path] = p
	}
	var root part
	if err := json.Unmarshal(schema.SpecSchema(), &root); err != nil {
		panic(err) // our own
	}
	k.read("", root)
	return k
})

func (k *known) read(path string, p part) {
	k.written[path] = p.Description
	for name, child := range p.Properties {
		k.read(under(path, name), child)
	}
	if p.Items != nil {
		k.read(path+".*", *p.Items)
	}
	for _, kind := range p.AllOf {
		name := path + "=" + kind.If.Properties.Kind.Const
		k.barred[name] = map[string]bool{}
		for key, allowed := range kind.Then.Properties {
			k.barred[name][key] = string(allowed) == "false"
		}
	}
}

// number is the number of an element in a key.
var number = regexp.MustCompile(`\.\d+(\.|$)`)

// pattern is a key with a star for each number, as the schema has it.
func pattern(key string) string {
	if !strings.ContainsAny(key, "0123456789") {
		return key // nearly all, and matching is slow
	}
	for {
		starred := number.ReplaceAllString(key, ".*$1")
		if starred == key {
			return key
		}
		key = starred
	}
}

// covers reports whether one of two keys is the other or holds it: what reads a
// table reads its keys.
func covers(a, b string) bool {
	a, b = pattern(a), pattern(b)
	return a == b || strings.HasPrefix(a, b+".") || strings.HasPrefix(b, a+".")
}

func reads(r *rules.Rule, key string) bool {
	is := func(k string) bool { return covers(k, key) }
	return slices.ContainsFunc(r.Needs, is) || slices.ContainsFunc(r.Reads, is)
}

// meaning is what a key means and how it is written.
func meaning(path string, std *standards.Standards) string {
	k := keys()
	p, ok := k.at[path]
	if !ok {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "**%s** %s\n\n%s\n", report.MarkdownText(p.Title), report.MarkdownCode(path), report.MarkdownText(k.written[path]))
	switch {
	case len(p.Enum) > 0:
		fmt.Fprintf(&b, "\nOne of %s.\n", codes(p.Enum))
	case len(p.Examples) > 0:
		var shown []string
		for _, e := range p.Examples {
			shown = append(shown, example(e))
		}
		fmt.Fprintf(&b, "\nFor example %s.\n", codes(shown))
	}
	for _, d := range std.Defaults() {
		if d.Key == path {
			fmt.Fprintf(&b, "\nDefault %s: %s.\n", report.MarkdownCode(report.Written(d.Value)), report.MarkdownText(from(d.Source, d.Origin)))
		}
	}
	return b.String()
}

// example is a value of JSON as TOML writes it.
func example(v any) string {
	switch v := v.(type) {
	case float64:
		return fmt.Sprintf("%g", v)
	case []any:
		var parts []string
		for _, x := range v {
			parts = append(parts, example(x))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	default:
		text, _ := edit.Literal(v) // the schema's own
		return text
	}
}

func codes(words []string) string {
	var out []string
	for _, w := range words {
		out = append(out, report.MarkdownCode(w))
	}
	return strings.Join(out, ", ")
}

// from is where a figure comes from.
func from(source string, o standards.Origin) string {
	if o.BuiltIn() {
		return source
	}
	return fmt.Sprintf("%s, set at %s:%d", source, o.File, o.Line)
}

// limits are those in force of the rules that read a key, one line each.
func limits(key string, list []*rules.Rule, std *standards.Standards, units quantity.System) []string {
	var out []string
	for _, r := range list {
		if !reads(r, key) {
			continue
		}
		for _, l := range r.Limits {
			out = append(out, inForce(r, l, std, units))
		}
	}
	return out
}

func inForce(r *rules.Rule, l rules.Limit, std *standards.Standards, units quantity.System) string {
	name := r.Full(l.Key)
	value, why := l.Value, from(l.Source.String(), standards.Origin{})
	if set, ok := std.Limit(name); ok {
		value, why = set.Value, from(set.Source, set.Origin)
	}
	side := map[rules.Sense]string{rules.AtLeast: "at least", rules.AtMost: "at most"}[l.Sense]
	printed := side + " " + units.Format(value)
	if math.IsNaN(value.SI) {
		printed, why = "no figure", "only standards give one"
	}
	return fmt.Sprintf("%s %s: **%s** (%s)", report.MarkdownCode(name), report.MarkdownText(l.Title), report.MarkdownText(printed), report.MarkdownText(why))
}

// wanting are the rules that are not checked without a key.
func wanting(key string, list []*rules.Rule) []string {
	var ids []string
	for _, r := range list {
		for _, need := range r.Needs {
			if p, k := pattern(need), pattern(key); p == k || strings.HasPrefix(k, p+".") && keys().at[k].Required || strings.HasPrefix(p, k+".") {
				ids = append(ids, r.ID)
				break
			}
		}
	}
	return ids
}
