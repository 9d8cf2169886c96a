package report

import (
	"bufio"
	"dryfit/rules/engine"
	"io"
	"strings"

	"github.com/fatih/color"
	"github.com/rivo/uniseg"
)

// The layout is a schedule's: a column for the severity, then the matter.
const (
	textWidth = 80
	margin    = 8  // the severity's column
	label     = 13 // the column of "passes with" and "basis"
	wideLabel = 26 // the column of rules and keys
)

// texter writes lines for people at a terminal.
type texter struct {
	out    *bufio.Writer
	colour bool
}

// newTexter writes to w, in colour where asked.
func newTexter(w io.Writer, colour bool) *texter {
	return &texter{out: bufio.NewWriter(w), colour: colour}
}

// flush writes what is held back, and says what went wrong in writing.
func (t *texter) flush() error { return t.out.Flush() }

// line writes a line that is no verdict, and does not begin like one.
func (t *texter) line(s string) { t.verdict(noVerdict(s)) }

// verdict writes a line that may begin with a verdict.
func (t *texter) verdict(s string) {
	t.out.WriteString(noCommand(strings.TrimRight(s, " ")))
	t.out.WriteByte('\n')
}

// noCommand keeps a line from being one that a workflow's log obeys: those begin
// with two colons, after blanks or not, or with two hashes and a bracket.
func noCommand(s string) string {
	text := strings.TrimLeft(s, " ")
	indent := s[:len(s)-len(text)]
	switch {
	case strings.HasPrefix(text, "::"):
		return indent + `\x3a` + text[1:]
	case strings.HasPrefix(text, "##["):
		return indent + `\x23` + text[1:]
	default:
		return s
	}
}

// rule draws a line across.
func (t *texter) rule(stroke string) { t.line(strings.Repeat(stroke, textWidth)) }

// paragraph writes text in the third column, its first line after a mark in
// the first and a label in the second.
func (t *texter) paragraph(mark, name, text string) {
	lead := pad(mark, margin)
	if name != "" {
		lead += pad(name, label)
	}
	indent := uniseg.StringWidth(lead)
	for i, l := range wrap(text, textWidth-indent) {
		if i > 0 {
			lead = strings.Repeat(" ", indent)
		}
		t.line(lead + l)
	}
}

// paint colours a severity or a verdict.
func (t *texter) paint(what any, text string) string {
	attribute := color.FgGreen
	switch what {
	case engine.Hold, engine.Failed, engine.CouldNotCheck:
		attribute = color.FgRed
	case engine.Query, engine.PassedWithNotes:
		attribute = color.FgYellow
	case engine.Refer:
		attribute = color.FgMagenta
	case engine.Note:
		attribute = color.FgCyan
	}
	c := color.New(attribute, color.Bold)
	if t.colour {
		c.EnableColor()
	} else {
		c.DisableColor()
	}
	return c.Sprint(text)
}
