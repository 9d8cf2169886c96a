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
