package compare

import (
	"math"
	"strconv"
	"strings"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// FigureChange is a figure of the calculation sheet, or of what is bought, that came,
// went or changed. Old and New are nil where there is none.
type FigureChange struct {
	Kind     Kind
	Key      string
	Name     string
	Old, New *figure.Figure
	Crossed  []string // the rules whose limit it crossed
}

// moved reports whether a figure came, went or changed by more than a threshold.
func (f FigureChange) moved(threshold float64) bool {
	return f.Kind != Changed || moved(f.Old.Value, f.New.Value, threshold)
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

// figuresOf are all that came, went or changed at all.
func figuresOf(before, after *review.Assessment, k *keys) []FigureChange {
	old := withBought(result.Of(before.Ceiling, carrying.Search{}, nil))
	byKey := map[string]*figure.Figure{}
	for i := range old {
		byKey[legs(old[i].Key, k)] = &old[i]
	}
	var out []FigureChange
	seen := map[string]bool{}
	for _, f := range withBought(result.Of(after.Ceiling, carrying.Search{}, nil)) {
		seen[f.Key] = true
		switch was := byKey[f.Key]; {
		case was == nil:
			out = append(out, FigureChange{Kind: Added, Key: f.Key, Name: f.Name, New: &f})
		case moved(was.Value, f.Value, 0):
			out = append(out, FigureChange{Kind: Changed, Key: f.Key, Name: f.Name, Old: was, New: &f})
		}
	}
	for i := range old {
		if key := legs(old[i].Key, k); !seen[key] {
			out = append(out, FigureChange{Kind: Removed, Key: old[i].Key, Name: old[i].Name, Old: &old[i]})
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

// The keys of what is bought, which the takeoff has and the calculation sheet has not.
const (
	sheetsKey = "takeoff.sheets"
	lumberKey = "takeoff.lumber"
)

// withBought are the figures of the calculation sheet, and the sheets and the lumber to
// buy where they are worked out.
func withBought(r *result.Results) []figure.Figure {
	out := r.Figures()
	if s := r.Shop().Sheets.Get(); s.Err == nil {
		out = append(out, figure.Figure{Key: sheetsKey, Name: "sheets to buy", Value: quantity.Value{SI: float64(s.Count + s.TooLarge), Unit: quantity.One}})
	}
	ribs, rails := r.Shop().RibLumber.Get(), r.Shop().RailLumber.Get()
	if !ribs.Missing && !rails.Missing {
		out = append(out, figure.Figure{
			Key: lumberKey, Name: "lumber to buy for ribs and rails",
			Value: quantity.Value{SI: (ribs.BoardFeet + rails.BoardFeet) * timber.BoardFoot, Unit: quantity.CubicMetre},
		})
	}
	return out
}
