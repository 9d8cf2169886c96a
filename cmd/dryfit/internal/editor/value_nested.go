package editor

import (
	"strconv"

	"dryfit/spec"
)

func (s *scanner) array(key string) {
	s.at++
	in := s.open(array, key)
	for i := 0; s.at < len(s.text); {
		s.skip(" \t,")
		start := s.at
		switch {
		case s.at >= len(s.text):
		case s.next('\r'), s.next('\n'):
			s.skip("\r\n")
			if statement.MatchString(s.text[s.at:s.lineEnd()]) {
				s.parts[in].inside.End, s.at = start, start
				return
			}
		case s.next('#'):
			s.comment()
		case s.next(']'):
			s.parts[in].inside.End = s.at
			s.at++
			return
		default:
			i++
			s.value(under(key, strconv.Itoa(i)))
			if s.at == start {
				s.at++ // a bracket of another kind
			} else {
				s.entries = append(s.entries, entry{
					key: under(key, strconv.Itoa(i)), in: in, equals: -1, value: spec.Range{Start: start, End: s.at},
				})
			}
		}
	}
	s.parts[in].inside.End = s.at
}

func (s *scanner) inlineTable(key string) {
	s.at++
	in := s.open(inline, key)
	for s.at < len(s.text) {
		s.skip(" \t,")
		start := s.at
		switch {
		case s.at >= len(s.text), s.next('\r'), s.next('\n'), s.next('#'):
			s.parts[in].inside.End = s.at
			return
		case s.next('}'):
			s.parts[in].inside.End = s.at
			s.at++
			return
		default:
			s.pair(in)
			if s.at == start {
				s.entries = s.entries[:len(s.entries)-1]
				s.at++
			}
		}
	}
	s.parts[in].inside.End = s.at
}
