package report

import (
	"io"

	"dryfit/rules/review"
)

// Format begins a report in one of the formats. Of the report nothing is known but what
// holds for all of its runs.
type Format func(io.Writer, Report) Writer

// Writer writes a report as its specs are done, so that one of any number of specs has
// room in memory: who calls it need keep nothing of a spec but its path, verdict and counts.
type Writer interface {
	// Begin begins a run, of which the standards are known.
	Begin(Run) error
	// Add is a spec of the run, in its order.
	Add(*review.Assessment) error
	// End ends the run, of whose specs the path, verdict and counts are there.
	End(Run) error
	// Close ends the report; what can only be written then is written.
	Close() error
}

// Write writes a report that is done.
func Write(w io.Writer, r Report, format Format) error {
	out := format(w, r)
	for _, run := range r.Runs {
		if err := out.Begin(Run{Standards: run.Standards}); err != nil {
			return err
		}
		for _, s := range run.Assessments {
			if err := out.Add(s); err != nil {
				return err
			}
		}
		if err := out.End(run); err != nil {
			return err
		}
	}
	return out.Close()
}
