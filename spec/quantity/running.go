package quantity

import "strings"

// Running prints places along a length, in m from its beginning, and the step to
// each from the place before it. A step is the difference of the places as they are
// printed, so that the steps add up to the last place: to a tenth of a millimetre, or
// a sixty-fourth of an inch.
func (s System) Running(places ...float64) (printed, steps []string) {
	st := millimetres(1)
	if s == Imperial {
		const parts = 64
		st = step{Inch / parts, func(n int64) string { return inches(float64(n)*Inch/parts, parts) }}
	}
	before := int64(0)
	for _, p := range places {
		n := st.count(p)
		text := st.print(n)
		if s != Imperial && !strings.Contains(text, ".") {
			text = strings.TrimSuffix(text, "mm") + ".0mm"
		}
		printed, steps = append(printed, text), append(steps, st.print(n-before))
		before = n
	}
	return printed, steps
}
