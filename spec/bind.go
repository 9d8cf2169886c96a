package spec

import (
	"encoding"
	"fmt"
	"reflect"
	"sync"
)

// Bind gives the typed form of a tree that satisfies the schema; quantities
// are parsed on the way. A general mapping library does the same in fifteen
// times the time, which is more than all the rest of reading a spec.
func Bind(tree map[string]any) (*Spec, error) {
	var s Spec
	if err := bindTable(tree, reflect.ValueOf(&s).Elem()); err != nil {
		return nil, err
	}
	return &s, nil
}

// fieldsOf caches the key of each field of a struct type.
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

func bindTable(table map[string]any, to reflect.Value) error {
	for i, key := range keysOf(to.Type()) {
		v, given := table[key]
		if !given {
			continue
		}
		if err := bind(v, to.Field(i)); err != nil {
			return fmt.Errorf("%s: %w", key, err)
		}
	}
	return nil
}

func bind(v any, to reflect.Value) error {
	if to.Kind() == reflect.Pointer {
		to.Set(reflect.New(to.Type().Elem()))
		to = to.Elem()
	}
	switch v := v.(type) {
	case string:
		if u, ok := to.Addr().Interface().(encoding.TextUnmarshaler); ok {
			return u.UnmarshalText([]byte(v))
		}
		if to.Kind() == reflect.String {
			to.SetString(v)
			return nil
		}
	case int64:
		if to.Kind() == reflect.Int {
			to.SetInt(v)
			return nil
		}
	case bool:
		if to.Kind() == reflect.Bool {
			to.SetBool(v)
			return nil
		}
	case map[string]any:
		if to.Kind() == reflect.Struct {
			return bindTable(v, to)
		}
	case []any:
		if to.Kind() == reflect.Slice {
			return bindList(v, to)
		}
	}
	return fmt.Errorf("%T does not belong here", v)
}

func bindList(list []any, to reflect.Value) error {
	to.Set(reflect.MakeSlice(to.Type(), len(list), len(list)))
	for i, v := range list {
		if err := bind(v, to.Index(i)); err != nil {
			return fmt.Errorf("%d: %w", i+1, err)
		}
	}
	return nil
}

// Keys lists the path of every key that a spec may have, in the order of the
// types; an element of an array is a *: "route.*.width".
func Keys() []string {
	var out []string
	var walk func(prefix string, t reflect.Type)
	walk = func(prefix string, t reflect.Type) {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		switch t.Kind() {
		case reflect.Struct:
			for i, key := range keysOf(t) {
				out = append(out, prefix+key)
				walk(prefix+key+".", t.Field(i).Type)
			}
		case reflect.Slice:
			walk(prefix+"*.", t.Elem())
		}
	}
	walk("", reflect.TypeFor[Spec]())
	return out
}
