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

// JSONLine writes what a report says of one file, on a line of its own.
func JSONLine(w io.Writer, r Report, s *review.Assessment) error {
	return show.NewEncoder(w).Encode(jsonLine{r.Version, r.On, r.Strict, r.Against, fileJSON(s)})
}
