package quantity

import "math"

// moreDecimals is how many decimals a limit may have beyond those of a drawing:
// 1/32in is 0.79375mm.
const moreDecimals = 4

// Limit prints a figure that somebody has set: with the decimals that it was set
// with, or in the fraction of an inch that it is. Where it was set in the other
// system, it prints to a sixty-fourth of an inch or as a measured figure does.
func (s System) Limit(v Value) string {
	if s == Imperial && v.Unit == Metre {
		return setInches(v.SI)
	}
	st := s.style(v)
	if d, whole := st.wholeAt(v.SI, st.decimals); whole {
		return st.print(v.SI, d)
	}
	return s.Format(v)
}

// Against prints a measured figure and its limit to be read side by side: the
// limit as it was set, or with more digits where the two would look equal.
func (s System) Against(measured, limit Value) (string, string) {
	m, l := s.Pair(measured, limit)
	if set := s.Limit(limit); set != m && s.style(measured).suffix == s.style(limit).suffix {
		l = set
	}
	return m, l
}

// wholeAt is with how many decimals, from some on, a number is shown in full.
func (st style) wholeAt(si float64, from int) (int, bool) {
	for d := from; d <= from+moreDecimals; d++ {
		x := (si/st.size + st.offset) * math.Pow10(d)
		if n := math.Round(x); n != 0 && math.Abs(x-n) < 1e-9*math.Abs(n) {
			return d, true
		}
	}
	return from, false
}

func setInches(m float64) string {
	for _, parts := range []int64{16, 32, 64} {
		x := m / Inch * float64(parts)
		if math.Abs(x-math.Round(x)) < 1e-6 {
			return inches(m, parts)
		}
	}
	st := style{size: Inch, suffix: `"`}
	if d, whole := st.wholeAt(m, 1); whole && d <= moreDecimals {
		return st.print(m, d)
	}
	if math.Abs(m) < Foot {
		if text := inches(m, 64); text != `0"` {
			return text
		}
	}
	return onRule(m)
}
