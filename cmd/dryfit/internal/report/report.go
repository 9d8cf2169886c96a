// Package report writes the outcome of a check, once for each reader: a
// person at a terminal, a program.
package report

import (
	"strings"

	"dryfit/rules"
	"dryfit/rules/review"
)

// Report is the outcome of one command: a run for each set of standards.
type Report struct {
	Version string
	On      string // the date that acceptances are judged on, 2027-06-30
	Runs    []Run
}

// Run is every spec checked to one set of standards.
type Run struct {
	Standards []string // files, nearest first; empty for the built-in alone
	Sheets    []*review.Sheet
}

// Counts adds up those of the sheets.
func (r Run) Counts() rules.Counts {
	var c rules.Counts
	for _, s := range r.Sheets {
		c = c.Plus(s.Counts)
	}
	return c
}

// Verdict is the worst of the sheets.
func (r Run) Verdict() rules.Verdict {
	worst := rules.Passed
	for _, s := range r.Sheets {
		worst = max(worst, s.Verdict)
	}
	return worst
}

// Verdict is the worst of the runs.
func (r Report) Verdict() rules.Verdict {
	worst := rules.Passed
	for _, run := range r.Runs {
		worst = max(worst, run.Verdict())
	}
	return worst
}

// Caution is said wherever hanging, lifting or fire is spoken of.
const Caution = "This is a check of buildability, not a structural design. Overhead work can " +
	"kill. Hanging, anchorage, fire performance and seismic bracing belong to a licensed " +
	"engineer, the authority having jurisdiction and the local code."

// Problems of a file are reported like findings, as a hold.
const problemSeverity = rules.Hold

// sentence ends with a full stop, unless it asks something.
func sentence(text string) string {
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}
