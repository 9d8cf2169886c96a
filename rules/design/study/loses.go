package study

import (
	"fmt"
	"math"
	"strings"

	"dryfit/spec/quantity"
)

// Loses says in one sentence, without a full stop, what an option loses: the
// unbeaten option that beats it, and by how much in what; or why it is not
// weighed. It is empty for one that no other beats.
func (s *Study) Loses(f *Front, r Row) string {
	switch {
	case !r.Made():
		return "can't be made: " + r.Key + ": " + r.Reason
	case !r.Stands():
		return failing(r) + ", and is not compared"
	}
	by, in, ok := f.BeatenBy(r)
	if !ok {
		return ""
	}
	var what []string
	for _, i := range in {
		what = append(what, s.against(s.Columns[i], by.Figures[i], r.Figures[i]))
	}
	rest := ""
	if s.counted(f, r) > len(in) {
		rest = "; the other figures are equal"
	}
	return fmt.Sprintf("option %d beats it in %s%s", by.Index, listed(what), rest)
}

// counted is to how many of the aims an option has a figure.
func (s *Study) counted(f *Front, r Row) int {
	n := 0
	for _, a := range f.Aims {
		if !math.IsNaN(r.Figures[a.Column]) {
			n++
		}
	}
	return n
}

// against names a figure with the better and the worse value.
func (s *Study) against(c Column, better, worse float64) string {
	if math.IsNaN(worse) {
		return c.Name + ", of which this has none"
	}
	a, b := s.Units().Pair(quantity.Value{SI: better, Unit: c.Unit}, quantity.Value{SI: worse, Unit: c.Unit})
	return fmt.Sprintf("%s (%s to %s)", c.Name, a, b)
}

// failing says what makes an option fail.
func failing(r Row) string {
	switch {
	case len(r.HeldBy) > 0:
		return "is held by " + listed(r.HeldBy)
	case r.Counts.Uncomputed > 0:
		return fmt.Sprintf("fails, because a figure of %s can't be computed", rulesOf(r.Counts.Uncomputed))
	default:
		return fmt.Sprintf("fails under --strict, %d queried", r.Counts.Queried)
	}
}

func rulesOf(n int) string {
	if n == 1 {
		return "1 rule"
	}
	return fmt.Sprintf("%d rules", n)
}

func listed(what []string) string {
	if len(what) < 2 {
		return strings.Join(what, "")
	}
	return strings.Join(what[:len(what)-1], ", ") + " and " + what[len(what)-1]
}
