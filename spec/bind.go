package spec

import (
	"fmt"
	"reflect"
	"sync"
)

// Bind gives the typed form of a tree that satisfies the schema; quantities
// are parsed on the way. A general mapping library does the same in fifteen
// times the time, which is more than all the rest of reading a spec.
func Bind(tree map[string]any) (*Spec, error) {
	s := format().blank
	if err := bindTable(tree, &s); err != nil {
		return nil, err
	}
	return &s, nil
}

// Rebind is [Bind] of a tree that shares values, in the same memory, with the one that s
// was bound of: what they share at the top level, or as an element of a list there, is
// taken from s.
func (s *Spec) Rebind(was, tree map[string]any) (*Spec, error) {
	out := *s
	at, blank := reflect.ValueOf(&out).Elem(), reflect.ValueOf(&format().blank).Elem()
	for i, key := range keysOf(at.Type()) {
		if one(was[key], tree[key]) {
			continue
		}
		var err error
		if l, ok := at.Field(i).Addr().Interface().(relisted); ok && tree[key] != nil {
			if err = l.rebind(was[key], tree[key]); err != nil {
				err = fmt.Errorf("%s: %w", key, err)
			}
		} else {
			at.Field(i).Set(blank.Field(i))
			err = bindKey(tree, key, at.Field(i))
		}
		if err != nil {
			return nil, err
		}
	}
	return &out, nil
}

// relisted is a list that may take over elements.
type relisted interface{ rebind(was, v any) error }

// one reports whether two values of trees are the same: shared, or equal where they are
// neither tables nor lists.
func one(v, w any) bool {
	for _, x := range [2]any{v, w} {
		switch x.(type) {
		case map[string]any, []any:
			return Shared(v, w)
		}
	}
	return v == w
}

func bindTable(v, to any) error {
	table, ok := v.(map[string]any)
	if !ok {
		return fmt.Errorf("%T does not belong here", v)
	}
	at := reflect.ValueOf(to).Elem()
	for i, key := range keysOf(at.Type()) {
		if key == "" { // the mark of a table
			at.Field(i).Addr().Interface().(*Table).given = true
			continue
		}
		if err := bindKey(table, key, at.Field(i)); err != nil {
			return err
		}
	}
	return nil
}

// bindKey binds what a table has at a key, if it has it.
func bindKey(table map[string]any, key string, to reflect.Value) (err error) {
	v, given := table[key]
	if !given {
		return nil
	}
	switch to := to.Addr().Interface().(type) {
	case bound:
		err = to.bind(v)
	default:
		err = bindTable(v, to)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", key, err)
	}
	return nil
}

// fieldsOf caches the key of each field of a struct type; that of the mark of a
// table is empty.
var fieldsOf sync.Map // reflect.Type to []string

func keysOf(t reflect.Type) []string {
	if keys, ok := fieldsOf.Load(t); ok {
		return keys.([]string)
	}
	keys := make([]string, t.NumField())
	for i := range keys {
		keys[i] = t.Field(i).Tag.Get("toml")
	}
	fieldsOf.Store(t, keys)
	return keys
}
