package rules

import (
	"fmt"
	"strings"
)

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

// Counts is what stands behind a verdict.
type Counts struct {
	Held, Queried, Noted, Referred int
	Accepted                       int
	NotChecked                     int // rules
	Uncomputed                     int // rules whose figure could not be computed
	Assumed                        int // distinct keys
	Unreadable                     int // faults of the file
}

// Judge gives the verdict on what was counted. Strict lets a query fail.
func (c Counts) Judge(strict bool) Verdict {
	switch {
	case c.Unreadable > 0:
		return CouldNotCheck
	case c.Held > 0, c.Uncomputed > 0, strict && c.Queried > 0:
		return Failed
	case c.Queried+c.Noted+c.Accepted+c.NotChecked > 0:
		return PassedWithNotes
	default:
		return Passed
	}
}

// Plus adds the counts of another file.
func (c Counts) Plus(o Counts) Counts {
	return Counts{
		Held: c.Held + o.Held, Queried: c.Queried + o.Queried,
		Noted: c.Noted + o.Noted, Referred: c.Referred + o.Referred,
		Accepted: c.Accepted + o.Accepted, NotChecked: c.NotChecked + o.NotChecked,
		Uncomputed: c.Uncomputed + o.Uncomputed, Assumed: c.Assumed + o.Assumed,
		Unreadable: c.Unreadable + o.Unreadable,
	}
}

// String lists what is not zero, the worst first.
func (c Counts) String() string {
	var parts []string
	for _, p := range []struct {
		n    int
		what string
	}{
		{c.Unreadable, "unreadable"},
		{c.Held, "held"},
		{c.Uncomputed, "not computed"},
		{c.Queried, "queried"},
		{c.Noted, "noted"},
		{c.Accepted, "accepted"},
		{c.Referred, "referred"},
		{c.NotChecked, "not checked"},
		{c.Assumed, "assumed"},
	} {
		if p.n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", p.n, p.what))
		}
	}
	if len(parts) == 0 {
		return "nothing found"
	}
	return strings.Join(parts, ", ")
}
