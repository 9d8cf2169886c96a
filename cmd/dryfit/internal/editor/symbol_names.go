package editor

import (
	"strings"

	"dryfit/cmd/dryfit/internal/editor/outline"
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
		if e.Key == outline.Under(key, "name") {
			return strings.Trim(firstOf(o.Text[e.Value.Start:e.Value.End]), `"'`)
		}
	}
	return o.keys.at[pattern(key)].Title
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
