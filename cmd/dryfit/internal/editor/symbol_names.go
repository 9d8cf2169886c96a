package editor

import (
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/spec"
)

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
