package study

import (
	"math"
)

// against is -1 where a beats b, 1 where b beats a, and 0 where neither does.
func (f *Front) against(a, b []float64) int {
	outcome := 0
	for _, aim := range f.Aims {
		switch c := compare(aim.far(a[aim.Column]), aim.far(b[aim.Column]), Lower); {
		case c == 0:
		case outcome == 0:
			outcome = c
		case outcome != c:
			return 0
		}
	}
	return outcome
}

// compare is -1 where a is better than b. To have no figure is worse than any.
func compare(a, b float64, better Better) int {
	if better == Higher {
		a, b = -a, -b
	}
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	case a == b:
		return 0
	case !math.IsNaN(a): // and so b has none
		return -1
	case !math.IsNaN(b):
		return 1
	default:
		return 0
	}
}

// BeatenBy is the member that beats a row, by most aims of those that do, and of
// several the first; and the columns of the aims that it is nearer to. It is false
// for a member.
func (f *Front) BeatenBy(r Row) (by Row, in []int, ok bool) {
	for k := range f.Members {
		m := &f.Members[k]
		if f.against(m.Figures, r.Figures) != -1 {
			continue
		}
		var won []int
		for _, a := range f.Aims {
			if compare(a.far(m.Figures[a.Column]), a.far(r.Figures[a.Column]), Lower) < 0 {
				won = append(won, a.Column)
			}
		}
		if len(won) > len(in) {
			by, in, ok = *m, won, true
		}
	}
	return by, in, ok
}
