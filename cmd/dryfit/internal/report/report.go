// Package report writes the outcome of a check, once for each reader: a
// person at a terminal, a program, a test report, a page of code findings.
package report

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Report is the outcome of one command: a run for each set of standards.
type Report struct {
	Version string
	On      string // the date that acceptances are judged on, 2027-06-30
	Strict  bool   // a query fails
	Against string // the revision whose findings fail nothing; "" for none
	Runs    []Run
	Rules   []*engine.Rule // all that were run
	// Folder and Root are the working folder, which paths are relative to, and
	// the root of its repository, which those who annotate a repository want
	// them relative to. Without a root the working folder serves.
	Folder, Root string
}

// Run is every spec checked to one set of standards.
type Run struct {
	Standards   []string // files, nearest first; empty for the built-in alone
	Assessments []*review.Assessment
}

// Counts adds up those of the specs.
func (r Run) Counts() engine.Counts {
	var c engine.Counts
	for _, s := range r.Assessments {
		c = c.Plus(s.Counts)
	}
	return c
}

// Verdict is the worst of the specs.
func (r Run) Verdict() engine.Verdict {
	worst := engine.Passed
	for _, s := range r.Assessments {
		worst = max(worst, s.Verdict)
	}
	return worst
}

// Verdict is the worst of the runs.
func (r Report) Verdict() engine.Verdict {
	worst := engine.Passed
	for _, run := range r.Runs {
		worst = max(worst, run.Verdict())
	}
	return worst
}

func (r Report) files() (n int) {
	for _, run := range r.Runs {
		n += len(run.Assessments)
	}
	return n
}

// referral is a rule that refers something, and in how many files.
type referral struct {
	rule, title string
	files       int
}

// referrals are the rules that refer something, in the order of the files, each once.
type referrals struct {
	list []referral
	at   map[string]int
}

func (r *referrals) add(s *review.Assessment) {
	for _, rule := range refers(s) {
		i, had := r.at[rule.ID]
		if !had {
			if r.at == nil {
				r.at = map[string]int{}
			}
			i = len(r.list)
			r.at[rule.ID] = i
			r.list = append(r.list, referral{rule: rule.ID, title: rule.Title})
		}
		r.list[i].files++
	}
}

// refers are the rules that refer something in one file, each once.
func refers(s *review.Assessment) (out []*engine.Rule) {
	for _, f := range s.Findings {
		if f.Severity == engine.Refer && !slices.Contains(out, f.Rule) {
			out = append(out, f.Rule)
		}
	}
	return out
}

// Problems of a file are reported like findings, as a hold.
const problemSeverity = engine.Hold
