package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
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

// Annotations writes workflow commands, one a line, that a forge shows at the
// lines of the files: the worst first, since it shows only so many of each word;
// of more errors or warnings, one lists the rest. Accepted findings, and those that the
// baseline had, are notices; what the standards loosen is a warning, before all others.
func Annotations(w io.Writer, r Report) Writer {
	return &annotationWriter{byRuns: byRuns{r}, to: w, piles: map[pileOf]*pile{}, said: map[string]bool{}}
}

type annotationWriter struct {
	byRuns
	to    io.Writer
	piles map[pileOf]*pile
	said  map[string]bool // what was loosened
}

func (a *annotationWriter) Add(s *review.Assessment) error {
	for _, n := range a.report.loosenedNotes(s, a.said) {
		a.pile(pileOf{word: n.word, loosened: true}).add(n)
	}
	for _, n := range a.report.notes(s) {
		a.pile(pileOf{word: n.word, verdict: s.Verdict}).add(n)
	}
	return nil
}

func (a *annotationWriter) Close() error {
	out := bufio.NewWriter(a.to)
	for _, word := range []string{"error", "warning", "notice"} {
		piles := []*pile{a.pile(pileOf{word: word, loosened: true})}
		for v := engine.CouldNotCheck; v >= engine.Passed; v-- {
			piles = append(piles, a.pile(pileOf{word: word, verdict: v}))
		}
		if err := writePiles(out, word, piles); err != nil {
			return err
		}
	}
	for _, run := range a.report.Runs {
		for _, s := range run.Assessments {
			fmt.Fprintf(out, "checked %s: %s: %s\n", annotationText.Replace(show.Shown(s.Path)), s.Verdict, s.Counts)
		}
	}
	return out.Flush()
}

func (a *annotationWriter) pile(of pileOf) *pile {
	if a.piles[of] == nil {
		a.piles[of] = new(pile)
	}
	return a.piles[of]
}

// write keeps the ends of lines in a text, each of which was shown before.
func (n note) write(out io.Writer) {
	fmt.Fprintf(out, "::%s file=%s,%s,title=%s::%s\n", n.word, annotationValue.Replace(show.Safe(n.path)), n.place,
		annotationValue.Replace(show.Shown(n.title)), annotationText.Replace(n.text))
}
