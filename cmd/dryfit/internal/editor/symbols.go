package editor

import (
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/spec"
)

// symbols is the outline of a text: its tables, with the keys in them. It needs
// no review, and goes by the text as it is.
func (s *server) symbols(p documentParams) (any, error) {
	d := s.documents[p.Document.URI]
	if d == nil {
		return nil, faulty(codeInvalidParams, "%s is not open", p.Document.URI)
	}
	list := []symbol{}
	if d.keys() != nil {
		list = newSymbolizer(d).all()
	}
	if s.client.Capabilities.TextDocument.Symbols.Hierarchical {
		return list, nil
	}
	return flat(d.uri, "", list), nil
}

// symbolizer makes symbols of an outline.
type symbolizer struct {
	*outline
	lines *follower
	keys  *vocabulary
	// entriesOf are the entries of each container, and valueAt the container that
	// a value is, by where it begins.
	entriesOf map[int][]entry
	valueAt   map[int]int
}

func newSymbolizer(d *document) symbolizer {
	o := symbolizer{outlineOf(d.text.text), &follower{lined: d.text}, d.keys(), map[int][]entry{}, map[int]int{}}
	for _, e := range o.entries {
		o.entriesOf[e.in] = append(o.entriesOf[e.in], e)
	}
	for i, c := range o.parts {
		if c.kind != table {
			o.valueAt[c.inside.Start-1] = i
		}
	}
	return o
}

// follower finds places near the last one without counting from the start of
// their line, which may be the whole text.
type follower struct {
	lined
	offset int
	place  position
}

func (f *follower) at(offset int) position {
	switch line := f.lineOf(offset); {
	case line != f.place.Line:
		f.place = f.position(offset)
	case offset < f.offset:
		f.place.Character -= f.units(f.text[offset:f.offset])
	default:
		f.place.Character += f.units(f.text[f.offset:offset])
	}
	f.offset = offset
	return f.place
}

func (f *follower) span(r spec.Range) span { return span{Start: f.at(r.Start), End: f.at(r.End)} }

// all are the keys before the first header, and the tables.
func (o symbolizer) all() []symbol {
	list, in := o.in(0), 0
	for _, h := range o.headers {
		for in++; o.parts[in].kind != table; in++ { // each header opens the next table
		}
		line := o.lines.lineOf(h.name.Start)
		whole := spec.Range{Start: o.lines.starts[line], End: o.lines.lineEnd(line)}
		if entries := o.entriesOf[in]; len(entries) > 0 {
			whole.End = max(whole.End, entries[len(entries)-1].whole().End)
		}
		if h.name.Start < h.name.End {
			list = append(list, o.symbol(h.key, o.about(h.key, in), symbolObject, whole, h.name, o.in(in)))
		}
	}
	return list
}

// in are the keys of a table, or those elements of an array that have keys or
// elements themselves.
func (o symbolizer) in(container int) []symbol {
	list := []symbol{}
	for _, e := range o.entriesOf[container] {
		inside, holds := o.valueAt[e.value.Start]
		name, selection := e.name(o.text)
		if e.parts == nil && !holds || selection.Start == selection.End {
			continue
		}
		if !holds {
			written := o.text[e.value.Start:e.value.End]
			list = append(list, o.symbol(name, firstOf(written), kindOf(written), e.whole(), selection, nil))
			continue
		}
		kind := symbolObject
		if o.parts[inside].kind == array {
			kind = symbolArray
		}
		list = append(list, o.symbol(name, o.about(e.key, inside), kind, e.whole(), selection, o.in(inside)))
	}
	return list
}

func (o symbolizer) symbol(name, detail string, kind int, whole, selection spec.Range, children []symbol) symbol {
	return symbol{
		Name: show.Safe(name), Detail: show.Safe(detail), Kind: kind,
		Range: o.lines.span(whole), Selection: o.lines.span(selection), Children: children,
	}
}

// about is what tells a table from others: its own name where it has one, else
// the title of its key.
func (o symbolizer) about(key string, in int) string {
	for _, e := range o.entriesOf[in] {
		if e.key == under(key, "name") {
			return strings.Trim(firstOf(o.text[e.value.Start:e.value.End]), `"'`)
		}
	}
	return o.keys.at[pattern(key)].Title
}

// whole is where a key and its value stand.
func (e entry) whole() spec.Range {
	whole := e.value
	if n := len(e.parts); n > 0 {
		whole = spec.Range{Start: e.parts[0].Start, End: max(e.value.End, e.parts[n-1].End)}
	}
	return whole
}

// name is the key as it is written, and where; of an element its number.
func (e entry) name(text string) (string, spec.Range) {
	if n := len(e.parts); n > 0 {
		r := spec.Range{Start: e.parts[0].Start, End: e.parts[n-1].End}
		return text[r.Start:r.End], r
	}
	return e.key[strings.LastIndexByte(e.key, '.')+1:], e.value
}

// longest is how much of a value an outline shows, in bytes.
const longest = 80

// firstOf is a value's first line, or the beginning of it.
func firstOf(value string) string {
	line, _, more := strings.Cut(value, "\n")
	if line = strings.TrimRight(line, "\r"); len(line) > longest {
		line, more = strings.ToValidUTF8(line[:longest], ""), true
	}
	if more {
		line += "…"
	}
	return line
}

// kindOf is the kind of a value that holds no others.
func kindOf(value string) int {
	switch {
	case value == "":
		return symbolKey
	case strings.ContainsAny(value[:1], `"'`):
		return symbolString
	case value == "true" || value == "false":
		return symbolBoolean
	default:
		return symbolNumber
	}
}

// flat lists symbols for a client that takes no tree.
func flat(uri, within string, list []symbol) []flatSymbol {
	out := []flatSymbol{}
	for _, s := range list {
		out = append(out, flatSymbol{Name: s.Name, Kind: s.Kind, Location: location{uri, s.Range}, Within: within})
		out = append(out, flat(uri, s.Name, s.Children)...)
	}
	return out
}
