package spec

import (
	"cmp"
	"encoding"
	"fmt"
	"slices"

	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Field is the value of a key that is not a table.
type Field[T any] struct {
	v     T
	given bool
	id    record.ID
}

// Value is what the key says.
func (f Field[T]) Value(rec *record.Recorder) record.Value[T] {
	return record.Stated(rec, f.id, patterns()[f.id], f.v, f.given)
}

// SI is the value of a quantity in its SI unit.
func SI[T ~float64](rec *record.Recorder, f Field[T]) record.Value[float64] {
	return record.Stated(rec, f.id, patterns()[f.id], float64(f.v), f.given)
}

// Listed is a list of quantities in the SI unit, in the file's order.
func Listed[T ~float64](rec *record.Recorder, f Field[[]T]) record.Value[[]float64] {
	list := make([]float64, len(f.v))
	for i, v := range f.v {
		list[i] = float64(v)
	}
	return record.Stated(rec, f.id, patterns()[f.id], list, f.given)
}

// Ascending is a list of quantities in the SI unit with the least first, and the
// place of each in the file's list, from 1.
func Ascending[T ~float64](rec *record.Recorder, f Field[[]T]) (list record.Value[[]float64], places []int) {
	places = make([]int, len(f.v))
	for i := range places {
		places[i] = i + 1
	}
	slices.SortStableFunc(places, func(a, b int) int { return cmp.Compare(f.v[a-1], f.v[b-1]) })
	sorted := make([]float64, len(f.v))
	for i, p := range places {
		sorted[i] = float64(f.v[p-1])
	}
	return record.Stated(rec, f.id, patterns()[f.id], sorted, f.given), places
}

// Table is what a table says by being there, whatever is in it.
type Table struct {
	given bool
	id    record.ID
}

// Stated reports whether the table is there.
func (t Table) Stated(rec *record.Recorder) record.Value[bool] {
	return record.Stated(rec, t.id, patterns()[t.id], t.given, t.given)
}

// List is an array of tables.
type List[T any] struct {
	v     []T
	given bool
	id    record.ID
	blank *T // an element without values
}

// Value are the elements.
func (l List[T]) Value(rec *record.Recorder) record.Value[[]T] {
	return record.Stated(rec, l.id, patterns()[l.id], l.v, l.given)
}

// bound is a part of a spec that takes its value and its key's number.
type bound interface {
	bind(v any) error
	number(id record.ID)
}

func (f *Field[T]) number(id record.ID) { f.id = id }
func (l *List[T]) number(id record.ID)  { l.id = id }

func (f *Field[T]) bind(v any) error {
	f.given = true
	return bindValue(v, &f.v)
}

// bindValue parses a value of a tree into what a key holds.
func bindValue(v, to any) error {
	switch v := v.(type) {
	case string:
		return bindText(v, to)
	case int64:
		if to, ok := to.(*int); ok {
			*to = int(v)
			return nil
		}
	case bool:
		if to, ok := to.(*bool); ok {
			*to = v
			return nil
		}
	case []any:
		switch to := to.(type) {
		case *[]int:
			return bindValues(v, to)
		case *[]quantity.Share:
			return bindValues(v, to)
		case *[]quantity.Length:
			return bindValues(v, to)
		}
	}
	return misplaced(v)
}

func bindText(v string, to any) error {
	switch to := to.(type) {
	case encoding.TextUnmarshaler:
		return to.UnmarshalText([]byte(v))
	case *string:
		*to = v
	case *Profile:
		*to = Profile(v)
	case *LegKind:
		*to = LegKind(v)
	default:
		return misplaced(v)
	}
	return nil
}

func misplaced(v any) error { return fmt.Errorf("%T does not belong here", v) }

func bindValues[T any](list []any, to *[]T) error {
	*to = make([]T, len(list))
	for i, v := range list {
		if err := bindValue(v, &(*to)[i]); err != nil {
			return fmt.Errorf("%d: %w", i+1, err)
		}
	}
	return nil
}

// element is the blank of a list, to be numbered.
func (l *List[T]) element() any {
	l.blank = new(T)
	return l.blank
}

func (l *List[T]) bind(v any) error { return l.rebind(nil, v) }

// rebind is bind where the list was bound of another value, of which it takes over the
// elements that the two share.
func (l *List[T]) rebind(was, v any) error {
	list, ok := v.([]any)
	if !ok {
		return fmt.Errorf("%T does not belong here", v)
	}
	had, _ := was.([]any)
	before := l.v
	l.given, l.v = true, make([]T, len(list))
	for i, v := range list {
		if i < len(had) && one(had[i], v) {
			l.v[i] = before[i]
			continue
		}
		l.v[i] = *l.blank
		if err := bindTable(v, &l.v[i]); err != nil {
			return fmt.Errorf("%d: %w", i+1, err)
		}
	}
	return nil
}

// unit is that of a quantity, or of each in a list; 0 of what is none.
func (f *Field[T]) unit() quantity.Unit {
	var v any = f.v
	switch v.(type) {
	case []quantity.Share:
		v = quantity.Share(0)
	case []quantity.Length:
		v = quantity.Length(0)
	}
	if q, ok := v.(interface{ Value() quantity.Value }); ok {
		return q.Value().Unit
	}
	return 0
}
