package show

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Safe is text from outside made fit for a terminal or a drawing: control and
// format characters, line separators and bytes that are not UTF-8 are shown by
// their codes, so that nothing a spec's author writes moves the cursor, hides
// text or turns its direction.
func Safe(s string) string {
	if IsSafe(s) {
		return s
	}
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == utf8.RuneError && s[i] >= utf8.RuneSelf && !strings.HasPrefix(s[i:], "\uFFFD"):
			fmt.Fprintf(&b, `\x%02x`, s[i])
		case SafeRune(r):
			b.WriteRune(r)
		case r < 0x100:
			fmt.Fprintf(&b, `\x%02x`, r)
		case r < 0x10000:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			fmt.Fprintf(&b, `\U%08x`, r)
		}
	}
	return b.String()
}

// IsSafe reports whether Safe leaves a text as it is.
func IsSafe(s string) bool {
	return utf8.ValidString(s) && strings.IndexFunc(s, func(r rune) bool { return !SafeRune(r) }) < 0
}

// SafeRune reports whether a character may be shown.
func SafeRune(r rune) bool {
	if r < utf8.RuneSelf { // as most are
		return r >= ' ' && r != '\x7f'
	}
	return !unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Co)
}
