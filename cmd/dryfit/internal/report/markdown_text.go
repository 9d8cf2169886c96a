package report

import (
	"fmt"
	"strings"
)

// markdownLimit is how many characters a comment may have on the forges, less
// what its beginning and its end take.
const markdownLimit = 65536 - 4096

// mostBrief is how many characters of a text are shown where a comment has no
// room for all that fails.
const mostBrief = 90

// MarkdownCode is text in a code span: no markup is read in it, and it can't be left,
// whatever backticks it has.
func MarkdownCode(s string) string {
	s = Shown(s)
	fence := "`"
	for strings.Contains(s, fence) {
		fence += "`"
	}
	if strings.HasPrefix(s, "`") || strings.HasSuffix(s, "`") || strings.TrimSpace(s) == "" {
		s = " " + s + " "
	}
	return fence + s + fence
}

// cell is a code span in a table, where a bare stroke would end the cell.
func cell(s string) string { return strings.ReplaceAll(MarkdownCode(s), "|", "\\|") }

// MarkdownText is text within a line in which no character is markup: what
// could be is escaped, and an address, a name with an at sign and a number with
// a hash are no links.
func MarkdownText(s string) string {
	var b strings.Builder
	runes := []rune(Shown(s))
	for i, r := range runes {
		last := i == len(runes)-1
		switch {
		case r == '<', r == '>', r == '&', r == '@', r == ':' && !last && runes[i+1] != ' ',
			r == '.' && i >= 3 && strings.EqualFold(string(runes[i-3:i]), "www"):
			fmt.Fprintf(&b, "&#%d;", r)
		case strings.ContainsRune("\\`*_{}[]#|~$^", r):
			b.WriteRune('\\')
			b.WriteRune(r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
