package begin

import (
	"fmt"
	"strings"

	"dryfit/rules/model/layout"
	"dryfit/rules/review"
)

// line is one line of a table: a key with its value and what is said of it.
type line struct {
	key, value, note string
	// off makes it a comment, for the designer to fill in and take the mark off.
	off bool
}

// table is one table of the spec, with what is said above it.
type table struct {
	name  string
	about string
	off   bool // the whole of it is a comment
	lines []line
}

const (
	noteColumn = 40
	aboutWidth = 92
	confirm    = "confirm: "
)

const preface = `A first spec, drafted by dryfit begin. It passes its own check as it stands. What is marked
"confirm" is a guess made for you: put what you know in its place and run dryfit check again.
Lines and tables that are commented out are facts that nobody should guess; fill them in and
take off the mark, and the rules that need them are checked too. What is neither here nor there
is taken from the standards, and dryfit check lists it as assumed.`

// write writes a choice as a spec, and counts what is to be confirmed. Of a
// sheet, where there is one, come the figures in the notes.
func write(w Wanted, c choice, sheet *review.Sheet, s sizes) (text string, confirms int) {
	var ceiling *layout.Ceiling
	if sheet != nil {
		ceiling = sheet.Ceiling
	}
	w = w.vaultIn(c, s)
	var b strings.Builder
	about(&b, preface)
	lines(&b, []line{{"dryfit", "1", "version of the format", false}}, false)
	for _, t := range tables(w, c, ceiling, s) {
		b.WriteByte('\n')
		about(&b, t.about)
		mark := ""
		if t.off {
			mark = "# "
		}
		fmt.Fprintf(&b, "%s[%s]\n", mark, t.name)
		lines(&b, t.lines, t.off)
		if t.name == "room" && w.Survey != nil {
			b.WriteString("\n" + w.Survey.text)
		}
	}
	text = b.String()
	if len(w.Take) > 0 {
		if taken, err := take(text, w.Take); err == nil { // takeable has refused what can't be
			text = taken
		}
	}
	for l := range strings.Lines(text) {
		if !strings.HasPrefix(l, "#") && strings.Contains(l, " # "+confirm) {
			confirms++
		}
	}
	return text, confirms
}
