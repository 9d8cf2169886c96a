package report

import (
	"encoding/json"
	"io"
)

// jsonLine is one file of one run, with what a reader needs to know of the
// check. Lines of several checks join by concatenation.
type jsonLine struct {
	Version string `json:"version"`
	On      string `json:"on"`
	Strict  bool   `json:"strict"`
	jsonFile
}

// JSONLines writes a document for each file, on a line of its own.
func JSONLines(w io.Writer, r Report) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	for _, run := range r.Runs {
		for _, s := range run.Sheets {
			if err := e.Encode(jsonLine{r.Version, r.On, r.Strict, fileJSON(s)}); err != nil {
				return err
			}
		}
	}
	return nil
}
