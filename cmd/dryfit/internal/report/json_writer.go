package report

import (
	"io"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// JSON writes the report as one document. It begins with the verdict and the counts, so
// that what is said of the files is kept, as text, till the end.
func JSON(w io.Writer, r Report) Writer {
	return &jsonWriter{jsonText: jsonText{to: w}, report: r, worst: engine.Passed}
}

type jsonWriter struct {
	jsonText
	report Report
	worst  engine.Verdict
	heads  []jsonRun   // of the runs
	files  []*jsonKept // of each
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

func (j *jsonWriter) End(run Run) error {
	v, c := run.Verdict(), run.Counts()
	j.worst = max(j.worst, v)
	j.heads = append(j.heads, jsonRun{append([]string{}, run.Standards...), v.String(), CountsJSON(c), baselineJSON(c)})
	return nil
}

func (j *jsonWriter) Close() error {
	j.open(0, jsonReport{j.report.Version, j.report.On, j.report.Against, j.worst.String()})
	j.member(1, "runs")
	j.text("[")
	n := 0
	for i, head := range j.heads {
		j.next(&n, 2)
		j.open(2, head)
		j.member(3, "files")
		j.list(j.files[i])
		j.line(2)
		j.text("}")
	}
	j.end(n, 2)
	j.text("\n}\n")
	return j.err
}
