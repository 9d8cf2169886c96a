package quantity

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Chain prints the parts of a length, in m, and their whole so that what is
// printed adds up: as a drawing rounds them where that adds up, else to one step
// finer, else with the parts that lie nearest to the next step rounded up or
// down to it (the method of largest remainders).
func (s System) Chain(parts ...float64) (whole string, printed []string) {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	steps := s.steps(append(slices.Clone(parts), sum))
	for _, st := range steps {
		if counts, total := st.counts(parts), st.count(sum); added(counts) == total {
			return st.print(total), st.each(counts)
		}
	}
	counts := steps[0].apportioned(parts, steps[0].count(sum))
	return steps[0].print(added(counts)), steps[0].each(counts)
}

// step is what the lengths of a chain are counted in.
type step struct {
	size  float64 // in m
	print func(int64) string
}

// steps are the usual one and the next finer.
func (s System) steps(lengths []float64) []step {
	if s == Imperial {
		var out []step
		for _, parts := range []int64{16, 32} {
			out = append(out, step{Inch / float64(parts), func(n int64) string { return inches(float64(n)*Inch/float64(parts), parts) }})
		}
		return out
	}
	decimals := 0
	for _, m := range lengths {
		if d := lengthDecimals(math.Abs(m)); strings.Contains(style{1e-3, 0, d, ""}.print(m, d), ".") {
			decimals = max(decimals, d)
		}
	}
	return []step{millimetres(decimals), millimetres(decimals + 1)}
}

func millimetres(decimals int) step {
	size := 1e-3 / math.Pow10(decimals)
	return step{size, func(n int64) string {
		text := strconv.FormatFloat(float64(n)/math.Pow10(decimals), 'f', decimals, 64)
		if strings.Contains(text, ".") {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		return text + "mm"
	}}
}

func (st step) count(m float64) int64 { return int64(math.Round(Steady(m) / st.size)) }

func (st step) counts(parts []float64) []int64 {
	out := make([]int64, len(parts))
	for i, p := range parts {
		out[i] = st.count(p)
	}
	return out
}

func (st step) each(counts []int64) []string {
	out := make([]string, len(counts))
	for i, n := range counts {
		out[i] = st.print(n)
	}
	return out
}

// apportioned rounds all parts down, and up again those with the largest
// remainders, until they make the total.
func (st step) apportioned(parts []float64, total int64) []int64 {
	counts, order := make([]int64, len(parts)), make([]int, len(parts))
	remainder := func(i int) float64 { return Steady(parts[i])/st.size - math.Floor(Steady(parts[i])/st.size) }
	for i, p := range parts {
		counts[i], order[i] = int64(math.Floor(Steady(p)/st.size)), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(remainder(b), remainder(a)) })
	for _, i := range order[:total-added(counts)] {
		counts[i]++
	}
	return counts
}

func added(counts []int64) (sum int64) {
	for _, n := range counts {
		sum += n
	}
	return sum
}
