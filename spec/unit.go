package spec

import (
	"reflect"
	"strconv"

	"dryfit/spec/quantity"
)

// UnitOf is the unit of the quantity that a spec states at a key, if it states
// one there.
func UnitOf(key string) (quantity.Unit, bool) {
	t := reflect.TypeFor[Spec]()
	for _, part := range SplitKey(key) {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		switch _, err := strconv.Atoi(part); {
		case t.Kind() == reflect.Slice && err == nil:
			t = t.Elem()
		case t.Kind() == reflect.Struct:
			i := indexOfKey(t, part)
			if i < 0 {
				return 0, false
			}
			t = t.Field(i).Type
		default:
			return 0, false
		}
	}
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	q, ok := reflect.Zero(t).Interface().(interface{ Value() quantity.Value })
	if !ok {
		return 0, false
	}
	return q.Value().Unit, true
}

func indexOfKey(t reflect.Type, key string) int {
	for i, k := range keysOf(t) {
		if k == key {
			return i
		}
	}
	return -1
}
