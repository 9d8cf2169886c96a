package show

import (
	"bufio"
	"io"
	"strings"

	"dryfit/rules/engine"

	"github.com/fatih/color"
	"github.com/rivo/uniseg"
)

// The layout is a schedule's: a column for the severity, then the matter.
const (
	TextWidth = 80
	Margin    = 8  // the severity's column
	Label     = 13 // the column of "passes with" and "basis"
	WideLabel = 26 // the column of rules and keys
)

// Texter writes lines for people at a terminal.
type Texter struct {
	out    *bufio.Writer
	colour bool
}

// NewTexter writes to w, in colour where asked.
func NewTexter(w io.Writer, colour bool) *Texter {
	return &Texter{out: bufio.NewWriter(w), colour: colour}
}

// Flush writes what is held back, and says what went wrong in writing.
func (t *Texter) Flush() error { return t.out.Flush() }

// Line writes a line that is no verdict, and does not begin like one.
func (t *Texter) Line(s string) { t.Verdict(NoVerdict(s)) }

// Verdict writes a line that may begin with a verdict.
func (t *Texter) Verdict(s string) {
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

// Rule draws a line across.
func (t *Texter) Rule(stroke string) { t.Line(strings.Repeat(stroke, TextWidth)) }

// Paragraph writes text in the third column, its first line after a mark in
// the first and a label in the second.
func (t *Texter) Paragraph(mark, name, text string) {
	lead := Pad(mark, Margin)
	if name != "" {
		lead += Pad(name, Label)
	}
	indent := uniseg.StringWidth(lead)
	for i, l := range Wrap(text, TextWidth-indent) {
		if i > 0 {
			lead = strings.Repeat(" ", indent)
		}
		t.Line(lead + l)
	}
}

// Paint colours a severity or a verdict.
func (t *Texter) Paint(what any, text string) string {
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
