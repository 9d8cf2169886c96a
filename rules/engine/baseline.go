package engine

import (
	"math"

	"dryfit/spec/quantity"
)

// Baseline says of a finding whether an earlier revision of the spec had it.
type Baseline uint8

// The states; without a baseline there is none.
const (
	// New: the revision did not have it, or not as badly.
	New Baseline = iota + 1
	// AlreadyThere: the revision had it.
	AlreadyThere
)

// String is the words that reports print.
func (b Baseline) String() string {
	switch b {
	case New:
		return "new"
	case AlreadyThere:
		return "already there"
	default:
		return ""
	}
}

// furtherPast is the share of its limit by which a figure may lie further past
// it than it did and count as the same.
const furtherPast = 0.005

// Since is what a finding is to an earlier one of the same fingerprint. It is new
// where it says more, where the earlier one was accepted and it is not, and where
// its figure lies further past its limit.
func (f Finding) Since(earlier Finding) Baseline {
	switch {
	case f.Severity > earlier.Severity,
		f.Accepted == nil && earlier.Accepted != nil,
		f.liesFurther(earlier):
		return New
	default:
		return AlreadyThere
	}
}

func (f Finding) liesFurther(earlier Finding) bool {
	now, ok := f.past()
	before, had := earlier.past()
	if !ok || !had {
		return false
	}
	share := math.Abs(f.Bound.SI)
	if share == 0 { // of nothing there is no share
		share = before
	}
	return now > before+furtherPast*share
}

// past is how far the figure lies past its limit, where there are both.
func (f Finding) past() (float64, bool) {
	if f.Bound.Name == "" || f.Measured == (quantity.Value{}) || f.Measured.Unit != f.Bound.Unit {
		return 0, false
	}
	return math.Abs(f.Measured.SI - f.Bound.SI), true
}
