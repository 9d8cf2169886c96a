package editor

import (
	"strings"

	"dryfit/spec"
)

// role is what stands, or would stand, at a place.
type role uint8

// The roles.
const (
	nowhere role = iota // a comment
	aHeader             // the name of a table between brackets
	aKey                // a key, or a blank where one may come
	aValue              // a value, or a blank where one may come
)

// site is a place in a text.
type site struct {
	role role
	in   string     // key of the table, for a key; with the dotted names before it
	key  string     // of the value, the key or the table, as far as it is written
	word spec.Range // what stands there, up to where it ends
	// header is whether a table may be opened there; element whether the header
	// has two brackets.
	header, element bool
	// equals is whether the key has its equals sign.
	equals bool
}

func holds(r spec.Range, offset int) bool { return r.Start <= offset && offset <= r.End }

// at says what stands at an offset.
func (o *outline) at(offset int) site {
	for _, c := range o.comments {
		if c.Start < offset && offset <= c.End {
			return site{}
		}
	}
	for _, h := range o.headers {
		if holds(h.name, offset) {
			return site{role: aHeader, key: h.key, word: h.name, element: h.element}
		}
	}
	in := o.within(offset)
	for i := len(o.entries) - 1; i >= 0; i-- {
		if found, ok := o.inEntry(o.entries[i], offset); ok && o.entries[i].in == in {
			return found
		}
	}
	c := o.parts[in]
	nothing := spec.Range{Start: offset, End: offset}
	if c.kind == array {
		return site{role: aValue, key: c.key + ".*", word: nothing}
	}
	if c.kind == table && !o.blankBefore(offset) {
		return site{}
	}
	return site{role: aKey, in: c.key, word: nothing, header: c.kind == table}
}

// blankBefore reports whether nothing stands before an offset on its line.
func (o *outline) blankBefore(offset int) bool {
	before := strings.TrimPrefix(o.text[:offset], mark)
	line := before[strings.LastIndexAny(before, "\r\n")+1:]
	return strings.TrimSpace(line) == ""
}

// within is the innermost container of an offset.
func (o *outline) within(offset int) int {
	best := 0
	for i, c := range o.parts {
		if holds(c.inside, offset) {
			best = i
		}
	}
	return best
}

// inEntry is the place within a key and its value.
func (o *outline) inEntry(e entry, offset int) (site, bool) {
	for i, part := range e.parts {
		if !holds(part, offset) {
			continue
		}
		in := o.parts[e.in].key
		if i > 0 {
			in = e.keys[i-1]
		}
		first := len(e.parts) == 1 && e.equals < 0 && o.parts[e.in].kind == table
		return site{
			role: aKey, in: in, key: e.keys[i], word: part, header: first,
			equals: e.equals >= 0 || i < len(e.parts)-1,
		}, true
	}
	if e.parts != nil && e.equals < 0 {
		return site{}, false
	}
	if holds(e.value, offset) {
		return site{role: aValue, key: e.key, word: e.value}, true
	}
	if e.parts != nil && e.value.Start == e.value.End && e.equals < offset && offset <= e.value.End {
		return site{role: aValue, key: e.key, word: spec.Range{Start: offset, End: offset}}, true
	}
	return site{}, false
}
