package remedy

import (
	"cmp"
	"slices"

	"dryfit/spec/quantity"
)

// polish makes an answer smaller, key by key, as long as it stays one: the
// largest change first, and the smallest first, whichever gives less.
func (s *search) polish(st *state) *state {
	best := s.polished(st, func(a, b Change) int { return cmp.Compare(b.Size, a.Size) })
	if len(st.changes) > 1 {
		other := s.polished(st, func(a, b Change) int { return cmp.Compare(a.Size, b.Size) })
		if cmp.Or(cmp.Compare(len(other.changes), len(best.changes)), promising(other, best)) < 0 {
			best = other
		}
	}
	return best
}

func (s *search) polished(st *state, order func(a, b Change) int) *state {
	for {
		changes := slices.Clone(st.changes)
		slices.SortStableFunc(changes, order)
		smaller := st
		for _, c := range changes {
			smaller = s.shrink(smaller, c)
		}
		if canon(smaller.changes) == canon(st.changes) {
			return st
		}
		st = smaller
	}
}

// shrink is an answer with one key as near to what it was as it can be.
func (s *search) shrink(st *state, c Change) *state {
	i := slices.IndexFunc(s.knobs, func(k knob) bool { return k.key == c.Key })
	without := slices.DeleteFunc(slices.Clone(st.changes), func(had Change) bool { return had.Key == c.Key })
	if next, ok := s.answer(without); ok {
		return next
	}
	k := s.knobs[i]
	for _, d := range s.dials(st, k, k.was) {
		if _, ordered := c.Value.(string); !ordered && !counted(c.Value) {
			continue
		}
		next, first := s.nearest(d, k, without, stepsOf(d, c.Value))
		if first {
			return next
		}
		if next != nil {
			st = next
		}
	}
	return st
}

// nearest is the answer with a key as few steps of a dial from what it was as it can be,
// and nil where none is nearer. Of a dial that is tried step by step it is the first.
func (s *search) nearest(d dial, k knob, without []Change, steps int) (st *state, first bool) {
	way := cmp.Compare(steps, 0)
	low, high := 0, steps*way
	for high-low > 1 && !s.over() {
		middle := (low + high) / 2
		if d.each {
			middle = low + 1
		}
		v, _ := d.at(way * middle)
		next, ok := s.change(&state{changes: without}, k, v)
		if ok {
			next, ok = s.answer(next.changes)
		}
		switch {
		case ok && d.each:
			return next, true
		case ok:
			st, high = next, middle
		default:
			low = middle
		}
	}
	return st, false
}

func counted(v any) bool {
	_, ok := v.(int64)
	return ok
}

// stepsOf is how many steps of a dial a value is away; zero where it can't be
// told.
func stepsOf(d dial, value any) int {
	if d.each {
		for n := 1; n <= max(d.up, d.down); n++ {
			for _, steps := range []int{n, -n} {
				if v, ok := d.at(steps); ok && v == value {
					return steps
				}
			}
		}
		return 0
	}
	text, _ := value.(string)
	for _, unit := range []quantity.Unit{quantity.Metre, quantity.Fraction, quantity.Kilogram, quantity.Newton, quantity.Celsius} {
		v, err := quantity.Parse(unit, text)
		if err != nil {
			continue
		}
		if n, ok := d.guess(unit, v.SI); ok {
			return n
		}
	}
	return 0
}

// answer reviews changes, and reports whether they leave nothing open.
func (s *search) answer(changes []Change) (*state, bool) {
	st, ok := s.state(changes)
	if !ok || s.over() || !s.judge(st) || len(st.open) > 0 {
		return nil, false
	}
	return st, true
}
