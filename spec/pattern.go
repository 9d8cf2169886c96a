package spec

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// keys of the format, numbered, and a spec without values that has the numbers.
type numbered struct {
	keys  []string // in the order of the types; an element of an array is a *
	names []string // the same without elements: "route.width"
	ids   map[string]record.ID
	units []quantity.Unit // of what is not a quantity, 0
	blank Spec
}

var format = sync.OnceValue(func() *numbered {
	f := &numbered{ids: map[string]record.ID{}}
	f.walk("", reflect.ValueOf(&f.blank).Elem())
	return f
})

// walk numbers the fields of a table and of all that is in it.
func (f *numbered) walk(prefix string, table reflect.Value) {
	for i, key := range keysOf(table.Type()) {
		if key == "" {
			continue
		}
		part := table.Field(i).Addr().Interface()
		id := f.add(prefix+key, part)
		switch part := part.(type) {
		case interface{ element() any }:
			part.(bound).number(id)
			f.walk(prefix+key+".*.", reflect.ValueOf(part.element()).Elem())
		case bound:
			part.number(id)
		default:
			table.Field(i).FieldByName("Table").Addr().Interface().(*Table).id = id
			f.walk(prefix+key+".", table.Field(i))
		}
	}
}

func (f *numbered) add(key string, part any) record.ID {
	id := record.ID(len(f.keys))
	if id >= record.Most {
		panic("spec: more keys than a record.Set has room for")
	}
	name := strings.ReplaceAll(key, ".*", "")
	f.keys, f.names, f.ids[name] = append(f.keys, key), append(f.names, name), id
	var unit quantity.Unit
	if q, ok := part.(interface{ unit() quantity.Unit }); ok {
		unit = q.unit()
	}
	f.units = append(f.units, unit)
	return id
}

func patterns() []string { return format().names }

// Keys lists the path of every key that a spec may have, in the order of the
// types; an element of an array is a *: "route.*.width".
func Keys() []string { return slices.Clone(format().keys) }

// Pattern is a key without the numbers of elements: "route.width" for
// "route.2.width", "strap.stations" for "strap.stations.1".
func Pattern(key string) string {
	if !strings.ContainsAny(key, "0123456789*") {
		return key
	}
	parts := SplitKey(key)
	parts = slices.DeleteFunc(parts, func(part string) bool {
		_, err := strconv.Atoi(part)
		return err == nil || part == "*"
	})
	return strings.Join(parts, ".")
}

// ID is the number of a key, whichever element of an array it is of or in.
func ID(key string) (record.ID, bool) {
	id, ok := format().ids[Pattern(key)]
	return id, ok
}

// IDs are the numbers of a key and of all that is in it, where it is a table.
func IDs(key string) record.Set {
	var set record.Set
	f, pattern := format(), Pattern(key)
	id, ok := f.ids[pattern]
	if !ok {
		return set
	}
	for set.Add(id); int(id)+1 < len(f.names) && strings.HasPrefix(f.names[id+1], pattern+"."); id++ {
		set.Add(id + 1)
	}
	return set
}

// Names are the keys of a set, in the order of the format, elements of arrays
// left out.
func Names(set record.Set) []string {
	var out []string
	for id := range set.All() {
		out = append(out, format().names[id])
	}
	return out
}

// UnitOf is the unit of the quantity that a spec states at a key, if it states
// one there.
func UnitOf(key string) (quantity.Unit, bool) {
	id, ok := ID(key)
	if !ok {
		return 0, false
	}
	unit := format().units[id]
	return unit, unit != 0
}
