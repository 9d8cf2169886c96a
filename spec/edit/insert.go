package edit

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"dryfit/spec"
)

// insertion places a key that is absent: beside its neighbours where its table
// is written, else in a new table at the end of the document.
func insertion(doc *spec.Document, c Change) (spec.Range, string, error) {
	table, names := nearest(doc.Tree, c.Key)
	in, _ := spec.Lookup(doc.Tree, table)
	if table == "" {
		in = doc.Tree
	}
	members, isTable := in.(map[string]any)
	if !isTable {
		return spec.Range{}, "", fmt.Errorf("%s is in %s, which is not a table", c.Key, table)
	}
	if _, whole := c.Value.(map[string]any); table == "" && (len(names) > 1 || whole) {
		return appended(doc, names, c.Value)
	}
	value := c.Value
	for i := len(names) - 1; i > 0; i-- {
		value = map[string]any{names[i]: value}
	}
	text, err := pair(names[0], value)
	if err != nil {
		return spec.Range{}, "", err
	}
	if at, ok := inline(doc, table); ok {
		at, text := intoInline(doc, at, table, members, text)
		return at, text, nil
	}
	return statement(doc, table, members, names[0], value)
}

// nearest is the nearest table above a key that is there, and the names that
// lead from it to the key.
func nearest(tree map[string]any, key string) (table string, names []string) {
	parts := spec.SplitKey(key)
	for table = spec.Parent(key); table != ""; table = spec.Parent(table) {
		if _, ok := spec.Lookup(tree, table); ok {
			break
		}
	}
	depth := 0
	if table != "" {
		depth = len(spec.SplitKey(table))
	}
	return table, parts[depth:]
}

// inline is where a table, or the inline table that it is a part of, is
// written.
func inline(doc *spec.Document, table string) (spec.Range, bool) {
	for key := table; key != ""; key = spec.Parent(key) {
		if at, ok := doc.ValueRange(key); ok && doc.Source[at.Start] == '{' {
			return at, true
		}
	}
	return spec.Range{}, false
}

// intoInline adds a pair after the last one of an inline table.
func intoInline(doc *spec.Document, at spec.Range, table string, members map[string]any, pair string) (spec.Range, string) {
	if own, ok := doc.ValueRange(table); !ok || own != at {
		// A part that dotted keys make: they lead to it from the whole.
		pair = dotted(doc, table, at) + pair
	}
	if end := last(doc, table, members); end > at.Start {
		return spec.Range{Start: end, End: end}, ", " + pair
	}
	return spec.Range{Start: at.Start + 1, End: at.End - 1}, " " + pair + " "
}

// dotted are the names that lead from an inline table to a part of it.
func dotted(doc *spec.Document, table string, whole spec.Range) string {
	prefix := ""
	for key := table; key != ""; key = spec.Parent(key) {
		if at, ok := doc.ValueRange(key); ok && at == whole {
			break
		}
		parts := spec.SplitKey(key)
		name, _ := bare(parts[len(parts)-1])
		prefix = name + "." + prefix
	}
	return prefix
}

// last is the end of the last value that is written under a table; zero where
// there is none.
func last(doc *spec.Document, table string, members map[string]any) int {
	end := 0
	for name, v := range members {
		key := child(table, name)
		if at, ok := doc.ValueRange(key); ok {
			end = max(end, at.End)
		} else if in, isTable := v.(map[string]any); isTable {
			end = max(end, last(doc, key, in))
		}
	}
	return end
}

func child(key, name string) string {
	if key == "" {
		return spec.Key(name)
	}
	return key + "." + spec.Key(name)
}

// statement adds a line to a table that a header or dotted keys make.
func statement(doc *spec.Document, table string, members map[string]any, name string, value any) (spec.Range, string, error) {
	text, err := pair(name, value)
	if err != nil {
		return spec.Range{}, "", err
	}
	src := doc.Source
	own, named := doc.KeyRange(table)
	if beside, end := neighbour(doc, table, members); end > 0 {
		text = lead(src, beside.Start) + text
		at, text := line(src, end, aligned(src, text, beside))
		return at, text, nil
	}
	opened := named && strings.HasPrefix(strings.TrimSpace(lead(src, own.Start)), "[")
	switch {
	case table == "":
		return spec.Range{}, text + ending(src), nil
	case opened && bytes.HasPrefix(bytes.TrimLeft(src[own.End:], " \t"), []byte("]")):
		at, text := line(src, own.End, text)
		return at, text, nil
	case opened: // only in passing: [strap.screws] opens strap too
		return appended(doc, append(spec.SplitKey(table), name), value)
	case named: // by dotted keys
		prefix := string(src[lineStart(src, own.Start):own.End])
		at, text := line(src, last(doc, table, members), prefix+"."+text)
		return at, text, nil
	default:
		return spec.Range{}, "", fmt.Errorf("%s is not written in one place", table)
	}
}

// neighbour is the name of the last key that has a line of its own in a table,
// and where its value ends; zero where there is none.
func neighbour(doc *spec.Document, table string, members map[string]any) (name spec.Range, end int) {
	for sibling := range members {
		key := child(table, sibling)
		value, valued := doc.ValueRange(key)
		at, named := doc.KeyRange(key)
		if valued && named && value.End > end {
			name, end = at, value.End
		}
	}
	return name, end
}

func lineStart(src []byte, at int) int { return bytes.LastIndexByte(src[:at], '\n') + 1 }

// lead is what stands before a place on its line.
func lead(src []byte, at int) string { return string(src[lineStart(src, at):at]) }

// aligned puts the equals sign of a pair in the column of its neighbour's,
// where the name is not past that.
func aligned(src []byte, pair string, beside spec.Range) string {
	name, value, _ := strings.Cut(pair, " = ")
	equals := bytes.IndexByte(src[beside.End:], '=')
	column := utf8.RuneCount(src[lineStart(src, beside.Start) : beside.End+max(0, equals)])
	return name + strings.Repeat(" ", max(1, column-utf8.RuneCountInString(name))) + "= " + value
}

// line adds a line after the one that a place is on.
func line(src []byte, after int, text string) (spec.Range, string) {
	n := bytes.IndexByte(src[after:], '\n')
	if n < 0 {
		return spec.Range{Start: len(src), End: len(src)}, ending(src) + text
	}
	at := after + n + 1
	end := "\n"
	if at > 1 && src[at-2] == '\r' {
		end = "\r\n"
	}
	return spec.Range{Start: at, End: at}, text + end
}

// ending is how the document ends its lines.
func ending(src []byte) string {
	if n := bytes.IndexByte(src, '\n'); n > 0 && src[n-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// appended adds a key to a new table, or a whole table, at the end of the
// document.
func appended(doc *spec.Document, names []string, value any) (spec.Range, string, error) {
	table, whole := value.(map[string]any)
	if !whole || len(names) > 1 {
		table = map[string]any{names[len(names)-1]: value}
		names = names[:len(names)-1]
	}
	var header []string
	for _, n := range names {
		name, err := bare(n)
		if err != nil {
			return spec.Range{}, "", err
		}
		header = append(header, name)
	}
	pairs, err := pairs(table)
	if err != nil {
		return spec.Range{}, "", err
	}
	end := ending(doc.Source)
	text := end + "[" + strings.Join(header, ".") + "]" + end + strings.Join(pairs, end) + end
	if !bytes.HasSuffix(doc.Source, []byte("\n")) {
		text = end + text
	}
	return spec.Range{Start: len(doc.Source), End: len(doc.Source)}, text, nil
}
