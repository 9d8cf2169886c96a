package quantity

import "math"

// Cut is a length, in m, as a shop cuts it: to whole millimetres, or to sixteenths
// of an inch (common practice).
func (s System) Cut(m float64) float64 {
	step := 1e-3
	if s == Imperial {
		step = Inch / 16
	}
	return math.Round(Steady(m)/step) * step
}

// CutStep says what lengths are cut to.
func (s System) CutStep() string {
	if s == Imperial {
		return `1/16"`
	}
	return "1mm"
}
