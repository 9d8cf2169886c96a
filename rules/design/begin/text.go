package begin

import (
	"fmt"
	"strconv"
	"strings"

	"dryfit/rules/model/layout"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
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

// about writes a paragraph as comments.
func about(b *strings.Builder, text string) {
	words, used := strings.Fields(text), 0
	for _, word := range words {
		switch {
		case used == 0:
			b.WriteString("# ")
		case used+1+len(word) > aboutWidth:
			b.WriteString("\n# ")
			used = 0
		default:
			b.WriteByte(' ')
		}
		b.WriteString(word)
		used += len(word) + 1
	}
	if used > 0 {
		b.WriteByte('\n')
	}
}

// lines writes keys with their equals signs below each other, and the notes in
// one column where they fit.
func lines(b *strings.Builder, list []line, off bool) {
	width := 0
	for _, l := range list {
		n := len(l.key)
		if l.off {
			n += 2
		}
		width = max(width, n)
	}
	for _, l := range list {
		text := l.key
		if l.off {
			text = "# " + text
		}
		text = pad(text, width) + " = " + l.value
		if off {
			text = "# " + text
		}
		if l.note != "" {
			text = pad(text, noteColumn-1) + " # " + l.note
		}
		b.WriteString(text + "\n")
	}
}

func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-len([]rune(text))))
}

// quoted is text as TOML writes it.
func quoted(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case strconv.IsPrint(r):
			b.WriteRune(r)
		case r < 0x10000:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			fmt.Fprintf(&b, `\U%08X`, r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// percent is a share as a person writes it.
func percent(share float64) string { return fmt.Sprintf("%.0f%%", share*100) }

func stations(list []float64) string {
	var out []string
	for _, s := range list {
		out = append(out, quoted(percent(s)))
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// figures prints what a note says of the resolved ceiling.
type figures struct {
	ceiling *layout.Ceiling
}

// say prints a note with lengths of the ceiling in it; without a ceiling the
// note is left out.
func (f figures) say(format string, of func(c *layout.Ceiling) []any) string {
	if f.ceiling == nil {
		return ""
	}
	args := of(f.ceiling)
	for i, a := range args {
		switch a := a.(type) {
		case quantity.Length:
			args[i] = f.ceiling.Units.Format(a.Value())
		case quantity.Mass:
			args[i] = f.ceiling.Units.Format(a.Value())
		}
	}
	return fmt.Sprintf(format, args...)
}
