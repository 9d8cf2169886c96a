package editor

import (
	"regexp"
	"strings"
)

// deepest is how deep values are followed; no spec is as deep.
const deepest = 32

// value reads a value as far as it is written.
func (s *scanner) value(key string) {
	switch {
	case s.next('"'), s.next('\''):
		s.quoted()
	case s.next('[') && s.depth < deepest:
		s.depth++
		s.array(key)
		s.depth--
	case s.next('{') && s.depth < deepest:
		s.depth++
		s.inlineTable(key)
		s.depth--
	default:
		rest := s.text[s.at:]
		if n := strings.IndexAny(rest, ",]}#\r\n"); n >= 0 {
			rest = rest[:n]
		}
		s.at += len(strings.TrimRight(rest, " \t"))
	}
}

// quoted reads a text in quotes. One on one line that is not closed ends with
// the line.
func (s *scanner) quoted() {
	quote := s.text[s.at]
	if triple := strings.Repeat(string(quote), 3); strings.HasPrefix(s.text[s.at:], triple) {
		s.at += 3
		if n := strings.Index(s.text[s.at:], triple); n >= 0 {
			s.at += n + 3
			for extra := 0; extra < 2 && s.next(quote); extra++ {
				s.at++
			}
		} else {
			s.at = s.lineEnd()
		}
		return
	}
	for s.at++; s.at < len(s.text); s.at++ {
		switch c := s.text[s.at]; {
		case c == quote:
			s.at++
			return
		case c == '\r', c == '\n':
			return
		case quote == '"' && c == '\\' && s.at+1 < len(s.text) && !strings.ContainsRune("\r\n", rune(s.text[s.at+1])):
			s.at++
		}
	}
}

// statement is a line that no array goes on with.
var statement = regexp.MustCompile(`^[ \t]*(\[\[?[ \t]*[A-Za-z_]|[A-Za-z0-9_.-]+[ \t]*=)`)
