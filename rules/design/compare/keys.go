package compare

import (
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"dryfit/rules/kernel/timber"
	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// KeyChange is a key that was added, removed or changed.
type KeyChange struct {
	Kind Kind
	Key  string // as the new spec numbers it, or the old one where it was removed
	Name string // of the element of an array that was added or removed
	// Old and New are the values as written; nil where there is none.
	Old, New any
	// Assumed is what stood in a key's place while it was left out, if anything.
	Assumed any
}

// Renumbered is an element of an array that has another number now.
type Renumbered struct {
	Array, Name string
	Old, New    int
	Reordered   bool // it also changed places with another
}

// keys walks two trees side by side.
type keys struct {
	before, after *review.Assessment
	changes       []KeyChange
	rewritten     []string
	renumbered    []Renumbered
	numbers       map[string]string // an old element's key to its new one, "" where it is gone
}

func keysOf(before, after *review.Assessment) *keys {
	k := &keys{before: before, after: after, numbers: map[string]string{}}
	k.tables("", "", before.Document.Tree, after.Document.Tree)
	return k
}

func under(key, name string) string {
	if key == "" {
		return spec.Key(name)
	}
	return key + "." + spec.Key(name)
}

func (k *keys) tables(oldKey, newKey string, a, b map[string]any) {
	names := slices.Sorted(maps.Keys(a))
	for _, name := range slices.Sorted(maps.Keys(b)) {
		if _, had := a[name]; !had {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		k.value(under(oldKey, name), under(newKey, name), a[name], b[name])
	}
}

func (k *keys) value(oldKey, newKey string, a, b any) {
	ta, tableA := a.(map[string]any)
	tb, tableB := b.(map[string]any)
	la, arrayA := elements(a)
	lb, arrayB := elements(b)
	switch {
	case (tableA || a == nil) && (tableB || b == nil) && (tableA || tableB):
		k.tables(oldKey, newKey, ta, tb)
	case (arrayA || a == nil) && (arrayB || b == nil) && (arrayA || arrayB):
		k.arrays(oldKey, newKey, la, lb)
	case a == nil:
		k.add(KeyChange{Kind: Added, Key: newKey, New: b, Assumed: assumed(k.before, newKey)})
	case b == nil:
		k.add(KeyChange{Kind: Removed, Key: oldKey, Old: a, Assumed: assumed(k.after, oldKey)})
	case reflect.DeepEqual(a, b):
	case k.means(newKey, a, b):
		k.rewritten = append(k.rewritten, newKey)
	default:
		k.add(KeyChange{Kind: Changed, Key: newKey, Old: a, New: b})
	}
}

func (k *keys) add(c KeyChange) { k.changes = append(k.changes, c) }

func assumed(s *review.Assessment, key string) any {
	if a, ok := s.Ceiling.AssumedAt(key); ok && a.Key == key {
		return a.Value
	}
	return nil
}

// elements are those of an array of tables.
func elements(v any) ([]map[string]any, bool) {
	list, ok := v.([]any)
	if !ok || len(list) == 0 {
		return nil, false
	}
	var out []map[string]any
	for _, x := range list {
		t, ok := x.(map[string]any)
		if !ok {
			return nil, false
		}
		out = append(out, t)
	}
	return out, true
}

// arrays pairs elements by identity (those of one identity in their order),
// then what is left over by its number.
func (k *keys) arrays(oldKey, newKey string, a, b []map[string]any) {
	pairs := match(a, b)
	reordered := crossing(pairs)
	taken := make([]bool, len(b))
	for i, j := range pairs {
		from := oldKey + "." + strconv.Itoa(i+1)
		if j < 0 {
			k.numbers[from] = ""
			k.add(KeyChange{Kind: Removed, Key: from, Name: spec.Identity(a[i]), Old: a[i]})
			continue
		}
		taken[j] = true
		to := newKey + "." + strconv.Itoa(j+1)
		if i != j {
			k.numbers[from] = to
			k.renumbered = append(k.renumbered, Renumbered{newKey, spec.Identity(b[j]), i + 1, j + 1, reordered})
		}
		k.tables(from, to, a[i], b[j])
	}
	for j := range b {
		if !taken[j] {
			k.add(KeyChange{Kind: Added, Key: newKey + "." + strconv.Itoa(j+1), Name: spec.Identity(b[j]), New: b[j]})
		}
	}
}

// crossing reports whether partners do not follow one another as their elements do.
func crossing(pairs []int) (out bool) {
	last := -1
	for _, j := range pairs {
		if j >= 0 {
			out = out || j < last
			last = max(last, j)
		}
	}
	return out
}

// match gives for each element of a the number of its partner in b, or -1.
func match(a, b []map[string]any) []int {
	pairs, taken := make([]int, len(a)), make([]bool, len(b))
	for i := range a {
		pairs[i] = -1
		for j := range b {
			if !taken[j] && spec.Identity(a[i]) == spec.Identity(b[j]) {
				pairs[i], taken[j] = j, true
				break
			}
		}
	}
	for i := range a {
		if pairs[i] < 0 && i < len(b) && !taken[i] {
			pairs[i], taken[i] = i, true
		}
	}
	return pairs
}

// renumber is an old key as the new spec numbers it, "" where it is gone.
func (k *keys) renumber(key string) string {
	for from, to := range k.numbers {
		if key != from && !strings.HasPrefix(key, from+".") {
			continue
		}
		if to == "" {
			return ""
		}
		return to + key[len(from):]
	}
	return key
}

// exact is how near two quantities are, by themselves, that were written in two
// ways: far above what reading them rounds.
const exact = 1e-9

// means reports whether two values at a key mean the same.
func (k *keys) means(key string, a, b any) bool {
	la, okA := a.([]any)
	lb, okB := b.([]any)
	if okA && okB {
		if len(la) != len(lb) {
			return false
		}
		for i := range la {
			if !k.means(key+"."+strconv.Itoa(i+1), la[i], lb[i]) {
				return false
			}
		}
		return true
	}
	ta, okA := a.(string)
	tb, okB := b.(string)
	if !okA || !okB {
		return reflect.DeepEqual(a, b)
	}
	if u, ok := spec.UnitOf(key); ok {
		va, errA := quantity.Parse(u, ta)
		vb, errB := quantity.Parse(u, tb)
		return errA == nil && errB == nil && math.Abs(va.SI-vb.SI) <= exact*math.Abs(va.SI)
	}
	return ta == tb || material(key, ta) == material(key, tb)
}

// material is the name that a wood or a sheet is listed under: "oak" is white
// oak.
func material(key, name string) string {
	switch {
	case strings.HasSuffix(key, ".species"):
		if s, err := timber.Lookup(name); err == nil {
			return s.Name
		}
	case key == "skin.material":
		if s, err := timber.LookupSheet(name); err == nil {
			return s.Name
		}
	}
	return name
}
