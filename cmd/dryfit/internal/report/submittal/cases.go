package submittal

import (
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/rules/model/figure"
)

const (
	leastCases  = 3 // subjects that share a figure, for it to be a column of a table
	mostColumns = 8 // beside the case, so that a table fits an upright page
)

// cases are the figures of subjects such as "hanging: with strap 1 lost".
type cases struct {
	sums.Calcs
	columns []column                            // in the order of the case that has most
	rows    []string                            // subjects, as they come
	at      map[string]map[column]figure.Figure // by the subject
}

// column is what figures of several cases have alike: the name, and the key but for
// the case's own part.
type column struct{ name, rest string }

func columnOf(f figure.Figure) column {
	parts := strings.SplitN(f.Key, ".", 3)
	return column{f.Name, parts[len(parts)-1]}
}

// kind is what a subject is a case of; "" where it is none.
func kind(subject string) string {
	before, _, found := strings.Cut(subject, ": ")
	if !found {
		return ""
	}
	return before
}

// casesOf gathers the figures that at least some cases of a kind share.
func casesOf(c sums.Calcs, of string) cases {
	out := cases{Calcs: c, at: map[string]map[column]figure.Figure{}}
	n := map[column]int{}
	for _, f := range c.Figures {
		if kind(f.Subject) == of {
			n[columnOf(f)]++
		}
	}
	for _, f := range c.Figures {
		if kind(f.Subject) != of || n[columnOf(f)] < leastCases {
			continue
		}
		if out.at[f.Subject] == nil {
			out.rows = append(out.rows, f.Subject)
			out.at[f.Subject] = map[column]figure.Figure{}
		}
		out.at[f.Subject][columnOf(f)] = f
	}
	out.columns = out.ordered()
	return out
}

// ordered are the columns in the order of the case that has most.
func (c cases) ordered() (columns []column) {
	by := slices.Clone(c.rows)
	slices.SortStableFunc(by, func(a, b string) int { return len(c.at[b]) - len(c.at[a]) })
	seen := map[column]bool{}
	for _, row := range by {
		for _, f := range c.Figures {
			if k := columnOf(f); f.Subject == row && c.has(f) && !seen[k] {
				seen[k] = true
				columns = append(columns, k)
			}
		}
	}
	return columns
}

// has reports whether a figure stands in a table.
func (c cases) has(f figure.Figure) bool {
	_, ok := c.at[f.Subject][columnOf(f)]
	return ok
}
