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
	// off makes it a comment, for the designer to fill in and uncomment.
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

const preface = `A first spec, written by dryfit begin. It passes its own check. Lines marked "confirm" have
values that dryfit chose: replace them by your own, and run dryfit check again. The keys that
you must supply are commented out: fill them in and uncomment them. Until then the rules that
need them are not checked. Other absent keys have the defaults of the standards; dryfit check
lists these as assumed.`

// write writes a choice as a spec, and counts what is to be confirmed. Of a
// sheet, where there is one, come the figures in the notes.
func write(w Wanted, c choice, assessment *review.Assessment, s sizes) (text string, confirms int) {
	var ceiling *layout.Ceiling
	if assessment != nil {
		ceiling = assessment.Ceiling
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
