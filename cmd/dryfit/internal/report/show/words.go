// Package show has what every writer needs: text made safe and broken into lines,
// numbers of documents and tables, and the frame of a page.
package show

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// Caution is said wherever hanging, lifting or fire is spoken of.
const Caution = "This is a check of buildability, not a structural design. Overhead work can " +
	"kill. Hanging, anchorage, fire performance and seismic bracing belong to a licensed " +
	"engineer, the authority having jurisdiction and the local code."

// Sentence ends with a full stop, unless it asks something.
func Sentence(text string) string {
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// Title is a ceiling by its title, sheet and revision.
func Title(title, sheet, revision string) string {
	out := ShownTo(title, MostNamed)
	if sheet != "" {
		out += ", sheet " + ShownTo(sheet, MostNamed)
	}
	if revision != "" {
		out += ", revision " + ShownTo(revision, MostNamed)
	}
	return out
}

// Written is a value as a spec writes it.
func Written(v any) string {
	switch v := v.(type) {
	case string:
		if strings.Contains(v, `"`) && !strings.Contains(v, "'") {
			return "'" + v + "'"
		}
		return strconv.Quote(v)
	case map[string]any:
		var pairs []string
		for _, key := range slices.Sorted(maps.Keys(v)) {
			pairs = append(pairs, key+" = "+Written(v[key]))
		}
		return "{ " + strings.Join(pairs, ", ") + " }"
	case []any:
		var elements []string
		for _, e := range v {
			elements = append(elements, Written(e))
		}
		return "[" + strings.Join(elements, ", ") + "]"
	default:
		return fmt.Sprint(v)
	}
}

// Plural is a number of things in words.
func Plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
