package passage

import "reflect"

// Kept is what a package keeps about a body, one value of each type, made when it is first
// asked for. Bodies that differ in nothing but their wraps share it.
func Kept[T any](b *Body, begin func(*Body) *T) *T {
	key := reflect.TypeFor[T]()
	had, ok := b.kept.Load(key)
	if !ok {
		had, _ = b.kept.LoadOrStore(key, begin(b))
	}
	return had.(*T)
}
