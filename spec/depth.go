package spec

import "bytes"

// MaxDepth is how deep tables, lists and dotted names may nest. A spec needs
// five; the decoder's time grows with the square of the depth, so that a small
// file of nothing but brackets would hold it up for minutes.
const MaxDepth = 16

// tooDeep is the offset where a document nests deeper than MaxDepth. It reads
// only as much of TOML as that takes, strings and comments, and so works on
// any bytes.
func tooDeep(src []byte) (int, bool) {
	brackets, dots := 0, 0
	for i := 0; i < len(src); {
		switch c := src[i]; c {
		case '"', '\'':
			i = pastString(src, i)
			continue
		case '#':
			i = pastLine(src, i)
			continue
		case '[', '{':
			brackets, dots = brackets+1, 0
		case ']', '}':
			brackets = max(brackets-1, 0)
		case '.':
			dots++
		case '=', ',', '\n':
			dots = 0
		}
		if brackets+dots > MaxDepth {
			return i, true
		}
		i++
	}
	return 0, false
}

// pastString is the offset past the string that opens at i. One that is left
// open ends with its line.
func pastString(src []byte, i int) int {
	quote := src[i : i+1]
	if rest := src[i+1:]; len(rest) >= 2 && rest[0] == quote[0] && rest[1] == quote[0] {
		i = pastClose(src, i+3, src[i:i+3])
		for more := 0; more < 2 && bytes.HasPrefix(src[i:], quote); more++ {
			i++ // such a string may itself end with quotes
		}
		return i
	}
	return pastClose(src[:pastLine(src, i)], i+1, quote)
}

// pastClose is the offset past the next closing quotes that no backslash
// makes part of the text.
func pastClose(src []byte, i int, quotes []byte) int {
	for ; i < len(src); i++ {
		switch {
		case bytes.HasPrefix(src[i:], quotes):
			return i + len(quotes)
		case src[i] == '\\' && quotes[0] == '"':
			i++
		}
	}
	return len(src)
}

// pastLine is the offset of the end of the line.
func pastLine(src []byte, i int) int {
	if n := bytes.IndexByte(src[i:], '\n'); n >= 0 {
		return i + n
	}
	return len(src)
}
