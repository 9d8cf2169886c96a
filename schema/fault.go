package schema

import (
	"cmp"
	"fmt"
	"slices"

	"dryfit/spec"
)

// fault is a problem before it has its place: finding that costs more, and of
// a file that is no spec at all there are too many to show.
type fault struct {
	key, message string
	stray        bool // the key itself should not be there
	at           spec.Range
}

func (c *checker) add(key, format string, args ...any) {
	c.faults = append(c.faults, fault{key: key, message: fmt.Sprintf(format, args...), at: c.doc.Locate(key)})
}

func (c *checker) addStray(key, message string) {
	at, ok := c.doc.KeyRange(key)
	if !ok {
		at = c.doc.Locate(key)
	}
	c.faults = append(c.faults, fault{key: key, message: message, stray: true, at: at})
}

// most is how many mistakes of one file are shown.
const most = 200

// problems are the mistakes in the order of the file, one of each key. What is
// wrong with the value of a key that should not be there is left out.
func (c *checker) problems() []spec.Problem {
	faults := slices.DeleteFunc(c.faults, func(f fault) bool { return c.inside(f.key) || c.gone[f.key] && !f.stray })
	slices.SortFunc(faults, func(a, b fault) int {
		return cmp.Or(
			cmp.Compare(a.at.Start, b.at.Start),
			cmp.Compare(a.key, b.key),
			cmp.Compare(a.message, b.message),
		)
	})
	faults = slices.CompactFunc(faults, func(a, b fault) bool { return a.key == b.key && a.at == b.at })
	if more := len(faults) - most; more > 0 {
		faults[most].message = fmt.Sprintf("%d more errors after this line", more)
		faults = faults[:most+1]
	}
	var out []spec.Problem
	for _, f := range faults {
		if f.stray {
			out = append(out, c.doc.KeyProblem("file.shape", f.key, f.message))
		} else {
			out = append(out, c.doc.Problem("file.shape", f.key, f.message))
		}
	}
	return out
}

// inside reports whether a key is inside one that should not be there.
func (c *checker) inside(key string) bool {
	for i := range key {
		if key[i] == '.' && c.gone[key[:i]] {
			return true
		}
	}
	return false
}
