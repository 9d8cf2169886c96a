// Package compare says what a revision of a spec changed: in its keys, in the
// figures that follow from them, in what is found. It does no input or output.
package compare

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Comparison is what changed from one spec to another.
type Comparison struct {
	Old, New *review.Assessment
	// Threshold is the change of a figure, as a share of what it was, up to
	// which it counts as the same.
	Threshold float64

	Keys       []KeyChange // in the order of the keys
	Rewritten  []string    // keys written otherwise that mean the same
	Renumbered []Renumbered
	// Figures are those that changed by more than the threshold or crossed a limit, in
	// the order of the sheet, and what is bought.
	Figures    []FigureChange
	Findings   []FindingChange
	NotChecked []Coverage
}

// Of compares two assessments whose ceilings could both be resolved.
func Of(before, after *review.Assessment, threshold float64) *Comparison {
	c := &Comparison{Old: before, New: after, Threshold: threshold}
	keys := keysOf(before, after)
	c.Keys, c.Rewritten, c.Renumbered = keys.changes, keys.rewritten, keys.renumbered
	c.NotChecked = coverageOf(before, after)
	c.Findings = findingsOf(before, after, keys, threshold)
	figures := figuresOf(before, after, keys)
	cross(figures, c.Findings, keys)
	c.Figures = slices.DeleteFunc(figures, func(f FigureChange) bool { return !f.moved(threshold) && len(f.Crossed) == 0 })
	return c
}

// Kind is what happened to something.
type Kind uint8

// The kinds of change.
const (
	Added Kind = iota + 1
	Removed
	Changed
)

// String is the word that reports print.
func (k Kind) String() string { return [...]string{"", "added", "removed", "changed"}[k] }

// Worse reports whether a finding of at least a severity came that was not
// there before, or was less or accepted. A figure that can no longer be
// computed counts as a hold.
func (c *Comparison) Worse(least engine.Severity) bool {
	for _, f := range c.Findings {
		if weight(f.New) >= least && weight(f.Old) < weight(f.New) {
			return true
		}
	}
	for _, n := range c.NotChecked {
		if n.Failed && n.Kind == Added {
			return true
		}
	}
	return false
}

// weight is the severity of a finding that is neither accepted nor referred;
// none is least.
func weight(f *engine.Finding) engine.Severity {
	if f == nil || f.Accepted != nil || f.Severity == engine.Refer {
		return 0
	}
	return f.Severity
}
