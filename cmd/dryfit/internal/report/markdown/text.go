// Package markdown writes text that no forge reads as markup, and chooses what a
// comment of limited length says.
package markdown

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
)

// Limit is how many characters a comment may have on the forges, less
// what its beginning and its end take.
const Limit = 65536 - 4096

// MostBrief is how many characters of a text are shown where a comment has no
// room for all that fails.
const MostBrief = 90

// Code is text in a code span: no markup is read in it, and it can't be left,
// whatever backticks it has.
func Code(s string) string {
	s = show.Shown(s)
	fence := "`"
	for strings.Contains(s, fence) {
		fence += "`"
	}
	if strings.HasPrefix(s, "`") || strings.HasSuffix(s, "`") || strings.TrimSpace(s) == "" {
		s = " " + s + " "
	}
	return fence + s + fence
}

// Cell is a code span in a table, where a bare stroke would end the cell.
func Cell(s string) string { return strings.ReplaceAll(Code(s), "|", "\\|") }

// Text is text within a line in which no character is markup: what
// could be is escaped, and an address, a name with an at sign and a number with
// a hash are no links.
func Text(s string) string {
	var b strings.Builder
	runes := []rune(show.Shown(s))
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
