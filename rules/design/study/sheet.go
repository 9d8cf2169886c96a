package study

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/rules/model/figure"
	"dryfit/rules/review"
	"dryfit/spec/nearest"
	"dryfit/spec/record"
)

// Choose finds columns by their keys: those of the table, and any figure of the
// calculation sheet, which becomes a column of its own. The sheet is that of the spec
// or, for a figure that it has not, of the first option or the last.
func (s *Study) Choose(keys []string) ([]int, error) {
	var out []int
	for _, key := range keys {
		i, err := s.column(strings.TrimSpace(key))
		if err != nil {
			return nil, err
		}
		if slices.Contains(out, i) {
			return nil, fmt.Errorf("%s is named twice", key)
		}
		out = append(out, i)
	}
	return out, nil
}

// column finds a column by its key.
func (s *Study) column(key string) (int, error) {
	var keys []string
	for i, c := range s.Columns {
		if c.Key == key {
			return i, nil
		}
		keys = append(keys, c.Key)
	}
	named := strings.Join(keys, ", ")
	for _, sheet := range []func() *review.Assessment{
		func() *review.Assessment { return s.Base },
		func() *review.Assessment { return s.Option(1).Assessment },
		func() *review.Assessment { return s.Option(s.Total).Assessment },
	} {
		for _, f := range figuresOf(sheet()) {
			if f.Key == key {
				s.Columns = append(s.Columns, Column{Key: key, Head: key, Name: key, Unit: f.Value.Unit})
				return len(s.Columns) - 1, nil
			}
			keys = append(keys, f.Key)
		}
	}
	if near, ok := nearest.Word(key, keys); ok {
		return 0, fmt.Errorf("there is no figure %q; is it %s?", key, near)
	}
	return 0, fmt.Errorf("there is no figure %q; there are %s, and all that calcs prints of the spec", key, named)
}

// figuresOf is the calculation sheet of what could be resolved.
func figuresOf(s *review.Assessment) []figure.Figure {
	if s == nil || s.Results == nil {
		return nil
	}
	return s.Results.Figures()
}

// figures are those of an option by column, NaN where it has none, taken from a pattern
// where that has the same.
func (s *Study) figures(assessment *review.Assessment, like *pattern) []own {
	var differ record.Set
	if like.said != nil {
		differ = assessment.Ceiling.Differ(like.said.Ceiling)
	}
	out := make([]own, len(s.Columns))
	var calculated map[string]float64 // worked out only where a column asks for it
	for i, c := range s.Columns {
		if like.has(i, differ) {
			out[i] = like.own[i]
			continue
		}
		if c.Of != nil {
			out[i].from = assessment.Ceiling.Recorded(func() { out[i].is = rounded(c.Of(assessment)) })
			continue
		}
		if calculated == nil {
			calculated = map[string]float64{}
			for _, f := range figuresOf(assessment) {
				calculated[f.Key] = f.Value.SI
			}
		}
		x, ok := calculated[c.Key]
		if !ok || math.IsInf(x, 0) {
			x = none
		}
		out[i].is = rounded(x)
	}
	return out
}
