package paper

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// fitting is how many bytes of a text fit into a width, and the width of these.
// It reads no further than that. A mark stays with the letter before it, and at
// least one letter fits.
func fitting(text string, width, height float64) (n int, used float64) {
	unit := height / measured().capital
	for n < len(text) {
		r, size := utf8.DecodeRuneInString(text[n:])
		w := widthOf(r) * unit
		if n > 0 && used+w > width && !unicode.Is(unicode.M, r) {
			return n, used
		}
		used += w
		n += size
	}
	return n, used
}

// Wrap breaks a text at its blanks into lines of a width at most; a word that is
// longer is cut. Its time grows with the text alone.
func Wrap(text string, width, height float64) []string {
	var lines []string
	var line strings.Builder
	used, blank := 0.0, TextWidth(" ", height)
	end := func() {
		if line.Len() > 0 {
			lines = append(lines, line.String())
			line.Reset()
		}
		used = 0
	}
	for _, word := range strings.Fields(text) {
		for {
			n, w := fitting(word, width, height)
			if line.Len() > 0 && (n < len(word) || used+blank+w > width) {
				end()
			}
			if n == len(word) {
				if line.Len() > 0 {
					line.WriteByte(' ')
					used += blank
				}
				line.WriteString(word)
				used += w
				break
			}
			lines, word = append(lines, word[:n]), word[n:]
		}
	}
	end()
	return lines
}

// Cut shortens a text to a width, and marks that it was.
func Cut(text string, width, height float64) string {
	if n, w := fitting(text, width, height); n == len(text) && w <= width {
		return text
	}
	n, _ := fitting(text, width-TextWidth("…", height), height)
	return text[:n] + "…"
}
