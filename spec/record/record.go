// Package record keeps which keys a figure comes from. A key's value can be had
// only as a Value, and reading one notes its key; a Value that is worked out of
// others notes theirs. So a figure's keys are what was read to compute it.
package record

import (
	"iter"
	"math/bits"
)

// ID is the number of a key of the format, elements of arrays left out:
// "route.width" is one key.
type ID uint16

// Most is how many keys there may be.
const Most = 64 * words

const words = 6

// Set is a set of keys. Its zero value is empty, and sets compare with ==.
type Set [words]uint64

// Every is the set of all keys that there may be.
func Every() (s Set) {
	for i := range s {
		s[i] = ^uint64(0)
	}
	return s
}

// Add puts a key into the set.
func (s *Set) Add(id ID) { s[id/64] |= 1 << (id % 64) }

// Has reports whether a key is in the set.
func (s Set) Has(id ID) bool { return s[id/64]&(1<<(id%64)) != 0 }

// Empty reports whether no key is in the set.
func (s Set) Empty() bool { return s == Set{} }

// Or is what is in either set.
func (s Set) Or(o Set) Set {
	for i := range s {
		s[i] |= o[i]
	}
	return s
}

// And is what is in both.
func (s Set) And(o Set) Set {
	for i := range s {
		s[i] &= o[i]
	}
	return s
}

// Without is what is in s and not in o.
func (s Set) Without(o Set) Set {
	for i := range s {
		s[i] &^= o[i]
	}
	return s
}

// All are the keys of the set, in their order.
func (s Set) All() iter.Seq[ID] {
	return func(yield func(ID) bool) {
		for i, w := range s {
			for ; w != 0; w &= w - 1 {
				if !yield(ID(64*i + bits.TrailingZeros64(w))) {
					return
				}
			}
		}
	}
}

// Recorder notes the keys that are read, for one goroutine. A nil one notes
// nothing.
type Recorder struct {
	now  Set
	none [Most]any // the values of absent keys, which are all alike
}

// Note says that a key was read.
func (r *Recorder) Note(id ID) {
	if r != nil {
		r.now.Add(id)
	}
}

// NoteAll says that keys were read.
func (r *Recorder) NoteAll(keys Set) {
	if r != nil {
		r.now = r.now.Or(keys)
	}
}

// During is what was read while f ran. It counts as read around it, too.
func (r *Recorder) During(f func()) Set {
	if r == nil {
		f()
		return Set{}
	}
	before := r.now
	r.now = Set{}
	f()
	read := r.now
	r.now = before.Or(read)
	return read
}

// Value is a figure with the keys that it comes from. It is worked out once, on
// first use. The zero Value has no figure, and Get of it panics.
type Value[T any] struct{ *cell[T] }

type cell[T any] struct {
	rec  *Recorder
	make func() T // nil once it is made
	v    T
	from Set
	key  string
	none bool // an optional key that is absent
}

// Of is a figure that f works out of others.
func Of[T any](rec *Recorder, f func() T) Value[T] {
	return Value[T]{&cell[T]{rec: rec, make: f}}
}

// Named is Of for a figure that has a key of its own: of the spec, or of the
// calculation sheet.
func Named[T any](rec *Recorder, key string, f func() T) Value[T] {
	return Value[T]{&cell[T]{rec: rec, make: f, key: key}}
}

// Stated is the value of a key of the spec; where the key is absent, the zero
// value.
func Stated[T any](rec *Recorder, id ID, key string, v T, given bool) Value[T] {
	if !given && rec != nil {
		if c, had := rec.none[id].(*cell[T]); had {
			return Value[T]{c}
		}
	}
	c := &cell[T]{rec: rec, v: v, key: key, none: !given}
	c.from.Add(id)
	if !given && rec != nil {
		rec.none[id] = c
	}
	return Value[T]{c}
}

// Get is the figure. What it comes from counts as read.
func (v Value[T]) Get() T {
	c := v.cell
	switch {
	case c.make != nil:
		c.from = c.rec.During(func() { c.v = c.make() })
		c.make = nil
	case c.rec != nil:
		c.rec.now = c.rec.now.Or(c.from)
	}
	return c.v
}

// Done is a figure as far as it is worked out by now, whatever becomes of it: to take it
// from, for many goroutines.
type Done[T any] struct {
	v    T
	from Set
	is   bool
}

// Done is the figure, if it is worked out.
func (v Value[T]) Done() Done[T] {
	c := v.cell
	if c.make != nil {
		return Done[T]{}
	}
	return Done[T]{c.v, c.from, true}
}

// Take takes a figure that was worked out in the same way, of a spec that differs from
// this one in some keys, if it comes from none of these.
func (v Value[T]) Take(done Done[T], differ Set) {
	if c := v.cell; c.make != nil && done.is && done.from.And(differ).Empty() {
		c.make, c.v, c.from = nil, done.v, done.from
	}
}

// Given reports whether the spec states the key that the value is of, or a
// default does. Whether it does counts as read.
func (v Value[T]) Given() bool {
	if c := v.cell; c.rec != nil {
		c.rec.now = c.rec.now.Or(c.from)
	}
	return !v.none
}

// Key is the key that the figure has: "" of one that has none.
func (v Value[T]) Key() string { return v.key }

// From are the keys that the figure comes from. Asking reads nothing.
func (v Value[T]) From() Set {
	if v.make != nil && v.rec != nil {
		before := v.rec.now
		v.Get()
		v.rec.now = before
	}
	return v.from
}
