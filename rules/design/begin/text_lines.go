package begin

import (
	"fmt"
	"strconv"
	"strings"
)

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
