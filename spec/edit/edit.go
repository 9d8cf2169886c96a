// Package edit changes values of a TOML document in place: the bytes of the
// values that are named, and no others. Comments, order, blanks, line ends and
// a byte order mark stay as they are.
package edit

import (
	"fmt"
	"maps"
	"reflect"
	"slices"

	"dryfit/spec"
)

// Change is a key and the value that it is to have, as in a document's tree:
// text, int64, bool, float64, []any or map[string]any.
type Change struct {
	Key   string
	Value any
}

// Apply returns src with the changes made, one after the other. A key that is
// absent is added to its table, and a table that is absent to the end of the
// document. An error means that nothing may be written: the document can't be
// read, a key can't be placed, or what would be written does not read back as
// what was asked for.
func Apply(src []byte, changes []Change) ([]byte, error) {
	out := src
	for _, c := range changes {
		doc, err := read(out)
		if err != nil {
			return nil, err
		}
		want, ok := spec.With(doc.Tree, c.Key, c.Value)
		if !ok {
			return nil, fmt.Errorf("%s leads through something that is not a table", c.Key)
		}
		for _, one := range elements(doc.Tree, c) {
			if out, err = apply(out, one); err != nil {
				return nil, err
			}
		}
		if err := readsAs(out, want, c); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// Splice is a part of a document and the text that takes its place.
type Splice struct {
	spec.Range // bytes of the document's source
	Text       string
}

// Splices are what Apply does to a document for one change: the parts of its
// source that it replaces, in their order, none of which overlaps another. An error
// means what it means of Apply.
func Splices(doc *spec.Document, c Change) ([]Splice, error) {
	want, ok := spec.With(doc.Tree, c.Key, c.Value)
	if !ok {
		return nil, fmt.Errorf("%s leads through something that is not a table", c.Key)
	}
	var out []Splice
	for _, one := range elements(doc.Tree, c) {
		at, text, err := splice(doc, one)
		if err != nil {
			return nil, err
		}
		out = append(out, Splice{at, text})
	}
	slices.SortFunc(out, func(a, b Splice) int { return a.Start - b.Start })
	var made []byte
	from := 0
	for _, s := range out {
		if s.Start < from {
			return nil, fmt.Errorf("%s can't be changed in parts", c.Key)
		}
		made = append(append(made, doc.Source[from:s.Start]...), s.Text...)
		from = s.End
	}
	return out, readsAs(append(made, doc.Source[from:]...), want, c)
}

// readsAs is an error where what a change makes does not read back as what was asked for.
func readsAs(src []byte, want map[string]any, c Change) error {
	again, err := read(src)
	if err != nil {
		return fmt.Errorf("%s can't be changed in place: %w", c.Key, err)
	}
	if !reflect.DeepEqual(again.Tree, want) {
		return fmt.Errorf("%s can't be changed in place", c.Key)
	}
	return nil
}

func read(src []byte) (*spec.Document, error) {
	doc, problems := spec.Parse("", src)
	if len(problems) > 0 {
		return nil, fmt.Errorf("line %d: %s", problems[0].Position.Line, problems[0].Message)
	}
	return doc, nil
}

// apply makes one change.
func apply(src []byte, c Change) ([]byte, error) {
	doc, err := read(src)
	if err != nil {
		return nil, err
	}
	at, text, err := splice(doc, c)
	if err != nil {
		return nil, err
	}
	mark := len(src) - len(doc.Source) // of the byte order, which the document leaves off
	out := make([]byte, 0, len(src)+len(text))
	out = append(out, src[:mark+at.Start]...)
	out = append(out, text...)
	return append(out, src[mark+at.End:]...), nil
}

// elements breaks a change of a list that keeps its length, or of a table that
// keeps its keys, into changes of its elements, so that what stands between
// them stays.
func elements(tree map[string]any, c Change) []Change {
	now, _ := spec.Lookup(tree, c.Key)
	if reflect.DeepEqual(now, c.Value) {
		return nil
	}
	var out []Change
	switch to := c.Value.(type) {
	case []any:
		had, _ := now.([]any)
		if len(had) != len(to) {
			return []Change{c}
		}
		for i, v := range to {
			out = append(out, elements(tree, Change{c.Key + "." + spec.Key(i+1), v})...)
		}
	case map[string]any:
		had, _ := now.(map[string]any)
		names := slices.Sorted(maps.Keys(to))
		if !slices.Equal(names, slices.Sorted(maps.Keys(had))) {
			return []Change{c}
		}
		for _, name := range names {
			out = append(out, elements(tree, Change{child(c.Key, name), to[name]})...)
		}
	default:
		return []Change{c}
	}
	return out
}

// splice is the part of the source that a change replaces, and the text that
// it is replaced with.
func splice(doc *spec.Document, c Change) (spec.Range, string, error) {
	now, given := spec.Lookup(doc.Tree, c.Key)
	if !given {
		return insertion(doc, c)
	}
	at, ok := doc.ValueRange(c.Key)
	if !ok {
		return at, "", fmt.Errorf("%s is not written in one place", c.Key)
	}
	written := string(doc.Source[at.Start:at.End])
	if _, isText := now.(string); isText && written[0] != '"' && written[0] != '\'' {
		return at, "", fmt.Errorf("%s is a date, which is not changed in place", c.Key)
	}
	text, err := literal(c.Value, written)
	return at, text, err
}
