package editor

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
	"dryfit/spec/edit"
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
