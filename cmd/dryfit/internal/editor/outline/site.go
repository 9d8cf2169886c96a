package outline

import (
	"slices"
	"strings"

	"dryfit/spec"
)

// role is what stands, or would stand, at a place.
type role uint8

// The roles.
const (
	Nowhere role = iota // a comment
	AHeader             // the name of a table between brackets
	AKey                // a key, or a blank where one may come
	AValue              // a value, or a blank where one may come
)

// Site is a place in a text.
type Site struct {
	Role role
	In   string     // key of the table, for a key; with the dotted names before it
	Key  string     // of the value, the key or the table, as far as it is written
	Word spec.Range // what stands there, up to where it ends
	// header is whether a table may be opened there; element whether the header
	// has two brackets.
	Header, Element bool
	// equals is whether the key has its equals sign.
	Equals bool
}

// Holds reports whether an offset is within a range, its two ends counted.
func Holds(r spec.Range, offset int) bool { return r.Start <= offset && offset <= r.End }

// At says what stands at an offset.
func (o *Outline) At(offset int) Site {
	for _, c := range o.comments {
		if c.Start < offset && offset <= c.End {
			return Site{}
		}
	}
	for _, h := range o.Headers {
		if Holds(h.Name, offset) {
			return Site{Role: AHeader, Key: h.Key, Word: h.Name, Element: h.element}
		}
	}
	in := o.within(offset)
	for i := len(o.Entries) - 1; i >= 0; i-- {
		if found, ok := o.inEntry(o.Entries[i], offset); ok && o.Entries[i].In == in {
			return found
		}
	}
	c := o.Parts[in]
	nothing := spec.Range{Start: offset, End: offset}
	if c.Kind == Array {
		return Site{Role: AValue, Key: c.Key + ".*", Word: nothing}
	}
	if c.Kind == Table && !o.blankBefore(offset) {
		return Site{}
	}
	return Site{Role: AKey, In: c.Key, Word: nothing, Header: c.Kind == Table}
}

// blankBefore reports whether nothing stands before an offset on its line.
func (o *Outline) blankBefore(offset int) bool {
	before := strings.TrimPrefix(o.Text[:offset], ByteOrderMark)
	line := before[strings.LastIndexAny(before, "\r\n")+1:]
	return strings.TrimSpace(line) == ""
}

// within is the innermost container of an offset.
func (o *Outline) within(offset int) int {
	best := 0
	for i, c := range o.Parts {
		if Holds(c.Inside, offset) {
			best = i
		}
	}
	return best
}

// inEntry is the place within a key and its value.
func (o *Outline) inEntry(e Entry, offset int) (Site, bool) {
	for i, part := range e.Parts {
		if !Holds(part, offset) {
			continue
		}
		in := o.Parts[e.In].Key
		if i > 0 {
			in = e.Keys[i-1]
		}
		first := len(e.Parts) == 1 && e.equals < 0 && o.Parts[e.In].Kind == Table
		return Site{
			Role: AKey, In: in, Key: e.Keys[i], Word: part, Header: first,
			Equals: e.equals >= 0 || i < len(e.Parts)-1,
		}, true
	}
	if e.Parts != nil && e.equals < 0 {
		return Site{}, false
	}
	if Holds(e.Value, offset) {
		return Site{Role: AValue, Key: e.Key, Word: e.Value}, true
	}
	if e.Parts != nil && e.Value.Start == e.Value.End && e.equals < offset && offset <= e.Value.End {
		return Site{Role: AValue, Key: e.Key, Word: spec.Range{Start: offset, End: offset}}, true
	}
	return Site{}, false
}

// Written is where a key is written: its name, or an element of a list, of which
// the first stands for all.
func (o *Outline) Written(key string) (spec.Range, bool) {
	for _, h := range o.Headers {
		if h.Key == key || h.Key == key+".1" {
			return h.Name, true
		}
	}
	for _, e := range o.Entries {
		if i := slices.Index(e.Keys, key); i >= 0 {
			return e.Parts[i], true
		}
		if e.Parts == nil && e.Key == key {
			return e.Value, true
		}
	}
	return spec.Range{}, false
}
