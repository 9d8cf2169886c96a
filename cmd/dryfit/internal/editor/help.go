package editor

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
	"dryfit/spec/edit"
	"dryfit/spec/quantity"
)

// readers are those of a list of rules that read a key, or one in it: for the
// last text that could be reviewed, or else for any that was seen.
func (d *document) readers(list []*engine.Rule, key string) []*engine.Rule {
	keys := spec.IDs(key)
	return slices.DeleteFunc(slices.Clone(list), func(r *engine.Rule) bool {
		read := catalog.Reads(r.ID)
		if d.good != nil {
			read = d.good.Inputs[r]
		}
		return keys.And(read).Empty()
	})
}

// meaning is what a key of a spec means, how it is written, and its default.
func meaning(path string, std *standards.Standards) string {
	text := specKeys().meaning(path)
	for _, d := range std.Defaults() {
		if d.Key == path && text != "" {
			text += fmt.Sprintf("\nDefault %s: %s.\n", markdown.Code(show.Written(d.Value)), markdown.Text(from(d.Source, d.Origin)))
		}
	}
	return text
}

// meaning is what a key means and how it is written.
func (k *vocabulary) meaning(path string) string {
	p, ok := k.at[path]
	if !ok {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "**%s** %s\n\n%s\n", markdown.Text(p.Title), markdown.Code(path), markdown.Text(k.written[path]))
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
		out = append(out, markdown.Code(w))
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

// limits are those in force of some rules, one line each.
func limits(list []*engine.Rule, std *standards.Standards, units quantity.System) []string {
	var out []string
	for _, r := range list {
		for _, l := range r.Limits {
			out = append(out, inForce(r, l, std, units))
		}
	}
	return out
}

func inForce(r *engine.Rule, l engine.Limit, std *standards.Standards, units quantity.System) string {
	name := r.Full(l.Key)
	value, why := l.Value, from(l.Source.String(), standards.Origin{})
	if set, ok := std.Limit(name); ok {
		value, why = set.Value, from(set.Source, set.Origin)
	}
	side := map[engine.Sense]string{engine.AtLeast: "at least", engine.AtMost: "at most"}[l.Sense]
	printed := side + " " + units.Format(value)
	if math.IsNaN(value.SI) {
		printed, why = "no figure", "only standards give one"
	}
	return fmt.Sprintf("%s %s: **%s** (%s)", markdown.Code(name), markdown.Text(l.Title), markdown.Text(printed), markdown.Text(why))
}

// wanting are the rules that are not checked without a key.
func wanting(key string, list []*engine.Rule) []string {
	var ids []string
	for _, r := range list {
		for _, need := range r.Needs {
			if p, k := pattern(need), pattern(key); p == k || strings.HasPrefix(k, p+".") && specKeys().at[k].Required || strings.HasPrefix(p, k+".") {
				ids = append(ids, r.ID)
				break
			}
		}
	}
	return ids
}
