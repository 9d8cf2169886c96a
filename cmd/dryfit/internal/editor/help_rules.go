package editor

import (
	"fmt"
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/spec/quantity"
)

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
		printed, why = "no figure", "only standards files set it"
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
