package report

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

// sentence ends with a full stop, unless it asks something.
func sentence(text string) string {
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// title is a ceiling by its title, sheet and revision.
func title(title, sheet, revision string) string {
	out := shownTo(title, mostNamed)
	if sheet != "" {
		out += ", sheet " + shownTo(sheet, mostNamed)
	}
	if revision != "" {
		out += ", revision " + shownTo(revision, mostNamed)
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

// plural is a number of things in words.
func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
