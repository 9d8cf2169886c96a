package report

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
)

// commands are the words of a workflow log that annotate a line of a file.
var commands = map[engine.Severity]string{
	engine.Hold: "error", engine.Query: "warning", engine.Note: "notice", engine.Refer: "notice",
}

var (
	annotationText  = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A")
	annotationValue = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C")
)

// note is an annotation of a line of a file.
type note struct {
	word        string // "error", "warning", "notice"
	path        string
	place       string // after the file: line=3
	title, text string
}

// ofOneWord is how many annotations of one word a forge shows of a step.
const ofOneWord = 10

// Annotations writes workflow commands, one a line, that a forge shows at the
// lines of the files: the worst first, since it shows only so many of each word;
// of more errors or warnings, one lists the rest. Accepted findings, and those that the
// baseline had, are notices; what the standards loosen is a warning.
func Annotations(w io.Writer, r Report) error {
	notes := r.notes()
	out := bufio.NewWriter(w)
	for len(notes) > 0 {
		n := slices.IndexFunc(notes, func(o note) bool { return o.word != notes[0].word })
		if n < 0 {
			n = len(notes)
		}
		annotateAll(out, notes[:n])
		notes = notes[n:]
	}
	for _, run := range r.Runs {
		for _, s := range run.Assessments {
			fmt.Fprintf(out, "checked %s: %s: %s\n", annotationText.Replace(show.Shown(s.Path)), s.Verdict, s.Counts)
		}
	}
	return out.Flush()
}

// annotateAll writes annotations of one word. Where a forge would not show all,
// the last that it shows lists the rest, which follow.
func annotateAll(out io.Writer, notes []note) {
	for i, n := range notes {
		if i == ofOneWord-1 && len(notes) > ofOneWord && n.word != "notice" {
			restOf(notes[i:]).write(out)
		}
		n.write(out)
	}
}

// mostListed is how many bytes of text a forge takes in an annotation, less some.
const mostListed = 60000

// restOf is one annotation in place of several.
func restOf(notes []note) note {
	rest := note{word: notes[0].word, path: notes[0].path, place: "line=1,endLine=1", title: fmt.Sprintf("%d more, listed here", len(notes))}
	var b strings.Builder
	for i, n := range notes {
		line, _, _ := strings.Cut(strings.TrimPrefix(n.place, "line="), ",")
		text := fmt.Sprintf("- %s:%s: %s: %s\n", show.ShownTo(n.path, show.MostNamed), line, n.title, show.ShownTo(n.text, show.MostNamed))
		if b.Len()+len(text) > mostListed {
			fmt.Fprintf(&b, "and %d more in the log", len(notes)-i)
			break
		}
		b.WriteString(text)
	}
	rest.text = strings.TrimSuffix(b.String(), "\n")
	return rest
}

// write keeps the ends of lines in a text, each of which was shown before.
func (n note) write(out io.Writer) {
	fmt.Fprintf(out, "::%s file=%s,%s,title=%s::%s\n", n.word, annotationValue.Replace(show.Safe(n.path)), n.place,
		annotationValue.Replace(show.Shown(n.title)), annotationText.Replace(n.text))
}
