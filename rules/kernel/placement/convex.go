package placement

// span is a stretch of numbers. By round-off one of nothing may end before it
// starts.
type span struct{ from, to float64 }

// nearest is the number of the span that is nearest to another.
func (s span) nearest(to float64) float64 {
	if s.from > s.to {
		return (s.from + s.to) / 2
	}
	return min(max(s.from, to), s.to)
}

// lowest is the skew at which a convex function made of straight pieces is least
// over a span, and its value there: of the lines that touch it on either side of
// the least place, where they meet is the next to try, until it lies on both.
func (s span) lowest(f func(b float64) line) (at, value float64) {
	left, right := f(s.from), f(s.to)
	if left.d >= 0 {
		return s.from, left.v
	}
	if right.d <= 0 {
		return s.to, right.v
	}
	for range mostSteps {
		b := s.from + (right.v-left.v-right.d*(s.to-s.from))/(left.d-right.d)
		b = min(max(b, s.from), s.to)
		here := f(b)
		at, value = b, here.v
		if here.v-(left.v+left.d*(b-s.from)) <= grain/1000 {
			break
		}
		if here.d < 0 {
			s.from, left = b, here
		} else {
			s.to, right = b, here
		}
	}
	return at, value
}

// mostSteps is more than a function of some thousand pieces takes.
const mostSteps = 1000

// within is the part of a span where a convex function of straight pieces is at
// most so much, around a place where it is: from either end of the span along the
// lines that touch it, which never lead past the part's end.
func (s span) within(most float64, f func(b float64) line, place float64) span {
	edge := func(b float64) float64 {
		for here := f(b); here.v-most > grain/1000; here = f(b) {
			next := b - (here.v-most)/here.d
			if here.d == 0 || (next-place)*(b-place) <= 0 {
				return place
			}
			b = next
		}
		return b
	}
	return span{edge(s.from), edge(s.to)}
}
