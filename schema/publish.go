package schema

import (
	"regexp"
	"strconv"
)

// formatLine is a line that gives a text one of the formats.
var formatLine = regexp.MustCompile(`(?m)^( *)"format": "([a-z-]+)"`)

// withPatterns is a schema in which each text of one of our formats has its
// pattern too: a general validator knows none of the formats. The schema that
// files are checked with has no patterns, which would cost time and say again
// what the formats say.
func withPatterns(text []byte) []byte {
	return formatLine.ReplaceAllFunc(text, func(line []byte) []byte {
		m := formatLine.FindSubmatch(line)
		p := formats[string(m[2])].pattern
		if p == "" {
			return line
		}
		// A pattern has no character that Go and JSON escape differently.
		return append(append(line[:len(line):len(line)], ",\n"...), string(m[1])+`"pattern": `+strconv.QuoteToASCII(p)...)
	})
}
