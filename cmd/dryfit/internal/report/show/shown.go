package show

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"dryfit/rules/engine"
)

// MostShown is how many characters of one text are shown to a reader, and
// mostNamed how many of a title. Documents for programs have them whole.
const (
	MostShown = 600
	MostNamed = 160
)

// Shown is text from outside as a reader is shown it: safe, without lines and
// boxes such as a report draws itself, and not so long that it pushes out of
// sight what stands after it.
func Shown(s string) string { return ShownTo(s, MostShown) }

// ShownTo is that to a number of characters. Of a longer text the beginning and
// the end are shown, since a sentence on a long name has its figures at either.
func ShownTo(s string, most int) string {
	s = boxless(Safe(cut(s, most)))
	if utf8.RuneCountInString(s) > 2*most { // most of it was codes
		s = cut(s, 2*most)
	}
	return s
}

// cut leaves out the middle of a text that is longer than some characters, and
// says how much that is.
func cut(s string, most int) string {
	if len(s) <= most {
		return s
	}
	n := utf8.RuneCountInString(s)
	if n <= most {
		return s
	}
	head, tail := most*2/3, most/3
	begin, end := 0, len(s)
	for range head {
		_, size := utf8.DecodeRuneInString(s[begin:])
		begin += size
	}
	for range tail {
		_, size := utf8.DecodeLastRuneInString(s[:end])
		end -= size
	}
	return s[:begin] + fmt.Sprintf(" […%d characters…] ", n-head-tail) + s[end:]
}

// boxless shows the characters that reports draw lines and boxes with by their
// codes.
func boxless(s string) string {
	if strings.IndexFunc(s, isBox) < 0 {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if isBox(r) {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

func isBox(r rune) bool { return 0x2500 <= r && r <= 0x259f }

// verdicts are the words that a line of verdict begins with, the longer first.
var verdicts = []string{
	engine.PassedWithNotes.String(), engine.Passed.String(), engine.Failed.String(), engine.CouldNotCheck.String(),
}

// NoVerdict keeps a line that is no verdict from beginning like one.
func NoVerdict(s string) string {
	text := strings.TrimLeft(s, " ")
	for _, v := range verdicts {
		rest, begins := strings.CutPrefix(text, v)
		if begins && (rest == "" || !isLetter(rest[0])) {
			return s[:len(s)-len(text)] + fmt.Sprintf(`\x%02x`, text[0]) + text[1:]
		}
	}
	return s
}

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }
