package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// MostUnbeaten is how many unbeaten options a front keeps. Of more, there are
// too many figures weighed to choose by.
const MostUnbeaten = 10_000

// Front is the options that no other beats: none is at least as near to every aim
// and nearer to one. Only those that stand take part.
type Front struct {
	Aims    []Aim
	Members []Row // by their index
	// Full reports that there were more than MostUnbeaten, and that the members
	// are none.
	Full bool

	seen []bool // by column: some option that stands has the figure
}

// NewFront is the front of a study by some aims, each FIGURE or FIGURE=WISH.
func NewFront(s *Study, aims []string) (*Front, error) {
	f := &Front{}
	for _, text := range aims {
		a, err := s.aim(text)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(f.Aims, func(had Aim) bool { return had.Name == a.Name }) {
			return nil, fmt.Errorf("%s is weighed twice", text)
		}
		f.Aims = append(f.Aims, a)
	}
	f.seen = make([]bool, len(s.Columns)) // to aim at a figure may have added its column
	return f, nil
}

// Add puts a row to the front, if no member beats it, and takes out those that
// it beats.
func (f *Front) Add(r Row) {
	if f.Full || !r.Stands() {
		return
	}
	for _, a := range f.Aims {
		f.seen[a.Column] = f.seen[a.Column] || !math.IsNaN(r.Figures[a.Column])
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

// AimsAt reports whether an aim is of a column.
func (f *Front) AimsAt(column int) bool {
	return slices.ContainsFunc(f.Aims, func(a Aim) bool { return a.Column == column })
}

// Beats reports whether a is at least as near as b to every aim, and nearer to one.
func (f *Front) Beats(a, b Row) bool { return f.against(a.Figures, b.Figures) == -1 }

// against is -1 where a beats b, 1 where b beats a, and 0 where neither does.
func (f *Front) against(a, b []float64) int {
	outcome := 0
	for _, aim := range f.Aims {
		switch c := compare(aim.far(a[aim.Column]), aim.far(b[aim.Column]), Lower); {
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

// BeatenBy is the member that beats a row, by most aims of those that do, and of
// several the first; and the columns of the aims that it is nearer to. It is false
// for a member.
func (f *Front) BeatenBy(r Row) (by Row, in []int, ok bool) {
	for k := range f.Members {
		m := &f.Members[k]
		if f.against(m.Figures, r.Figures) != -1 {
			continue
		}
		var won []int
		for _, a := range f.Aims {
			if compare(a.far(m.Figures[a.Column]), a.far(r.Figures[a.Column]), Lower) < 0 {
				won = append(won, a.Column)
			}
		}
		if len(won) > len(in) {
			by, in, ok = *m, won, true
		}
	}
	return by, in, ok
}
