package report

import (
	"io"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/review"
)

// jsonLine is one file of one run, with what a reader needs to know of the
// check. Lines of several checks join by concatenation.
type jsonLine struct {
	Version string `json:"version"`
	On      string `json:"on"`
	Strict  bool   `json:"strict"`
	Against string `json:"against,omitempty"` // the baseline
	jsonFile
}

// JSONLines writes what a report says of each file, on a line of its own.
func JSONLines(w io.Writer, r Report) Writer { return linesWriter{w, r} }

type linesWriter struct {
	to     io.Writer
	report Report
}

func (w linesWriter) Add(s *review.Assessment) error {
	r := w.report
	return show.NewEncoder(w.to).Encode(jsonLine{r.Version, r.On, r.Strict, r.Against, fileJSON(s)})
}

func (linesWriter) Begin(Run) error { return nil }
func (linesWriter) End(Run) error   { return nil }
func (linesWriter) Close() error    { return nil }
