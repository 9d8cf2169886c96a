package outline

import (
	"regexp"
	"strconv"
	"strings"

	"dryfit/spec"
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
		rest := s.Text[s.at:]
		if n := strings.IndexAny(rest, ",]}#\r\n"); n >= 0 {
			rest = rest[:n]
		}
		s.at += len(strings.TrimRight(rest, " \t"))
	}
}

// quoted reads a text in quotes. One on one line that is not closed ends with
// the line.
func (s *scanner) quoted() {
	quote := s.Text[s.at]
	if triple := strings.Repeat(string(quote), 3); strings.HasPrefix(s.Text[s.at:], triple) {
		s.at += 3
		if n := strings.Index(s.Text[s.at:], triple); n >= 0 {
			s.at += n + 3
			for extra := 0; extra < 2 && s.next(quote); extra++ {
				s.at++
			}
		} else {
			s.at = s.lineEnd()
		}
		return
	}
	for s.at++; s.at < len(s.Text); s.at++ {
		switch c := s.Text[s.at]; {
		case c == quote:
			s.at++
			return
		case c == '\r', c == '\n':
			return
		case quote == '"' && c == '\\' && s.at+1 < len(s.Text) && !strings.ContainsRune("\r\n", rune(s.Text[s.at+1])):
			s.at++
		}
	}
}

// statement is a line that no array goes on with.
var statement = regexp.MustCompile(`^[ \t]*(\[\[?[ \t]*[A-Za-z_]|[A-Za-z0-9_.-]+[ \t]*=)`)

func (s *scanner) array(key string) {
	s.at++
	in := s.open(Array, key)
	for i := 0; s.at < len(s.Text); {
		s.skip(" \t,")
		start := s.at
		switch {
		case s.at >= len(s.Text):
		case s.next('\r'), s.next('\n'):
			s.skip("\r\n")
			if statement.MatchString(s.Text[s.at:s.lineEnd()]) {
				s.Parts[in].Inside.End, s.at = start, start
				return
			}
		case s.next('#'):
			s.comment()
		case s.next(']'):
			s.Parts[in].Inside.End = s.at
			s.at++
			return
		default:
			i++
			s.value(Under(key, strconv.Itoa(i)))
			if s.at == start {
				s.at++ // a bracket of another kind
			} else {
				s.Entries = append(s.Entries, Entry{
					Key: Under(key, strconv.Itoa(i)), In: in, equals: -1, Value: spec.Range{Start: start, End: s.at},
				})
			}
		}
	}
	s.Parts[in].Inside.End = s.at
}

func (s *scanner) inlineTable(key string) {
	s.at++
	in := s.open(inline, key)
	for s.at < len(s.Text) {
		s.skip(" \t,")
		start := s.at
		switch {
		case s.at >= len(s.Text), s.next('\r'), s.next('\n'), s.next('#'):
			s.Parts[in].Inside.End = s.at
			return
		case s.next('}'):
			s.Parts[in].Inside.End = s.at
			s.at++
			return
		default:
			s.pair(in)
			if s.at == start {
				s.Entries = s.Entries[:len(s.Entries)-1]
				s.at++
			}
		}
	}
	s.Parts[in].Inside.End = s.at
}
