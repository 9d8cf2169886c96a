package report

import (
	"io"

	"dryfit/rules/review"
)

// JSON writes the report as one document. It begins with the verdict and the counts, so
// that what is said of the files is kept, as text, till the end.
func JSON(w io.Writer, r Report) Writer {
	return &jsonWriter{byRuns: byRuns{r}, jsonText: jsonText{to: w}}
}

type jsonWriter struct {
	byRuns
	jsonText
	files []*jsonKept // of each run
}

func (j *jsonWriter) Begin(Run) error {
	j.files = append(j.files, newJSONKept(4))
	return nil
}

func (j *jsonWriter) Add(s *review.Assessment) error {
	files := j.files[len(j.files)-1]
	files.add(fileJSON(s))
	return files.err
}

func (j *jsonWriter) Close() error {
	j.open(0, jsonReport{j.report.Version, j.report.On, j.report.Against, j.report.Verdict().String()})
	j.member(1, "runs")
	j.text("[")
	n := 0
	for i, run := range j.report.Runs {
		c := run.Counts()
		j.next(&n, 2)
		j.open(2, jsonRun{append([]string{}, run.Standards...), run.Verdict().String(), CountsJSON(c), baselineJSON(c)})
		j.member(3, "files")
		j.list(j.files[i])
		j.line(2)
		j.text("}")
	}
	j.end(n, 2)
	j.text("\n}\n")
	return j.err
}
