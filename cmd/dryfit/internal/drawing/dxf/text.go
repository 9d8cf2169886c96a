package dxf

import (
	"fmt"
	"strings"
	"unicode"
)

// longest is how many characters of a text the format takes.
const longest = 255

// Plain is a text as the format has it: on one line, in ASCII, other characters by
// their codes (\U+00E9). What a reader would take for a code of its own is written so
// that it shows: a backslash, a caret, two per cent signs.
func Plain(text string) string {
	var b strings.Builder
	percent := false
	for _, r := range text {
		coded := code(r)
		if percent && r == '%' {
			coded = " %"
		}
		percent = r == '%'
		if b.Len()+len(coded) > longest {
			break
		}
		b.WriteString(coded)
	}
	return strings.TrimSpace(b.String())
}

func code(r rune) string {
	switch {
	case unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Cf):
		return " "
	case r == '^':
		return "^ "
	case r == '\\' || r >= 0x7f && r <= 0xffff:
		return fmt.Sprintf(`\U+%04X`, r)
	case r > 0xffff:
		return "?"
	default:
		return string(r)
	}
}
