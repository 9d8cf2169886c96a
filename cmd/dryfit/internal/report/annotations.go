package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"dryfit/rules"
)

// commands are the words of a workflow log that annotate a line of a file.
var commands = map[rules.Severity]string{
	rules.Hold: "error", rules.Query: "warning", rules.Note: "notice", rules.Refer: "notice",
}

var (
	annotationText  = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A")
	annotationValue = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C")
)

// Annotations writes workflow commands, one a line, that a forge shows at the
// lines of the files. Accepted findings, and those that the baseline had, are
// notices; what the standards loosen is a warning.
func Annotations(w io.Writer, r Report) error {
	out := bufio.NewWriter(w)
	said := map[string]bool{}
	for _, run := range r.Runs {
		for _, s := range run.Sheets {
			r.annotateLoosened(out, s, said)
			for _, e := range entries(s) {
				annotate(out, r.InRepository(s.Path), e)
			}
			fmt.Fprintf(out, "checked %s: %s: %s\n", annotationText.Replace(Safe(s.Path)), s.Verdict, s.Counts)
		}
	}
	return out.Flush()
}

func annotate(out io.Writer, path string, e entry) {
	word, text := commands[e.severity], e.said()
	if e.baseline == rules.AlreadyThere {
		word = "notice"
	}
	switch {
	case e.accepted != "":
		word, text = "notice", text+" Accepted: "+e.accepted+"."
	case e.passes != "":
		text += " Passes with " + e.passes + "."
	}
	value := func(s string) string { return annotationValue.Replace(Safe(s)) }
	place := fmt.Sprintf("file=%s,line=%d,endLine=%d", value(path), e.start.Line, max(e.start.Line, e.end.Line))
	if e.end.Line == e.start.Line && e.end.Column > e.start.Column { // columns are for a range within a line
		place += fmt.Sprintf(",col=%d,endColumn=%d", e.start.Column, e.end.Column)
	}
	title := e.severity.String() + " " + e.rule + e.since()
	fmt.Fprintf(out, "::%s %s,title=%s::%s\n", word, place, value(title), annotationText.Replace(Safe(text)))
}
