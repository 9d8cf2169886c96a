package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/spec/nearest"
)

// MostUnbeaten is how many unbeaten options a front keeps. Of more, there are
// too many figures weighed to choose by.
const MostUnbeaten = 10_000

// Front is the options that no other beats: none is at least as good in every
// figure weighed and better in one. Only those that stand take part.
type Front struct {
	Weighed []int // columns
	Members []Row // by their index
	// Full reports that there were more than MostUnbeaten, and that the members
	// are none.
	Full bool

	better []Better
	seen   []bool // by column: some option that stands has the figure
}

// NewFront is the front of a study in some figures, named by their keys.
func NewFront(s *Study, keys []string) (*Front, error) {
	f := &Front{seen: make([]bool, len(s.Columns))}
	for _, c := range s.Columns {
		f.better = append(f.better, c.Better)
	}
	for _, key := range keys {
		i, err := s.column(strings.TrimSpace(key))
		switch {
		case err != nil:
			return nil, err
		case s.Columns[i].Better == Neither:
			return nil, fmt.Errorf("%s is neither better high nor low; weigh %s", key, strings.Join(s.weighable(), ", "))
		case slices.Contains(f.Weighed, i):
			return nil, fmt.Errorf("%s is weighed twice", key)
		}
		f.Weighed = append(f.Weighed, i)
	}
	return f, nil
}

// column finds a column by its key.
func (s *Study) column(key string) (int, error) {
	var keys []string
	for i, c := range s.Columns {
		if c.Key == key {
			return i, nil
		}
		keys = append(keys, c.Key)
	}
	if near, ok := nearest.Word(key, keys); ok {
		return 0, fmt.Errorf("there is no figure %q; is it %s?", key, near)
	}
	return 0, fmt.Errorf("there is no figure %q; there are %s", key, strings.Join(keys, ", "))
}

func (s *Study) weighable() []string {
	var keys []string
	for _, c := range s.Columns {
		if c.Better != Neither {
			keys = append(keys, c.Key)
		}
	}
	return keys
}

// Add puts a row to the front, if no member beats it, and takes out those that
// it beats.
func (f *Front) Add(r Row) {
	if f.Full || !r.Stands() {
		return
	}
	for _, i := range f.Weighed {
		f.seen[i] = f.seen[i] || !math.IsNaN(r.Figures[i])
	}
	kept := f.Members[:0]
	for i := range f.Members {
		switch f.against(f.Members[i].Figures, r.Figures) {
		case -1:
			return // a member that r beats, this one would beat too
		case 1:
		default:
			kept = append(kept, f.Members[i])
		}
	}
	clear(f.Members[len(kept):])
	f.Members = kept
	f.Members = append(f.Members, r)
	if len(f.Members) > MostUnbeaten {
		f.Full, f.Members = true, nil
	}
}

// Seen reports whether any option that stands has the figure of a column that
// is weighed; one that none has settles nothing.
func (f *Front) Seen(column int) bool { return f.seen[column] }

// Has reports whether an option is a member.
func (f *Front) Has(index int) bool {
	_, found := slices.BinarySearchFunc(f.Members, index, func(m Row, i int) int { return cmp.Compare(m.Index, i) })
	return found
}

// Beats reports whether a is at least as good as b in every figure weighed, and
// better in one.
func (f *Front) Beats(a, b Row) bool { return f.against(a.Figures, b.Figures) == -1 }

// against is -1 where a beats b, 1 where b beats a, and 0 where neither does.
func (f *Front) against(a, b []float64) int {
	outcome := 0
	for _, i := range f.Weighed {
		switch c := compare(a[i], b[i], f.better[i]); {
		case c == 0:
		case outcome == 0:
			outcome = c
		case outcome != c:
			return 0
		}
	}
	return outcome
}

// compare is -1 where a is better than b. To have no figure is worse than any.
func compare(a, b float64, better Better) int {
	if better == Higher {
		a, b = -a, -b
	}
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	case a == b:
		return 0
	case !math.IsNaN(a): // and so b has none
		return -1
	case !math.IsNaN(b):
		return 1
	default:
		return 0
	}
}

// BeatenBy is the member that beats a row, in most figures of those that do,
// and of several the first; and the figures that it is better in. It is false
// for a member.
func (f *Front) BeatenBy(r Row) (by Row, in []int, ok bool) {
	for k := range f.Members {
		m := &f.Members[k]
		if f.against(m.Figures, r.Figures) != -1 {
			continue
		}
		var won []int
		for _, i := range f.Weighed {
			if compare(m.Figures[i], r.Figures[i], f.better[i]) < 0 {
				won = append(won, i)
			}
		}
		if len(won) > len(in) {
			by, in, ok = *m, won, true
		}
	}
	return by, in, ok
}
