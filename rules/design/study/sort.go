package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// order is one key to sort rows by.
type order func(a, b Row) int

// Sort sorts rows by keys, the first above all: figures, best first, or from
// the least where neither way is better; keys that are varied, in the order of
// their values; option and verdict. A minus before a key turns it about. What
// has no figure comes last either way, and equal rows keep their order.
func (s *Study) Sort(rows []Row, keys []string) error {
	var orders []order
	for _, key := range keys {
		o, err := s.order(strings.TrimSpace(key))
		if err != nil {
			return err
		}
		orders = append(orders, o)
	}
	slices.SortStableFunc(rows, func(a, b Row) int {
		for _, o := range orders {
			if c := o(a, b); c != 0 {
				return c
			}
		}
		return cmp.Compare(a.Index, b.Index)
	})
	return nil
}

func (s *Study) order(key string) (order, error) {
	plain, sign := strings.TrimPrefix(key, "-"), 1
	if plain != key {
		sign = -1
	}
	switch plain {
	case "option":
		return func(a, b Row) int { return sign * cmp.Compare(a.Index, b.Index) }, nil
	case "verdict":
		return func(a, b Row) int { return sign * cmp.Compare(a.rank(), b.rank()) }, nil
	}
	for i, d := range s.Vary {
		if d.Key == plain {
			return func(a, b Row) int { return sign * cmp.Compare(s.place(a.Index, i), s.place(b.Index, i)) }, nil
		}
	}
	i, err := s.column(plain)
	if err != nil {
		return nil, fmt.Errorf("%w; and option, verdict and the keys that are varied", err)
	}
	return func(a, b Row) int { return s.byFigure(a, b, i, sign) }, nil
}

// rank puts those that can't be made after every verdict.
func (r Row) rank() int {
	if !r.Made() {
		return math.MaxInt
	}
	return int(r.Verdict)
}

// place is which of its values an option gives the i-th key.
func (s *Study) place(index, i int) int {
	n := index - 1
	for k := len(s.Vary) - 1; k > i; k-- {
		if !s.Vary[k].Linked {
			n /= len(s.Vary[k].Values)
		}
	}
	return n % len(s.Vary[i].Values)
}

func (s *Study) byFigure(a, b Row, i, sign int) int {
	x, y := none, none
	if a.Made() {
		x = a.Figures[i]
	}
	if b.Made() {
		y = b.Figures[i]
	}
	if math.IsNaN(x) || math.IsNaN(y) {
		return compare(x, y, Lower)
	}
	return sign * compare(x, y, s.Columns[i].Better)
}
