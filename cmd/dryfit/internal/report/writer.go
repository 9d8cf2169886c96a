package report

import (
	"io"

	"dryfit/rules/review"
)

// Format begins a report in one of the formats. The report has no runs yet.
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

// byRuns is what writers share that say something of all runs at the end: it keeps these,
// with the path, the verdict and the counts of each spec.
type byRuns struct{ report Report }

func (*byRuns) Begin(Run) error { return nil }

func (b *byRuns) End(run Run) error {
	b.report.Runs = append(b.report.Runs, run)
	return nil
}

// Write writes a report that is done.
func Write(w io.Writer, r Report, format Format) error {
	runs := r.Runs
	r.Runs = nil
	out := format(w, r)
	for _, run := range runs {
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
