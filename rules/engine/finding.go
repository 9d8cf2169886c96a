package engine

import (
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Bound is a figure that something was compared with, and what stands behind
// it.
type Bound struct {
	quantity.Value
	Name   string // a limit's full name, or the key of the spec that states it
	Source string
	// Firm reports whether a hold may rest on it: the spec states it, a
	// publication that was opened gives it, or a standards file sets it.
	Firm bool
}

// Offer is a value of a key that would pass. The review runs all rules on it
// before it is shown.
type Offer struct {
	Key   string
	Value any // as in a spec's tree: text for a quantity, int64 for a count
}

// Finding is what a rule says of one place in the spec.
type Finding struct {
	// A check gives these.

	At       string // key of the value that the author would edit
	Related  []string
	Severity Severity // zero: the rule's own
	// Text is one sentence without a full stop. {measured} and {limit} in it
	// become the two figures below, printed so that two that differ never
	// look equal.
	Text     string
	Measured quantity.Value // zero: the finding has no figure
	Bound    Bound          // zero: it has no limit, as with what can't be built at all
	Offers   []Offer        // candidates, best first
	NotBy    []string       // keys that would hide the fault and not cure it

	// Running the rules adds these.

	Rule *Rule
	// Origin is the place in a standards file of what the standards give; zero where
	// the place is in the spec. Start and End are in the same file.
	Origin standards.Origin
	Range  spec.Range // in the spec
	Start  spec.Position
	End    spec.Position
	// Passes is the first candidate that was found to pass, if any.
	Passes *Offer
	// Accepted is the spec's acceptance of the finding, if any.
	Accepted *layout.Acceptance
	// Fingerprint tells it from the others of its spec; it stays the same where
	// lines move, elements are renumbered or figures change.
	Fingerprint string
	Baseline    Baseline // zero where there is none
}

// NotChecked is a rule, or one element under a rule, that has no outcome.
type NotChecked struct {
	Rule *Rule
	Key  string // the key that is missing, or that the failed figure hangs on
	Why  string // empty: the key is absent
	// Failed marks a figure that could not be computed though its inputs are
	// there. It fails the spec.
	Failed bool
	// Lifts is the key that lifts it where the standards let it; "" where none does.
	Lifts string
	// Before marks such a figure that the baseline could not compute either.
	Before bool
}

// backs reports whether a hold may rest on a limit of this standing.
func backs(s cite.Standing) bool { return s == cite.Read || s == cite.Derived }
