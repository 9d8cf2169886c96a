// Package outline finds tables, keys and values in a text of TOML that is still being
// written.
package outline

import (
	"strconv"
	"strings"

	"dryfit/spec"
)

// Outline is what a text is made of, as far as that can be told while it is
// being written: it goes on after whatever is not TOML, at the next line that
// begins like a key or a table.
type Outline struct {
	Text     string
	Headers  []header
	Parts    []container
	Entries  []Entry
	comments []spec.Range
}

// header is a line that opens a table.
type header struct {
	Key     string     // of the table that it opens
	Name    spec.Range // without brackets
	element bool       // [[…]]
}

// kind is what a container is.
type kind uint8

// The kinds.
const (
	Table  kind = iota + 1 // what follows a header, or comes before the first
	inline                 // { … }
	Array                  // [ … ]
)

// container is a part of the text that keys or values stand in.
type container struct {
	Kind   kind
	Key    string
	Inside spec.Range // without brackets
}

// Entry is a key and its value, as far as they are written.
type Entry struct {
	Key    string
	In     int          // container
	Parts  []spec.Range // of the dotted name
	Keys   []string     // down to each part
	equals int          // offset of the equals sign, or -1
	Value  spec.Range   // empty where there is none
}

// Of reads a text.
func Of(text string) *Outline {
	s := &scanner{Outline: &Outline{Text: text}, counts: map[string]int{}}
	if strings.HasPrefix(text, ByteOrderMark) {
		s.at = len(ByteOrderMark)
	}
	in := s.open(Table, "")
	for {
		s.skip(" \t\r\n")
		if s.at >= len(text) {
			s.Parts[in].Inside.End = s.at
			return s.Outline
		}
		switch text[s.at] {
		case '#':
			s.comment()
		case '[':
			s.Parts[in].Inside.End = s.at
			key := s.header()
			in = s.open(Table, key)
		default:
			s.pair(in)
			s.rest()
		}
	}
}

type scanner struct {
	*Outline
	at     int
	counts map[string]int // of the elements of each array of tables so far
	depth  int
}

func (s *scanner) open(k kind, key string) int {
	s.Parts = append(s.Parts, container{Kind: k, Key: key, Inside: spec.Range{Start: s.at, End: s.at}})
	return len(s.Parts) - 1
}

func (s *scanner) skip(over string) {
	for s.at < len(s.Text) && strings.IndexByte(over, s.Text[s.at]) >= 0 {
		s.at++
	}
}

func (s *scanner) next(c byte) bool { return s.at < len(s.Text) && s.Text[s.at] == c }

// lineEnd is the offset of the end of the line that the scanner is in.
func (s *scanner) lineEnd() int {
	if n := strings.IndexAny(s.Text[s.at:], "\r\n"); n >= 0 {
		return s.at + n
	}
	return len(s.Text)
}

func (s *scanner) comment() {
	start := s.at
	s.at = s.lineEnd()
	s.comments = append(s.comments, spec.Range{Start: start, End: s.at})
}

// rest passes over what is left of a line, with its comment.
func (s *scanner) rest() {
	end := s.lineEnd()
	if n := strings.IndexByte(s.Text[s.at:end], '#'); n >= 0 {
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
		key = Under(key, spec.Key(name))
		if i == len(names)-1 && element {
			s.counts[key]++
		}
		if n := s.counts[key]; n > 0 {
			key = Under(key, strconv.Itoa(n))
		}
	}
	s.Headers = append(s.Headers, header{Key: key, Name: spec.Range{Start: start, End: s.at}, element: element})
	s.rest()
	return key
}

// Under is the dotted key of a name in the table of a key, of the file where that is "".
func Under(key, name string) string {
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
		written := s.Text[start:s.at]
		if name, err := strconv.Unquote(written); err == nil && written[0] == '"' {
			return name
		}
		return strings.Trim(written, `"'`)
	}
	for s.at < len(s.Text) && bare(s.Text[s.at]) {
		s.at++
	}
	return s.Text[start:s.at]
}

func bare(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9' || c == '_' || c == '-'
}

// pair reads a key, and its value where there is one.
func (s *scanner) pair(in int) {
	parts, names := s.dotted()
	key := s.Parts[in].Key
	var keys []string
	for _, name := range names {
		key = Under(key, spec.Key(name))
		keys = append(keys, key)
	}
	s.Entries = append(s.Entries, Entry{
		Key: key, In: in, Parts: parts, Keys: keys, equals: -1, Value: spec.Range{Start: s.at, End: s.at},
	})
	e := len(s.Entries) - 1
	s.skip(" \t")
	if !s.next('=') {
		return
	}
	s.Entries[e].equals = s.at
	s.at++
	s.skip(" \t")
	start := s.at
	s.value(key)
	s.Entries[e].Value = spec.Range{Start: start, End: s.at}
}

// ByteOrderMark is the byte order mark, which a spec's document does not have.
const ByteOrderMark = "\xef\xbb\xbf"

// Whole is where a key and its value stand.
func (e Entry) Whole() spec.Range {
	whole := e.Value
	if n := len(e.Parts); n > 0 {
		whole = spec.Range{Start: e.Parts[0].Start, End: max(e.Value.End, e.Parts[n-1].End)}
	}
	return whole
}

// Name is the key as it is written, and where; of an element its number.
func (e Entry) Name(text string) (string, spec.Range) {
	if n := len(e.Parts); n > 0 {
		r := spec.Range{Start: e.Parts[0].Start, End: e.Parts[n-1].End}
		return text[r.Start:r.End], r
	}
	return e.Key[strings.LastIndexByte(e.Key, '.')+1:], e.Value
}
