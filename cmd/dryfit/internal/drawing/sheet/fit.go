package sheet

import (
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/spec/quantity"
)

// Options are how a sheet is made; the zero Options let the drawing choose.
type Options struct {
	Scale float64 // 20 is 1:20
	Paper string
	Least int // of the sizes of a series, the one that a set takes at least
}

// across is how wide what is drawn to scale is on paper, in mm.
func (s *Subject) across(scale float64) float64 { return max(s.Wide*1000/scale, s.LeastWide) }

// down is how high it is.
func (s *Subject) down(scale float64) float64 {
	if s.Tall != nil {
		return s.Tall(scale)
	}
	return max(s.High*1000/scale, s.LeastHigh)
}

// fits reports whether the subject fits a paper at a scale.
func (s *Subject) fits(size draft.Size, scale float64) bool {
	w, h := size.Area()
	return s.Left+s.Right+s.across(scale) <= w && s.Above+s.Below+s.down(scale) <= h
}

// largest is the largest usual scale at which the subject fits a paper.
func (s *Subject) largest(size draft.Size, imperial bool) (float64, bool) {
	for _, scale := range draft.UsualScales(imperial) {
		if scale >= s.Best && s.fits(size, scale) {
			return scale, true
		}
	}
	return 0, false
}

// roomy is the subject, or what is drawn instead where the paper has no room.
func (s *Subject) roomy(imperial bool, o Options) *Subject {
	for s.Less != nil {
		if _, _, err := s.fit(imperial, o); err == nil {
			break
		}
		s.Less.Kind, s.Less.Place = s.Kind, s.Place
		s = s.Less
	}
	return s
}

// fit is the paper and the scale: what is asked for, else the least paper on
// which the subject has the scale that one would wish, else the largest paper
// and the scale that fits it.
func (s *Subject) fit(imperial bool, o Options) (draft.Size, float64, error) {
	series := draft.Series(imperial)[o.Least:]
	if o.Paper != "" {
		size, ok := draft.SizeNamed(o.Paper)
		if !ok {
			return size, 0, fmt.Errorf("there is no paper %q; there are A4 to A0 and ARCH-A to ARCH-E", o.Paper)
		}
		series = []draft.Size{size}
	}
	best := o.Scale
	if best == 0 {
		usual := draft.UsualScales(imperial)
		best = usual[slices.IndexFunc(usual, func(scale float64) bool { return scale >= s.Best })]
	}
	for _, size := range series {
		if s.fits(size, best) {
			return size, best, nil
		}
	}
	last := series[len(series)-1]
	scale, ok := s.largest(last, imperial)
	switch {
	case !ok:
		return last, 0, &LimitError{s.Name, "does not fit " + last.Name + " at any scale"}
	case o.Scale > 0:
		return last, 0, &FitError{s.Name, draft.ScaleText(o.Scale, imperial), last.Name, draft.ScaleText(scale, imperial)}
	default:
		return last, scale, nil
	}
}

// SizeOf is the paper that a subject takes.
func (in Input) SizeOf(s *Subject, o Options) (draft.Size, error) {
	imperial := in.Ceiling().Units == quantity.Imperial
	size, _, err := s.roomy(imperial, o).fit(imperial, o)
	return size, err
}
