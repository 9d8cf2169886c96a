package compare

import (
	"math"
	"strconv"
	"strings"

	"dryfit/rules/model/figure"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// FigureChange is a figure of the calculation sheet that came, went or changed
// by more than the threshold. Old and New are nil where there is none.
type FigureChange struct {
	Kind     Kind
	Key      string
	Name     string
	Old, New *figure.Figure
}

// By is the change as a share of what the figure was; infinite from nothing.
func (f FigureChange) By() float64 {
	if f.Kind != Changed || f.Old.Value.SI == f.New.Value.SI {
		return 0
	}
	return (f.New.Value.SI - f.Old.Value.SI) / math.Abs(f.Old.Value.SI)
}

// noise is below what any figure of a ceiling means, in SI: what a solver's
// rounding leaves of a zero.
func noise(u quantity.Unit) float64 {
	if u == quantity.MetreToTheFourth {
		return 1e-15
	}
	return 1e-9
}

// moved reports whether a value changed by more than the threshold.
func moved(a, b quantity.Value, threshold float64) bool {
	switch {
	case a.Unit != b.Unit:
		return true
	case a.SI == b.SI, math.IsNaN(a.SI) && math.IsNaN(b.SI):
		return false
	default:
		return !(math.Abs(b.SI-a.SI) <= math.Max(threshold*math.Abs(a.SI), noise(a.Unit)))
	}
}

func figuresOf(before, after *review.Sheet, k *keys, threshold float64) []FigureChange {
	old := result.Of(before.Ceiling, carrying.Search{}).Figures()
	byKey := map[string]*figure.Figure{}
	for i := range old {
		byKey[legs(old[i].Key, k)] = &old[i]
	}
	var out []FigureChange
	seen := map[string]bool{}
	for _, f := range result.Of(after.Ceiling, carrying.Search{}).Figures() {
		seen[f.Key] = true
		switch was := byKey[f.Key]; {
		case was == nil:
			out = append(out, FigureChange{Added, f.Key, f.Name, nil, &f})
		case moved(was.Value, f.Value, threshold):
			out = append(out, FigureChange{Changed, f.Key, f.Name, was, &f})
		}
	}
	for i := range old {
		if key := legs(old[i].Key, k); !seen[key] {
			out = append(out, FigureChange{Removed, old[i].Key, old[i].Name, &old[i], nil})
		}
	}
	return out
}

// legs numbers a figure of the way in as the new spec numbers its legs.
func legs(key string, k *keys) string {
	const prefix = "carrying."
	rest, ok := strings.CutPrefix(key, prefix)
	if !ok {
		return key
	}
	number, rest, _ := strings.Cut(rest, ".")
	if _, err := strconv.Atoi(number); err != nil {
		return key
	}
	to := k.renumber("route." + number)
	return prefix + strings.TrimPrefix(to, "route.") + "." + rest
}
