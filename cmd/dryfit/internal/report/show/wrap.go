package show

import (
	"strings"

	"github.com/rivo/uniseg"
)

// Wrap breaks text at blanks into lines of at most width columns. A word that
// is wider stands on a line of its own.
func Wrap(text string, width int) []string {
	var lines []string
	var line strings.Builder
	used := 0
	for _, word := range strings.Fields(text) {
		w := uniseg.StringWidth(word)
		if used > 0 && used+1+w > width {
			lines = append(lines, line.String())
			line.Reset()
			used = 0
		}
		if used > 0 {
			line.WriteByte(' ')
			used++
		}
		line.WriteString(word)
		used += w
	}
	return append(lines, line.String())
}

// Paragraph is text in lines of the report's width.
func Paragraph(text string) string { return strings.Join(Wrap(text, TextWidth), "\n") }

// Pad fills text with blanks to a width.
func Pad(text string, width int) string {
	return text + strings.Repeat(" ", max(1, width-uniseg.StringWidth(text)))
}
