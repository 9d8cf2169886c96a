package remedy

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/schema"
	"dryfit/spec/quantity"
)

// Change is one key with another value.
type Change struct {
	Key     string
	Was     any  // as in a spec's tree
	Assumed bool // the spec leaves the key out, and Was is what is taken for it
	Value   any
	// Place is the key's in the order in which a shop would rather change a
	// spec, from 1.
	Place int
	// Size is how large the change is, for comparison: its share of what was;
	// of a share of the arc, twice the change itself; of a word, a half.
	Size float64
}

// size is how large a change of a key is.
func size(p schema.Property, was, value any) float64 {
	if list, ok := value.([]any); ok {
		return listSize(p, was, list)
	}
	if n, ok := value.(int64); ok {
		had, _ := was.(int64)
		return math.Abs(float64(n-had)) / math.Max(1, float64(had))
	}
	unit, sized := units[p.Format]
	from, err1 := quantity.Parse(unit, fmt.Sprint(was))
	to, err2 := quantity.Parse(unit, fmt.Sprint(value))
	switch {
	case !sized || err1 != nil || err2 != nil:
		return 0.5
	case unit == quantity.Fraction:
		return 2 * math.Abs(to.SI-from.SI)
	case from.SI == 0:
		return 1
	default:
		return math.Abs(to.SI-from.SI) / from.SI
	}
}

// listSize adds up the changes of the elements; where their number changes it
// is the share of the elements that come or go.
func listSize(p schema.Property, was any, list []any) float64 {
	had, _ := was.([]any)
	if len(had) != len(list) {
		return math.Abs(float64(len(list)-len(had))) / math.Max(1, float64(len(had)))
	}
	p.Format = "share"
	sum := 0.0
	for i, v := range list {
		if v != had[i] {
			sum += size(p, had[i], v)
		}
	}
	return sum
}

// Cost adds up the places of the keys: two changes in the first place cost as
// much as one in the second.
func Cost(changes []Change) int {
	sum := 0
	for _, c := range changes {
		sum += c.Place
	}
	return sum
}

// Total is the size of all changes together.
func Total(changes []Change) float64 {
	sum := 0.0
	for _, c := range changes {
		sum += c.Size
	}
	return sum
}

// put is the changes with one more, in the order of their keys; the key's own
// before it is replaced. Back to what was is no change.
func put(changes []Change, c Change) []Change {
	out := slices.DeleteFunc(slices.Clone(changes), func(had Change) bool { return had.Key == c.Key })
	if c.Size > 0 {
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b Change) int { return cmp.Compare(a.Key, b.Key) })
	return out
}

// canon tells two sets of changes apart.
func canon(changes []Change) string {
	var b strings.Builder
	for _, c := range changes {
		fmt.Fprintf(&b, "%s=%v\n", c.Key, c.Value)
	}
	return b.String()
}

// keysOf is which keys a set of changes is of.
func keysOf(changes []Change) []string {
	keys := make([]string, len(changes))
	for i, c := range changes {
		keys[i] = c.Key
	}
	return keys
}
