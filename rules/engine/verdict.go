package engine

// Verdict is the outcome for one spec.
type Verdict uint8

// The verdicts, best first.
const (
	// Passed: nothing but referred items.
	Passed Verdict = iota + 1
	// PassedWithNotes: notes, queries, accepted items or rules not checked.
	PassedWithNotes
	// Failed: a hold, a figure that could not be computed, or, under strict, a
	// query.
	Failed
	// CouldNotCheck: the file can't be read, or is not a spec.
	CouldNotCheck
)

// String is the verdict as reports print it.
func (v Verdict) String() string {
	switch v {
	case Passed:
		return "PASS"
	case PassedWithNotes:
		return "PASS WITH NOTES"
	case Failed:
		return "FAIL"
	case CouldNotCheck:
		return "COULD NOT CHECK"
	default:
		return "NO VERDICT"
	}
}

// Judge gives the verdict on what was counted. Strict lets a query fail; what the
// baseline had does not.
func (c Counts) Judge(strict bool) Verdict {
	switch {
	case c.Unreadable > 0:
		return CouldNotCheck
	case c.Held > c.Before.Held, c.Uncomputed > c.Before.Uncomputed, strict && c.Queried > c.Before.Queried:
		return Failed
	case c.Held+c.Uncomputed+c.Queried+c.Noted+c.Accepted+c.NotChecked > 0:
		return PassedWithNotes
	default:
		return Passed
	}
}
