package editor

import (
	"strconv"
	"strings"

	"dryfit/spec"
)

// outline is what a text is made of, as far as that can be told while it is
// being written: it goes on after whatever is not TOML, at the next line that
// begins like a key or a table.
type outline struct {
	text     string
	headers  []header
	parts    []container
	entries  []entry
	comments []spec.Range
}

// header is a line that opens a table.
type header struct {
	key     string     // of the table that it opens
	name    spec.Range // without brackets
	element bool       // [[…]]
}

// kind is what a container is.
type kind uint8

// The kinds.
const (
	table  kind = iota + 1 // what follows a header, or comes before the first
	inline                 // { … }
	array                  // [ … ]
)

// container is a part of the text that keys or values stand in.
type container struct {
	kind   kind
	key    string
	inside spec.Range // without brackets
}

// entry is a key and its value, as far as they are written.
type entry struct {
	key    string
	in     int          // container
	parts  []spec.Range // of the dotted name
	keys   []string     // down to each part
	equals int          // offset of the equals sign, or -1
	value  spec.Range   // empty where there is none
}

// outlineOf reads a text.
func outlineOf(text string) *outline {
	s := &scanner{outline: &outline{text: text}, counts: map[string]int{}}
	if strings.HasPrefix(text, mark) {
		s.at = len(mark)
	}
	in := s.open(table, "")
	for {
		s.skip(" \t\r\n")
		if s.at >= len(text) {
			s.parts[in].inside.End = s.at
			return s.outline
		}
		switch text[s.at] {
		case '#':
			s.comment()
		case '[':
			s.parts[in].inside.End = s.at
			key := s.header()
			in = s.open(table, key)
		default:
			s.pair(in)
			s.rest()
		}
	}
}

type scanner struct {
	*outline
	at     int
	counts map[string]int // of the elements of each array of tables so far
	depth  int
}

func (s *scanner) open(k kind, key string) int {
	s.parts = append(s.parts, container{kind: k, key: key, inside: spec.Range{Start: s.at, End: s.at}})
	return len(s.parts) - 1
}

func (s *scanner) skip(over string) {
	for s.at < len(s.text) && strings.IndexByte(over, s.text[s.at]) >= 0 {
		s.at++
	}
}

func (s *scanner) next(c byte) bool { return s.at < len(s.text) && s.text[s.at] == c }

// lineEnd is the offset of the end of the line that the scanner is in.
func (s *scanner) lineEnd() int {
	if n := strings.IndexAny(s.text[s.at:], "\r\n"); n >= 0 {
		return s.at + n
	}
	return len(s.text)
}

func (s *scanner) comment() {
	start := s.at
	s.at = s.lineEnd()
	s.comments = append(s.comments, spec.Range{Start: start, End: s.at})
}

// rest passes over what is left of a line, with its comment.
func (s *scanner) rest() {
	end := s.lineEnd()
	if n := strings.IndexByte(s.text[s.at:end], '#'); n >= 0 {
		s.at += n
		s.comment()
	}
	s.at = end
}

// header reads [a.b] or [[a.b]] and returns the key of the table. A name on the
// way that is an array of tables stands for its last element.
func (s *scanner) header() string {
	s.at++
	element := s.next('[')
	if element {
		s.at++
	}
	s.skip(" \t")
	start, key := s.at, ""
	_, names := s.dotted()
	for i, name := range names {
		key = under(key, spec.Key(name))
		if i == len(names)-1 && element {
			s.counts[key]++
		}
		if n := s.counts[key]; n > 0 {
			key = under(key, strconv.Itoa(n))
		}
	}
	s.headers = append(s.headers, header{key: key, name: spec.Range{Start: start, End: s.at}, element: element})
	s.rest()
	return key
}

func under(key, name string) string {
	if key == "" {
		return name
	}
	return key + "." + name
}

// dotted reads the names of a dotted key, of which the last may be empty, and
// where they stand.
func (s *scanner) dotted() ([]spec.Range, []string) {
	var parts []spec.Range
	var names []string
	for {
		start := s.at
		name := s.name()
		parts, names = append(parts, spec.Range{Start: start, End: s.at}), append(names, name)
		back := s.at
		s.skip(" \t")
		if !s.next('.') {
			s.at = back
			return parts, names
		}
		s.at++
		s.skip(" \t")
	}
}

// name reads one name of a key, with or without quotes.
func (s *scanner) name() string {
	start := s.at
	if s.next('"') || s.next('\'') {
		s.quoted()
		written := s.text[start:s.at]
		if name, err := strconv.Unquote(written); err == nil && written[0] == '"' {
			return name
		}
		return strings.Trim(written, `"'`)
	}
	for s.at < len(s.text) && bare(s.text[s.at]) {
		s.at++
	}
	return s.text[start:s.at]
}

func bare(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9' || c == '_' || c == '-'
}

// pair reads a key, and its value where there is one.
func (s *scanner) pair(in int) {
	parts, names := s.dotted()
	key := s.parts[in].key
	var keys []string
	for _, name := range names {
		key = under(key, spec.Key(name))
		keys = append(keys, key)
	}
	s.entries = append(s.entries, entry{
		key: key, in: in, parts: parts, keys: keys, equals: -1, value: spec.Range{Start: s.at, End: s.at},
	})
	e := len(s.entries) - 1
	s.skip(" \t")
	if !s.next('=') {
		return
	}
	s.entries[e].equals = s.at
	s.at++
	s.skip(" \t")
	start := s.at
	s.value(key)
	s.entries[e].value = spec.Range{Start: start, End: s.at}
}
